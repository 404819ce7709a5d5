import type { LoadedCase } from '~/app/case.server';
import { DISTURBANCE_LABELS } from '~/app/readings/wording';
import { systemOf } from '~/app/readings/take.server';
import { placeOf } from '~/app/subjects/place';
import { localTime } from '~/app/times';
import { nameOf } from '~/lib/case/name-of';
import type { Trace } from '~/lib/case/trace';
import { makingText, tracePart } from '~/lib/case/trace-words';
import { outlinePlain, type DrawnOutline } from '~/lib/figures/outline-plain';
import { toSvg } from '~/lib/figures/svg';
import type { Outline } from '~/lib/outline/outline';
import { outlineOfPairs } from '~/lib/outline/pairs';
import { placed } from '~/lib/outline/placing';
import type { HandTrial } from './hand';
import { placedTrace } from './placed.server';
import { referenceOf, referencesFor, type Reference } from './reference.server';
import { distanceText } from './said.server';

const WIDTH = 720;
/** A trace higher than a head shows web and base too. */
const HEAD_MM = 70;

const heightOf = ({ yMm }: Outline): number =>
  yMm.reduce((most, y) => Math.max(most, y), -Infinity) -
  yMm.reduce((least, y) => Math.min(least, y), Infinity);

const raised = (outline: Outline, dyMm: number): Outline =>
  placed(outline, { mirrored: false, angleRad: 0, dxMm: 0, dyMm });

type Picture = {
  readonly svg: string;
  readonly problem: string | null;
  readonly remarks: readonly string[];
};

/** The outline over a reference shape; as it was drawn, with the reason, when it cannot be placed. */
function picture(
  { record }: LoadedCase,
  trace: Trace,
  reference: Reference | null,
  trial: HandTrial,
): Picture {
  const system = systemOf(record.fields);
  const lies = placedTrace(record, trace, trial);
  const outline = lies.ok ? lies.value.outline : outlineOfPairs(trace.pointsMm);
  const part = heightOf(outline) > HEAD_MM ? 'whole' : 'running';
  const lines: readonly DrawnOutline[] = [
    ...(lies.ok && reference
      ? [
          {
            outline: raised(reference.outline(part), lies.value.newTopMm),
            as: 'reference' as const,
            label: reference.name,
          },
        ]
      : []),
    { outline, as: 'trace', label: 'traced' },
  ];
  const figure = outlinePlain(
    {
      title: `${tracePart(trace)}, ${nameOf(record, trace.subject)}`,
      description: lies.ok
        ? `The traced outline${reference ? ` over ${reference.name}` : ''}, in the frame of the ${trace.shape}.`
        : 'The outline as it was drawn; it could not be placed.',
      lines,
      axes: lies.ok,
      system,
    },
    { width: WIDTH },
  );
  return {
    svg: toSvg(figure),
    problem: lies.ok ? null : lies.message,
    remarks: lies.ok ? lies.value.remarks : [],
  };
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

/** Everything the page of one outline shows but its features. */
export function tracePage(loaded: LoadedCase, trace: Trace, asked: string | null, trial: HandTrial) {
  const { record, caseId } = loaded;
  const reference = referenceOf(record, trace, asked);
  return {
    caseId,
    id: trace.id,
    title: `${tracePart(trace)}, ${nameOf(record, trace.subject)}`,
    shape: trace.shape,
    back: placeOf(caseId, trace.subject),
    removed: trace.removed && { at: localTime(trace.removed.at), reason: trace.removed.reason },
    picture: picture(loaded, trace, reference, trial),
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
