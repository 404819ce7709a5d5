import { z } from 'zod';
import type { CaseRecord } from '../../case/record';
import type { Trace } from '../../case/trace';
import { outlineOf, type Outline } from '../../outline/outline';
import type { RailFeatureId } from '../../rail/features';
import { refuse, type Result } from '../../readings/result';
import type { WheelFeatureId } from '../../wheel/feature-table';
import type { LongSum } from '../long-sum';
import { takenShape, type TakenShape } from './taken-shape';

export type TracedFeatureId = WheelFeatureId | RailFeatureId;

/** Value and standard uncertainty (k = 1) in mm, rad or 1, or why there is none. */
export type TracedFeature =
  | { readonly kind: 'found'; readonly value: number; readonly u: number }
  | { readonly kind: 'missing'; readonly why: string };

/** What one outline says; `notPlaced` when it could not be laid in the frame of its shape. */
export type TracedFeatures =
  | {
      readonly kind: 'placed';
      readonly features: Readonly<Record<string, TracedFeature>>;
      /** In the frame of its shape, corrected by hand where somebody did. x, then y, mm. */
      readonly xMm: readonly number[];
      readonly yMm: readonly number[];
    }
  | { readonly kind: 'notPlaced'; readonly why: string };

/** Raised whenever the way features are taken changes: what was kept before is then computed anew. */
const VERSION = 2;

const schema: z.ZodType<TracedFeatures> = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('placed'),
    features: z.record(
      z.string(),
      z.discriminatedUnion('kind', [
        z.object({ kind: z.literal('found'), value: z.number(), u: z.number() }),
        z.object({ kind: z.literal('missing'), why: z.string() }),
      ]),
    ),
    xMm: z.array(z.number()),
    yMm: z.array(z.number()),
  }),
  z.object({ kind: z.literal('notPlaced'), why: z.string() }),
]);

/** Everything the features of an outline depend on, in one text. */
export function traceKey(record: CaseRecord, trace: Trace, seed: number): string {
  const { id, shape, mirrored, hand, uncertainty, making, pointsMm } = trace;
  const rail = record.entities.rail.find((each) => each.id === trace.subject.id);
  const section = shape === 'rail' ? String(rail?.fields.section ?? '') : '';
  // Errors of the line hold together over one pin of a pin gauge.
  const pitchMm = making.by === 'pins' ? making.pitchMm : null;
  const { acrossMm, scale } = uncertainty;
  const moved = hand && [hand.dxMm, hand.dyMm, hand.angleRad];
  const plumb = making.plumb === true;
  const about = { VERSION, seed, id, shape, mirrored, moved, acrossMm, scale, pitchMm, section, plumb };
  return `features of an outline|${JSON.stringify(about)}|${pointsMm.join(' ')}`;
}

/**
 * The features of one outline with their uncertainty, kept as findings take them: see `takenShape`.
 */
export const tracedFeatures = (record: CaseRecord, trace: Trace, seed: number): LongSum<TracedFeatures> => ({
  key: traceKey(record, trace, seed),
  schema,
  compute: () => {
    const taken = takenShape(record, trace, seed);
    return taken.ok ? placedAs(taken.value) : { kind: 'notPlaced', why: taken.message };
  },
});

const placedAs = ({ outline, listed }: TakenShape): TracedFeatures => ({
  kind: 'placed',
  features: Object.fromEntries(
    listed.map(({ id, found }) => [
      id,
      found.ok
        ? { kind: 'found', value: found.value.value, u: found.value.u }
        : { kind: 'missing', why: found.message },
    ]),
  ),
  xMm: [...outline.xMm],
  yMm: [...outline.yMm],
});

/** One feature of an outline; says why there is none. */
export const featureOf = (features: TracedFeatures, id: TracedFeatureId): TracedFeature =>
  features.kind === 'notPlaced'
    ? { kind: 'missing', why: features.why }
    : (features.features[id] ?? { kind: 'missing', why: 'It is not taken from this outline.' });

/** The outline in the frame of its shape. */
export const outlineIn = (features: TracedFeatures): Result<Outline> =>
  features.kind === 'notPlaced'
    ? refuse(features.why)
    : { ok: true, value: outlineOf(features.xMm, features.yMm) };
