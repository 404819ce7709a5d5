import { DISTURBANCE_LABELS } from '~/app/readings/wording';
import { localTime } from '~/app/times';
import { nameOf } from '~/lib/case/name-of';
import type { CaseRecord, Disturbance, SubjectRef } from '~/lib/case/record';
import type { HandPlacing, TraceMaking } from '~/lib/case/trace';
import { makingText } from '~/lib/case/trace-words';

type Shown = {
  readonly label: string;
  readonly show: (value: unknown, record: CaseRecord) => string;
};

const asText = (value: unknown): string => (value === null || value === undefined ? '' : String(value));
const short = (value: unknown): string => asText(value).slice(0, 12);
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

/** What the log says of an outline or of a reference shape, in the order it is read. */
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
};

/** The words for an entry of the log about an outline, a reference shape or the railroad's own limits. */
export const TRACE_NOUNS: Readonly<Record<string, string>> = {
  trace: 'an outline',
  ownShape: 'a reference shape',
  railroadLimits: 'the railroad’s own limits',
};

type Side = Readonly<Record<string, unknown>>;

/** Both sides of an entry, field by field, where they differ. */
export const traceChanges = (record: CaseRecord, before: Side, after: Side) =>
  Object.entries(SHOWN).flatMap(([id, { label, show }]) => {
    const change = { label, before: show(before[id], record), after: show(after[id], record) };
    return change.before === change.after ? [] : [change];
  });
