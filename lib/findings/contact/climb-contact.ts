import { z } from 'zod';
import { flangeContactAngle, flangeContactAngleMethod } from '../../contact/flange-angle';
import { contactSetup } from '../../contact/setup';
import type { Context } from '../context';
import type { LongSum } from '../long-sum';
import { oncePerContext } from '../once-per-context';
import type { Taken } from '../reading-index';
import { featureOf } from '../traced/trace-features';
import { traceName } from '../traced/with-traces';
import { tracedRail, tracedWheel, wanting, type TracedShape } from './traced-shape';
import { gaugeBelowTopMm, STANDARD_GAUGE_MM, usual, USUAL_RADIUS_MM } from './usual';

const VERSION = 1;

export type ClimbContact =
  | { readonly kind: 'found'; readonly taken: Taken; readonly wheel: TracedShape; readonly rail: TracedShape }
  | { readonly kind: 'missing'; readonly missing: readonly string[] };

/** Angle with the rail at its usual cant, and with that moved by its standard uncertainty; or why there is none. */
const schema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('found'), usualRad: z.number(), movedRad: z.number() }),
  z.object({ kind: z.literal('refused'), why: z.string() }),
]);
type Angles = z.infer<typeof schema>;

/**
 * The contact angle of the flanging wheel of the first derailed axle on its rail, from the outlines of both:
 * the pair is mirrored to stand for a whole axle, which the angle does not depend on. The cant is not taken
 * from its reading but from its reference range, so that a reading that bears on rollover does not bear on
 * the climb limit too.
 */
export const climbContact = oncePerContext((context: Context): ClimbContact => {
  const { flanging } = context.sides;
  if (flanging === null)
    return {
      kind: 'missing',
      missing: ['which wheel was flanging: the hand of the curve or the first mark'],
    };
  const wheel = tracedWheel(context, flanging);
  const rail = tracedRail(context, flanging);
  if (wheel === null || rail === null) {
    return {
      kind: 'missing',
      missing: [
        ...(wheel === null ? [wanting(flanging, 'wheel')] : []),
        ...(rail === null ? [wanting(flanging, 'rail')] : []),
      ],
    };
  }
  const angles = context.keep(anglesOf(wheel, rail, gaugeBelowTopMm(context)));
  if (angles.kind === 'refused') return { kind: 'missing', missing: [`a contact of the two: ${angles.why}`] };
  const noise = [
    featureOf(wheel.features, 'flangeAngle'),
    featureOf(rail.features, 'gaugeFaceAngle'),
  ].flatMap((feature) => (feature.kind === 'found' ? [feature.u] : []));
  return {
    kind: 'found',
    wheel,
    rail,
    taken: {
      value: angles.usualRad,
      u: Math.hypot(angles.movedRad - angles.usualRad, Math.max(0, ...noise)),
      readings: [wheel.trace.id, rail.trace.id],
      remarks: [
        `Wheel from ${traceName(wheel.trace)}; rail from ${traceName(rail.trace)}.`,
        context.sides.remark,
        wheel.remark,
        rail.remark,
        'Rail at any cant of the usual range; uncertainty from it and from the larger of those of flange angle and gauge-face angle.',
      ].filter((remark) => remark !== ''),
      method: flangeContactAngleMethod,
    },
  };
});

const anglesOf = (wheel: TracedShape, rail: TracedShape, belowTopMm: number): LongSum<Angles> => {
  const cant = usual('railCant');
  const backToBackMm = usual('backToBack').value;
  return {
    key: ['contact angle', VERSION, belowTopMm, cant.value, cant.u, wheel.key, rail.key].join('|'),
    schema,
    compute: () => {
      const at = (cantRad: number) => {
        const side = { wheel: wheel.outline, rail: rail.outline };
        const setup = contactSetup({
          left: side,
          right: side,
          backToBackMm,
          gaugeMm: STANDARD_GAUGE_MM,
          gaugeBelowTopMm: belowTopMm,
          cantLeftRad: cantRad,
          cantRightRad: cantRad,
          rollingRadiusMm: USUAL_RADIUS_MM,
        });
        return setup.ok ? flangeContactAngle(setup.value, 'right') : setup;
      };
      const standing = at(cant.value);
      if (!standing.ok) return { kind: 'refused', why: standing.message };
      const moved = at(cant.value + cant.u);
      if (!moved.ok) return { kind: 'refused', why: moved.message };
      return { kind: 'found', usualRad: standing.value.steepestRad, movedRad: moved.value.steepestRad };
    },
  };
};
