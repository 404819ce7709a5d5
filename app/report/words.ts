/** The investigator's own words, each a field of the report's form. `most` in characters. */
export const WORDS = [
  {
    id: 'summary',
    label: 'Summary',
    help: 'What happened, where and when, for a reader with one minute. It opens the executive summary.',
    rows: 7,
    most: 1600,
  },
  {
    id: 'determination',
    label: 'Determination',
    help: 'What you determine, and what you leave open. The report says beside it whether the evidence carries it.',
    rows: 9,
    most: 8000,
  },
  {
    id: 'signatories',
    label: 'Who signs',
    help: 'One line for each, with role, such as “A. Person, investigator”.',
    rows: 4,
    most: 1000,
  },
] as const;

export type WordsId = (typeof WORDS)[number]['id'];
