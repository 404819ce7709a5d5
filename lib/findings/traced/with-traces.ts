import type { Trace } from '../../case/trace';
import { railTraceMethod } from '../../rail/trace-features';
import { formatMeasure } from '../../readings/format';
import { quantityOf } from '../../readings/quantities';
import type { Dimension } from '../../readings/unit';
import type { SubjectKind } from '../../readings/quantity';
import { wheelTraceMethod } from '../../wheel/trace-features';
import type { ReadingIndex, Taken } from '../reading-index';
import { LEFT_OUT_WORDS, type LeftOutWhy } from '../reading-state';
import { across, dayText } from '../words';
import { STANDS_FOR } from './stands-for';
import { featureOf, type TracedFeatureId } from './trace-features';
import type { TracedPart, TraceIndex } from './trace-index';

/**
 * The readings of a record together with its outlines. Where the same quantity of one wheel or rail was
 * both read and traced undisturbed, the one with the smaller standard uncertainty is taken, the outline
 * when they are equal; the remarks name it, give the other, and say when the two differ by more than the
 * uncertainties of both allow (k = 2). Of several outlines the latest stands.
 */
export function withTraces(read: ReadingIndex, traces: TraceIndex): ReadingIndex {
  const known = new Map<string, Taken | null>();
  return {
    ...read,
    take: (kind, id, quantity, slot = '') => {
      const of = tracedAs(kind, id, quantity, slot);
      if (of === null) return read.take(kind, id, quantity, slot);
      const key = `${kind}|${id}|${quantity}|${slot}`;
      const before = known.get(key);
      if (before !== undefined) return before;
      const taken = theSurer(read.take(kind, id, quantity, slot), takenFromTrace(traces, of), quantity);
      known.set(key, taken);
      return taken;
    },
    leftOut: (kind, id, quantity, slot = '') => {
      const of = tracedAs(kind, id, quantity, slot);
      if (of !== null && takenFromTrace(traces, of) !== null) return null;
      return read.leftOut(kind, id, quantity, slot) ?? (of === null ? null : traces.leftOut(of.part));
    },
    anyRead: (quantity) =>
      read.anyRead(quantity) ||
      (['wheelset', 'rail'] as const).some((kind) => quantity in STANDS_FOR[kind] && traces.any(kind)),
  };
}

type TracedAs = { readonly part: TracedPart; readonly feature: TracedFeatureId };

function tracedAs(kind: SubjectKind, id: string, quantity: string, slot: string): TracedAs | null {
  if (kind !== 'wheelset' && kind !== 'rail') return null;
  const feature = STANDS_FOR[kind][quantity];
  return feature === undefined ? null : { part: { kind, id, slot }, feature };
}

/** A feature of the outline that stands for a wheel or rail; null when there is none. */
export function takenFromTrace(traces: TraceIndex, { part, feature }: TracedAs): Taken | null {
  const undisturbed = traces.undisturbed(part);
  const trace = undisturbed.at(-1);
  if (trace === undefined) return null;
  const found = featureOf(traces.features(trace), feature);
  if (found.kind === 'missing') return null;
  return {
    value: found.value,
    u: found.u,
    readings: [trace.id],
    remarks: [...traceRemarks(trace), ...besideRemarks(undisturbed, traces.leftOutBeside(part))],
    method: part.kind === 'wheelset' ? wheelTraceMethod : railTraceMethod,
  };
}

/** "The outline traced 7 May 2026, file left-wheel.csv". */
export const traceName = ({ takenAt, fileName }: Pick<Trace, 'takenAt' | 'fileName'>): string =>
  `the outline ${takenAt === null ? 'without a date' : `traced ${dayText(takenAt)}`}, file ${fileName}`;

export const traceRemarks = (trace: Trace): readonly string[] => [
  `From ${traceName(trace)}.`,
  ...(trace.hand === null ? [] : [`The outline was moved by hand: ${trace.hand.reason}`]),
];

function besideRemarks(undisturbed: readonly Trace[], leftOut: readonly LeftOutWhy[]): readonly string[] {
  const earlier = undisturbed.length - 1;
  return [
    ...(earlier === 0
      ? []
      : [`The latest of ${undisturbed.length} outlines of it is taken; the earlier ones are its history.`]),
    ...(leftOut.length === 0
      ? []
      : [
          `${leftOut.length} other outline${leftOut.length === 1 ? '' : 's'} of it left out: ${[
            ...new Set(leftOut),
          ]
            .map((why) => LEFT_OUT_WORDS[why])
            .join(', ')}.`,
        ]),
  ];
}

function theSurer(reading: Taken | null, traced: Taken | null, quantityId: string): Taken | null {
  if (reading === null || traced === null) return traced ?? reading;
  const useTrace = traced.u <= reading.u;
  const [taken, other] = useTrace ? [traced, reading] : [reading, traced];
  const quantity = quantityOf(quantityId);
  const dimension = quantity.kind === 'measure' ? quantity.dimension : 'count';
  const text = (each: Taken): string =>
    `${valueText(each.value, dimension)} ${each === traced ? 'from the outline' : 'read'}`;
  const apart = Math.abs(traced.value - reading.value);
  const allowed = 2 * Math.hypot(traced.u, reading.u);
  return {
    ...taken,
    remarks: [
      ...taken.remarks,
      `Both traced and read: ${text(taken)} is known better and is taken; ${text(other)}.`,
      ...(apart > allowed
        ? [
            'The two differ by more than the uncertainties of both allow (k = 2): find out which of them errs.',
          ]
        : []),
    ],
  };
}

const valueText = (value: number, dimension: Dimension): string =>
  dimension === 'crossLength'
    ? across(value)
    : formatMeasure(value, { dimension, unit: dimension === 'angle' ? '°' : '1' });
