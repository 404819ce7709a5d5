import type { Choice, Measure, Observation, Slot, SubjectKind } from '../quantity';

/** Catalogue entries are written in the unit the trade states them in. */
export const inches = (value: number): number => value * 25.4;
export const feet = (value: number): number => value * 0.3048;
export const degrees = (value: number): number => (value * Math.PI) / 180;
export const mph = (value: number): number => value * 0.44704;
export const pounds = (value: number): number => value * 0.45359237;

export const LEFT_RIGHT: readonly Slot[] = [
  { id: 'left', label: 'Left' },
  { id: 'right', label: 'Right' },
];

export const CROSS = { us: 'in', metric: 'mm' } as const;
export const ALONG = { us: 'ft', metric: 'm' } as const;

/** Half a 1/16-in division of a steel rule or track gauge. */
export const RULE_HALF_WIDTH = {
  halfWidth: inches(1 / 32),
  source: 'half of a 1/16 in division; common practice, no source',
};

/** Pin contour gauge: good to about 1/16 in either way. */
export const PIN_GAUGE = {
  halfWidth: inches(1 / 16),
  source: 'pin contour gauge good to about 1/16 in; common practice, no source',
};

export const TAPE = { halfWidth: feet(0.05), source: 'tape along the rail; common practice, no source' };

/** A cross-section length in inches: possible, usual and reference ranges as [low, high]. */
export function crossLength(
  subject: SubjectKind,
  entry: {
    id: string;
    name: string;
    short: string;
    slots?: readonly Slot[];
    openSlots?: 'clockDegrees';
    possibleIn: readonly [number, number];
    usualIn: readonly [number, number];
    referenceIn: readonly [number, number];
    referenceSource: string;
    resolution?: Measure['defaultResolution'];
  },
): Measure {
  return {
    kind: 'measure',
    id: entry.id,
    name: entry.name,
    short: entry.short,
    subject,
    slots: entry.slots ?? [],
    ...(entry.openSlots === undefined ? {} : { openSlots: entry.openSlots }),
    dimension: 'crossLength',
    bareUnit: CROSS,
    possible: [inches(entry.possibleIn[0]), inches(entry.possibleIn[1])],
    usual: [inches(entry.usualIn[0]), inches(entry.usualIn[1])],
    defaultResolution: entry.resolution ?? RULE_HALF_WIDTH,
    reference: {
      low: inches(entry.referenceIn[0]),
      high: inches(entry.referenceIn[1]),
      source: entry.referenceSource,
    },
  };
}

export const observation = (
  subject: SubjectKind,
  id: string,
  short: string,
  question: string,
): Observation => ({
  kind: 'observation',
  id,
  name: short,
  short,
  subject,
  slots: [],
  question,
});

/** A question with a few answers, of which “could not tell” is always one. */
export const question = (
  subject: SubjectKind,
  id: string,
  name: string,
  short: string,
  answers: readonly (readonly [string, string])[],
  slots: readonly Slot[] = [],
): Choice => ({
  kind: 'choice',
  id,
  name,
  short,
  subject,
  slots,
  choices: [
    ...answers.map(([answer, label]) => ({ id: answer, label })),
    { id: 'couldNotTell', label: 'Could not tell' },
  ],
});
