import { DISTURBANCE_LABELS } from '~/app/readings/wording';
import { localTime } from '~/app/times';
import { nameOf } from '~/lib/case/name-of';
import type { CaseRecord, Disturbance, Standing, SubjectRef } from '~/lib/case/record';
import type { HandPlacing, TraceMaking } from '~/lib/case/trace';
import { makingText } from '~/lib/case/trace-words';
import { EXPLANATIONS } from '~/lib/explanations';
import { judgementTable } from '~/lib/explanations/judgement-table';
import { OTHER_EXPLANATIONS } from '~/lib/explanations/others';

type Shown = {
  readonly label: string;
  readonly show: (value: unknown, record: CaseRecord) => string;
};

const asText = (value: unknown): string => (value === null || value === undefined ? '' : String(value));
const short = (value: unknown): string => asText(value).slice(0, 12);
const LONGEST = 160;
const long = (value: unknown): string => {
  const text = asText(value);
  return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
};
const yesNo = (value: unknown): string => (value === true ? 'Yes' : value === false ? 'No' : '');
const named =
  (kind: 'person' | 'instrument') =>
  (id: unknown, record: CaseRecord): string =>
    typeof id === 'string' ? nameOf(record, { kind, id }) : '';

function handText(value: unknown): string {
  if (value === null || value === undefined) return '';
  const { dxMm, dyMm, angleRad, reason } = value as HandPlacing;
  const degrees = (angleRad * 180) / Math.PI;
  return `${dxMm.toFixed(2)} mm across, ${dyMm.toFixed(2)} mm up, turned ${degrees.toFixed(2)}° (${reason})`;
}

const STANDING_WORDS: Readonly<Record<Standing['standing'], string>> = {
  excluded: 'Excluded',
  stands: 'Stands',
};

const explanationName = (id: unknown): string =>
  [...EXPLANATIONS, ...OTHER_EXPLANATIONS].find((each) => each.id === id)?.name ?? asText(id);

const judgementName = (path: unknown): string =>
  judgementTable().find((each) => each.path === path)?.what ?? asText(path);

/** What the log says of records that have no kind of their own, in the order it is read. */
const SHOWN: Readonly<Record<string, Shown>> = {
  name: { label: 'Name', show: asText },
  source: { label: 'Source', show: asText },
  subject: {
    label: 'Of',
    show: (value, record) => (value ? nameOf(record, value as SubjectRef) : ''),
  },
  side: { label: 'Side', show: asText },
  making: { label: 'Made', show: (value) => (value ? makingText(value as TraceMaking) : '') },
  fileName: { label: 'File', show: asText },
  sha256: { label: 'SHA-256 of the file', show: short },
  points: { label: 'Points', show: asText },
  pointsSha256: { label: 'SHA-256 of the points', show: short },
  mirrored: { label: 'Mirrored', show: yesNo },
  hand: { label: 'Placed by hand', show: handText },
  distanceRunKm: { label: 'Distance run, km', show: asText },
  instrumentId: { label: 'Instrument', show: named('instrument') },
  personId: { label: 'Taken by', show: named('person') },
  takenAt: { label: 'Taken at', show: (value) => localTime(asText(value)) },
  disturbance: {
    label: 'State',
    show: (value) => (value ? DISTURBANCE_LABELS[value as Disturbance] : ''),
  },
  note: { label: 'Note', show: asText },
  version: { label: 'Version', show: asText },
  entered: { label: 'Limits, as entered', show: asText },
  explanation: { label: 'Explanation', show: explanationName },
  standing: {
    label: 'It',
    show: (value) => (value ? STANDING_WORDS[value as Standing['standing']] : ''),
  },
  path: { label: 'Judgement', show: judgementName },
  value: { label: 'Value', show: asText },
  reason: { label: 'Reason', show: asText },
  summary: { label: 'Summary', show: long },
  determination: { label: 'Determination', show: long },
  signatories: { label: 'Who signs', show: long },
  caption: { label: 'Caption', show: long },
  clockOffsetS: { label: 'Added to its clock, s', show: asText },
  rows: { label: 'Samples', show: asText },
};

/** What such a record is called in an entry of the log. */
export const RECORD_NOUNS: Readonly<Record<string, string>> = {
  trace: 'an outline',
  ownShape: 'a reference shape',
  railroadLimits: 'the railroad’s own limits',
  standing: 'how an explanation stands',
  judgement: 'a judgement',
  narrative: 'the words of the report',
  photo: 'a photo',
  recorderRun: 'a recorder run',
};

type Side = Readonly<Record<string, unknown>>;

/** Both sides of an entry, field by field, where they differ. */
export const recordChanges = (record: CaseRecord, before: Side, after: Side) =>
  Object.entries(SHOWN).flatMap(([id, { label, show }]) => {
    if (!(id in before) && !(id in after)) return [];
    const change = { label, before: show(before[id], record), after: show(after[id], record) };
    return change.before === change.after ? [] : [change];
  });
