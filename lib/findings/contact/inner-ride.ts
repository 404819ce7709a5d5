import { z } from 'zod';
import { likelyShifts, loadedPart } from '../../contact/loaded-part';
import { contactSetup } from '../../contact/setup';
import { contactSweep } from '../../contact/sweep';
import { toCanonical } from '../../readings/convert';
import { quantityOf } from '../../readings/quantities';
import { remarked } from '../build';
import type { Context } from '../context';
import type { KeyInput } from '../key-input';
import type { LongSum } from '../long-sum';
import { oncePerContext } from '../once-per-context';
import type { Taken } from '../reading-index';
import { traceName } from '../traced/with-traces';
import { otherSide } from '../pod-sides';
import { percent } from '../words';
import { tracedRail, tracedWheel, type TracedShape } from './traced-shape';
import { gaugeBelowTopMm, usual, USUAL_RADIUS_MM } from './usual';

const VERSION = 1;

/** Gauges between which track in service lies; engineering judgement. */
const GAUGES_MM = [56.25, 56.75, 57.25].map((inches) => toCanonical(inches, 'in', 'crossLength'));

const schema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('found'), shares: z.array(z.number()) }),
  z.object({ kind: z.literal('refused'), why: z.string() }),
]);
type Ride = z.infer<typeof schema>;

/**
 * Share of the likely positions at which the wheel opposite the flanging one stands on the field side of its
 * rail, from the outlines of both: 0 to 1. Null without both outlines. Gauge, back-to-back and cant are taken
 * from what is usual and not from their readings, which bear on other facts.
 */
const innerRide = oncePerContext((context: Context): Taken | null => {
  const { flanging } = context.sides;
  if (flanging === null) return null;
  const side = otherSide(flanging);
  const wheel = tracedWheel(context, side);
  const rail = tracedRail(context, side);
  if (wheel === null || rail === null) return null;
  const ride = context.keep(rideOf(wheel, rail, gaugeBelowTopMm(context)));
  if (ride.kind === 'refused') return null;
  const { shares } = ride;
  const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  const spread = Math.sqrt(
    shares.reduce((sum, share) => sum + (share - mean) ** 2, 0) / Math.max(1, shares.length - 1),
  );
  return {
    value: mean,
    u: Math.max(spread, LEAST_U),
    readings: [wheel.trace.id, rail.trace.id],
    remarks: [
      `The ${side} wheel stands on the field side of its rail at ${percent(mean)} of the likely positions: ${traceName(wheel.trace)}, on ${traceName(rail.trace)}.`,
      'Usual gauge, back-to-back and cant; uncertainty from gauges of 56 1/4 to 57 1/4 in.',
      ...(wheel.remark === '' ? [] : [wheel.remark]),
      rail.remark,
    ],
  };
});

/** Hollow at which a tread begins to ride its field-side edge, and at which it rides nothing else. mm. Engineering judgement. */
const RIDES_FROM_MM = 2;
const RIDES_WHOLLY_MM = 5;

const rideOfHollow = (hollowMm: number): number =>
  (hollowMm - RIDES_FROM_MM) / (RIDES_WHOLLY_MM - RIDES_FROM_MM);

const HOLLOW = quantityOf('treadHollow');
if (HOLLOW.kind !== 'measure') throw new Error('the hollow of a tread is measured');

/** Below 0 a tread wants that much more hollow before it rides its field-side edge. */
export const RIDE_REFERENCE: KeyInput['reference'] = {
  low: rideOfHollow(HOLLOW.reference.low),
  high: rideOfHollow(HOLLOW.reference.high),
  source: `from the hollow of the tread, 2 to 5 mm: ${HOLLOW.reference.source}`,
};

/**
 * How far the wheel opposite the flanging one rides the field side of its rail, up to 1: from the outlines of
 * both, else from the hollow of its tread, which begins to ride its edge at 2 mm and rides it wholly at 5 mm.
 * Null when neither is known.
 */
export function fieldSideRide(context: Context, hollow: Taken | null): Taken | null {
  const traced = innerRide(context);
  if (traced !== null || hollow === null) return traced;
  const { method: _, ...said } = remarked(
    hollow,
    'Ride on the field side judged from the hollow: from 2 mm on, wholly at 5 mm.',
  );
  return {
    ...said,
    value: rideOfHollow(hollow.value),
    u: hollow.u / (RIDES_WHOLLY_MM - RIDES_FROM_MM),
  };
}

/** Which positions are likely is itself judged. */
const LEAST_U = 0.05;

const rideOf = (wheel: TracedShape, rail: TracedShape, belowTopMm: number): LongSum<Ride> => {
  const backToBackMm = usual('backToBack').value;
  const cantRad = usual('railCant').value;
  return {
    key: ['ride on the field side', VERSION, belowTopMm, wheel.key, rail.key].join('|'),
    schema,
    compute: () => {
      const shares: number[] = [];
      for (const gaugeMm of GAUGES_MM) {
        const side = { wheel: wheel.outline, rail: rail.outline };
        const setup = contactSetup({
          left: side,
          right: side,
          backToBackMm,
          gaugeMm,
          gaugeBelowTopMm: belowTopMm,
          cantLeftRad: cantRad,
          cantRightRad: cantRad,
          rollingRadiusMm: USUAL_RADIUS_MM,
        });
        if (!setup.ok) return { kind: 'refused', why: setup.message };
        // The pair is mirrored: with the flanging wheel to the right, this one stands on the left.
        const shifts = likelyShifts(setup.value, 'right');
        if (!shifts.ok) return { kind: 'refused', why: shifts.message };
        const part = loadedPart(contactSweep(setup.value, shifts.value), 'left');
        if (!part.ok) return { kind: 'refused', why: part.message };
        shares.push(part.value.shares.fieldSide);
      }
      return { kind: 'found', shares };
    },
  };
};
