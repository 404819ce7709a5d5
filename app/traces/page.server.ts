import type { LoadedCase } from '~/app/case.server';
import { DISTURBANCE_LABELS } from '~/app/readings/wording';
import { systemOf } from '~/app/readings/take.server';
import { placeOf } from '~/app/subjects/place';
import { localTime } from '~/app/times';
import { sameSubject } from '~/lib/case/current';
import { nameOf } from '~/lib/case/name-of';
import type { CaseRecord } from '~/lib/case/record';
import type { Trace } from '~/lib/case/trace';
import { makingText, nameOfTrace } from '~/lib/case/trace-words';
import { earlierLines, raised, type EarlierTrace } from '~/lib/figures/earlier-traces';
import { outlineOverlay } from '~/lib/figures/outline-overlay';
import { outlinePlain } from '~/lib/figures/outline-plain';
import { pointTraceData, pointTraceFigure } from '~/lib/figures/point-trace';
import type { Figure } from '~/lib/figures/shapes';
import { toSvg } from '~/lib/figures/svg';
import type { Outline } from '~/lib/outline/outline';
import { outlineOfPairs } from '~/lib/outline/pairs';
import { tracedPoint } from '~/lib/turnout/point-trace';
import { aboutKey } from './about';
import type { FeatureValues } from './feature-values';
import type { HandTrial } from './hand';
import { placedOutline } from './placed.server';
import { referenceOf, referencesFor, type Reference } from './reference.server';
import { distanceText } from './said.server';

const WIDTHS = { wide: 860, narrow: 340 } as const;
/** A trace higher than a head shows web and base too. */
const HEAD_MM = 70;

const heightOf = ({ yMm }: Outline): number =>
  yMm.reduce((most, y) => Math.max(most, y), -Infinity) -
  yMm.reduce((least, y) => Math.min(least, y), Infinity);

/** Other outlines of the same wheel or rail, latest first. */
const othersOf = ({ traces }: CaseRecord, trace: Trace): readonly EarlierTrace[] =>
  traces
    .filter(
      (other) =>
        other.id !== trace.id &&
        other.removed === null &&
        other.side === trace.side &&
        sameSubject(other.subject, trace.subject),
    )
    .sort((a, b) => ((a.takenAt ?? '') < (b.takenAt ?? '') ? 1 : -1))
    .map((other) => ({
      trace: other,
      label: other.takenAt === null ? 'traced, no date' : `traced ${localTime(other.takenAt)}`,
    }));

/** The picture it was traced on, with its points as they were set; null when it came otherwise. */
function againOf({ record, caseId }: LoadedCase, trace: Trace): string | null {
  const photo = record.photos.find(({ sha256, removed }) => sha256 === trace.sha256 && removed === null);
  if (trace.making.by !== 'photo' || !photo) return null;
  const about = encodeURIComponent(aboutKey(trace));
  return `/cases/${caseId}/traces/photo/${photo.id}?about=${about}&again=${trace.id}`;
}

type Shown = {
  readonly trace: Trace;
  readonly values: FeatureValues;
  readonly reference: Reference | null;
  /** How it is moved by hand, kept or only tried. */
  readonly hand: HandTrial;
  readonly trying: boolean;
};

const asDrawn = ({ record }: LoadedCase, trace: Trace, width: number): Figure =>
  outlinePlain(
    {
      title: nameOfTrace(record, trace),
      description: 'The outline as it was drawn; it could not be placed.',
      lines: [{ outline: outlineOfPairs(trace.pointsMm), as: 'trace', label: 'as it was drawn' }],
      axes: false,
      system: systemOf(record.fields),
    },
    { width },
  );

/** A point has no shape to be laid over: by itself, as it is kept or as it is tried. */
function ofPoint(loaded: LoadedCase, { trace, hand }: Shown, width: number): Figure {
  const { record } = loaded;
  const { mirrored, ...moved } = hand;
  const point = tracedPoint({ ...trace, mirrored, hand: { ...moved, reason: '' } });
  return point.ok
    ? pointTraceFigure(pointTraceData(nameOfTrace(record, trace), point.value, systemOf(record.fields)), {
        width,
      })
    : asDrawn(loaded, trace, width);
}

/** The outline over a reference shape with its dimensions; as it was drawn when it cannot be placed. */
function figureOf(loaded: LoadedCase, shown: Shown, width: number): Figure {
  const { record } = loaded;
  const { trace, values, reference, hand, trying } = shown;
  if (trace.shape === 'point') return ofPoint(loaded, shown, width);
  if (!values.ok) return asDrawn(loaded, trace, width);
  const traced = placedOutline(record, trace, values, hand);
  const part = heightOf(traced) > HEAD_MM ? 'whole' : 'running';
  return outlineOverlay(
    {
      shape: trace.shape,
      system: systemOf(record.fields),
      name: nameOfTrace(record, trace),
      traced,
      uAcrossMm: trace.uncertainty.acrossMm,
      reference: reference && {
        name: reference.name,
        status: reference.status,
        outline: raised(reference.outline(part), values.newTopMm),
      },
      earlier: earlierLines(record, values.newTopMm, othersOf(record, trace)),
      // They are those of the line as it is kept.
      dimensions: trying ? [] : values.dimensions,
    },
    { width },
  );
}

function factsOf({ record }: LoadedCase, trace: Trace) {
  const name = (kind: 'person' | 'instrument', id: string | null): string =>
    id === null ? 'not said' : nameOf(record, { kind, id });
  const { acrossMm, scale, because } = trace.uncertainty;
  const share = scale === 0 ? '' : ` and ${Number((100 * scale).toPrecision(2))} % of every length`;
  return [
    { label: 'How it was made', text: `${makingText(trace.making)}; ${trace.pointsMm.length / 2} points` },
    {
      label: 'Standard uncertainty',
      text: `${Number(acrossMm.toPrecision(2))} mm across the line${share} (k = 1)`,
    },
    ...because.map((text) => ({ label: 'Because', text })),
    { label: 'Taken by', text: name('person', trace.personId) },
    { label: 'With', text: name('instrument', trace.instrumentId) },
    { label: 'When', text: trace.takenAt === null ? 'not said' : localTime(trace.takenAt) },
    { label: 'State when traced', text: DISTURBANCE_LABELS[trace.disturbance] },
    ...(trace.distanceRunKm === null
      ? []
      : [{ label: 'Distance run', text: distanceText(trace.distanceRunKm, systemOf(record.fields)) }]),
    ...(trace.note === '' ? [] : [{ label: 'Note', text: trace.note }]),
    { label: 'File', text: trace.fileName },
    { label: 'SHA-256 of the file', text: trace.sha256 },
  ];
}

/** Everything the page of one outline shows but the table of its features. */
export function tracePage(loaded: LoadedCase, asked: string | null, given: Omit<Shown, 'reference'>) {
  const { record, caseId } = loaded;
  const { trace, values } = given;
  const reference = referenceOf(record, trace, asked);
  const shown = { ...given, reference };
  return {
    caseId,
    id: trace.id,
    title: nameOfTrace(record, trace),
    shape: trace.shape,
    back: placeOf(caseId, trace.subject),
    again: againOf(loaded, trace),
    removed: trace.removed && { at: localTime(trace.removed.at), reason: trace.removed.reason },
    pictures: {
      wide: toSvg(figureOf(loaded, shown, WIDTHS.wide)),
      narrow: toSvg(figureOf(loaded, shown, WIDTHS.narrow)),
    },
    problem: values.ok ? null : values.problem,
    remarks: values.ok ? values.remarks : [],
    reference: reference && {
      id: reference.id,
      name: reference.name,
      status: reference.status,
      source: reference.source,
      notes: reference.notes,
    },
    references: referencesFor(record, trace.shape).map(({ id, name, status }) => ({
      id,
      label: status === 'published' ? name : `${name} (${status})`,
    })),
    facts: factsOf(loaded, trace),
  };
}

export type TracePage = ReturnType<typeof tracePage>;
