import { z } from 'zod';
import { flangeClearance } from '../../contact/clearance';
import { conicityCurve, NOMINAL_AMPLITUDE_MM } from '../../contact/conicity';
import { likelyShifts, loadedPart } from '../../contact/loaded-part';
import { contactSetup, type ContactSetup, type Side } from '../../contact/setup';
import { contactAt } from '../../contact/state';
import { contactSweep } from '../../contact/sweep';
import type { Context } from '../context';
import { keyInputsOf } from '../key-inputs';
import type { LongSum } from '../long-sum';
import { takenFrom } from '../mechanics/from-key-input';
import { oncePerContext } from '../once-per-context';
import { railReading } from '../rail-place';
import { readingsOf } from '../build';
import type { NonEmpty, Taken } from '../reading-index';
import { featureOf, type TracedFeatureId } from '../traced/trace-features';
import { traceName } from '../traced/with-traces';
import { across, degreesText } from '../words';
import { tracedRail, tracedWheel, wanting, type TracedShape } from './traced-shape';
import { gaugeBelowTopMm, towards, usual, USUAL_RADIUS_MM } from './usual';

const VERSION = 1;
/** A clearance is found to 0.0001 mm: a hair beyond it the flange bears. */
const BEARS_MM = 0.01;

const number = z.number();
const place = z.object({ meanXMm: number, spreadXMm: number, fieldSide: number, twoPoint: number });
const result = z.object({
  leftMm: number,
  rightMm: number,
  /** Null where the wheelset has no swing of this amplitude. */
  conicity: number.nullable(),
  whyNoConicity: z.string(),
  /** At flange contact on either side, mm, of the flanging wheel less the other. */
  radiusLeftMm: number,
  radiusRightMm: number,
  left: place,
  right: place,
});
type Standing = z.infer<typeof result>;
const schema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('found'), standing: result, moved: z.array(result) }),
  z.object({ kind: z.literal('refused'), why: z.string() }),
]);
type Sum = z.infer<typeof schema>;

/** One outcome of the stand with what moves it. */
export type StandValue = { readonly value: number; readonly u: number };

/** The first derailed wheelset as traced on the rails near the POD as traced. */
export type Stand =
  | {
      readonly kind: 'stands';
      readonly standing: Standing;
      /** An outcome and its uncertainty from gauge, back-to-back and cant, and from the noise of the outlines, given. */
      readonly of: (read: (standing: Standing) => number, noise: number) => StandValue;
      /** Uncertainty of a feature of one outline, 0 where it has none. */
      readonly noise: (side: Side, part: 'wheel' | 'rail', feature: TracedFeatureId) => number;
      readonly readings: NonEmpty<string>;
      readonly remarks: readonly string[];
    }
  | { readonly kind: 'missing'; readonly missing: readonly string[] };

type Inputs = {
  readonly gaugeMm: number;
  readonly backToBackMm: number;
  readonly cantLeftRad: number;
  readonly cantRightRad: number;
};

const SIDES = ['left', 'right'] as const;

/** Contact of the first derailed wheelset with the rails near the POD; says what is missing for it. */
export const standOf = oncePerContext((context: Context): Stand => {
  const shapes = {
    left: { wheel: tracedWheel(context, 'left'), rail: tracedRail(context, 'left') },
    right: { wheel: tracedWheel(context, 'right'), rail: tracedRail(context, 'right') },
  };
  const inputs = keyInputsOf(context);
  const gauge = takenFrom(inputs.gaugeStanding);
  const back = takenFrom(inputs.backToBackMin);
  const { left, right } = shapes;
  if (
    left.wheel === null ||
    left.rail === null ||
    right.wheel === null ||
    right.rail === null ||
    gauge === null ||
    back === null
  ) {
    return {
      kind: 'missing',
      missing: [
        ...SIDES.flatMap((side) => [
          ...(shapes[side].wheel === null ? [wanting(side, 'wheel')] : []),
          ...(shapes[side].rail === null ? [wanting(side, 'rail')] : []),
        ]),
        ...(back === null ? ['back-to-back of the first derailed wheelset'] : []),
        ...(gauge === null ? ['gauge at an undisturbed station within 62 ft before the POD'] : []),
      ],
    };
  }
  const cantRead = {
    left: railReading(context, 'left', 'railCant')?.taken ?? null,
    right: railReading(context, 'right', 'railCant')?.taken ?? null,
  };
  const cant = { left: cantRead.left ?? usual('railCant'), right: cantRead.right ?? usual('railCant') };
  const sides = {
    left: { wheel: left.wheel, rail: left.rail },
    right: { wheel: right.wheel, rail: right.rail },
  };
  const at: Inputs = {
    gaugeMm: gauge.value,
    backToBackMm: back.value,
    cantLeftRad: cant.left.value,
    cantRightRad: cant.right.value,
  };
  // Only the difference of gauge and back-to-back moves the wheels on the rails.
  const uPlayMm = Math.hypot(gauge.u, back.u);
  const moves: readonly Inputs[] = [
    { ...at, gaugeMm: at.gaugeMm + uPlayMm },
    { ...at, cantLeftRad: at.cantLeftRad + cant.left.u },
    { ...at, cantRightRad: at.cantRightRad + cant.right.u },
  ];
  const sum = context.keep(standSum(sides, at, moves, context.sides.flanging, gaugeBelowTopMm(context)));
  if (sum.kind === 'refused')
    return { kind: 'missing', missing: [`a stand of the wheelset on its rails: ${sum.why}`] };
  const taken: readonly Taken[] = [gauge, ...SIDES.flatMap((side) => cantRead[side] ?? [])];
  const traced = SIDES.flatMap((side) => [sides[side].wheel, sides[side].rail]);
  return {
    kind: 'stands',
    standing: sum.standing,
    of: (read, noise) => {
      const value = read(sum.standing);
      const parts = sum.moved.map((moved) => read(moved) - value);
      return { value, u: Math.hypot(noise, ...parts) };
    },
    noise: (side, part, feature) => {
      const found = featureOf(sides[side][part].features, feature);
      return found.kind === 'found' ? found.u : 0;
    },
    readings: [
      left.wheel.trace.id,
      ...traced.slice(1).map(({ trace }) => trace.id),
      ...readingsOf(back, ...taken),
    ],
    remarks: [
      `Outlines: ${traced.map(({ trace }) => traceName(trace)).join('; ')}.`,
      `Back-to-back ${across(back.value)}, standing gauge ${across(gauge.value)}.`,
      ...SIDES.map((side) =>
        cantRead[side] === null
          ? `Cant of the ${side} rail not read: any of the usual range.`
          : `Cant of the ${side} rail ${degreesText(cant[side].value)} inward.`,
      ),
      ...traced.map(({ remark }) => remark).filter((remark) => remark !== ''),
    ],
  };
});

type Shapes = Readonly<Record<Side, { readonly wheel: TracedShape; readonly rail: TracedShape }>>;

function standSum(
  shapes: Shapes,
  at: Inputs,
  moves: readonly Inputs[],
  flanging: Side | null,
  belowTopMm: number,
): LongSum<Sum> {
  const side = (which: Side) => ({ wheel: shapes[which].wheel.outline, rail: shapes[which].rail.outline });
  const one = (inputs: Inputs) => {
    const setup = contactSetup({
      left: side('left'),
      right: side('right'),
      ...inputs,
      gaugeBelowTopMm: belowTopMm,
      rollingRadiusMm: USUAL_RADIUS_MM,
    });
    return setup.ok ? standingOf(setup.value, flanging) : setup;
  };
  const keys = SIDES.flatMap((which) => [shapes[which].wheel.key, shapes[which].rail.key]);
  return {
    key: ['stand', VERSION, JSON.stringify([at, moves]), flanging, belowTopMm, ...keys].join('|'),
    schema,
    compute: () => {
      const standing = one(at);
      if (!standing.ok) return { kind: 'refused', why: standing.message };
      // Where a moved one cannot stand, it says nothing of how the outcome moves.
      const moved = moves.map(one).flatMap((each) => (each.ok ? [each.value] : []));
      return { kind: 'found', standing: standing.value, moved };
    },
  };
}

function standingOf(setup: ContactSetup, flanging: Side | null) {
  const clearance = flangeClearance(setup);
  if (!clearance.ok) return clearance;
  const { leftMm, rightMm } = clearance.value;
  const atFlange = (side: Side, clear: number) => contactAt(setup, towards(side) * (clear + BEARS_MM));
  const [onLeft, onRight] = [atFlange('left', leftMm), atFlange('right', rightMm)];
  if (!onLeft.ok) return onLeft;
  if (!onRight.ok) return onRight;
  const shifts = likelyShifts(setup, flanging ?? 'right');
  if (!shifts.ok) return shifts;
  const sweep = contactSweep(setup, shifts.value);
  const [left, right] = [loadedPart(sweep, 'left'), loadedPart(sweep, 'right')];
  if (!left.ok) return left;
  if (!right.ok) return right;
  const conicity = conicityCurve(setup, [NOMINAL_AMPLITUDE_MM])[0]?.conicity;
  const placeOf = ({ meanXMm, spreadXMm, shares, twoPoint }: (typeof left)['value']) => ({
    meanXMm,
    spreadXMm,
    fieldSide: shares.fieldSide,
    twoPoint,
  });
  const standing: Standing = {
    leftMm,
    rightMm,
    conicity: conicity?.ok === true ? conicity.value : null,
    whyNoConicity: conicity?.ok === false ? conicity.message : '',
    radiusLeftMm: -onLeft.value.radiusDifferenceMm,
    radiusRightMm: onRight.value.radiusDifferenceMm,
    left: placeOf(left.value),
    right: placeOf(right.value),
  };
  return { ok: true as const, value: standing };
}
