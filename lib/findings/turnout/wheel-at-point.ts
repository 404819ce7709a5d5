import type { Entity } from '../../case/record';
import type { Trace } from '../../case/trace';
import { simpleFlangeAtRail } from '../../mechanics/point-clearance';
import type { Outline } from '../../outline/outline';
import { tracedOutline } from '../../shapes/traced-outline';
import type { WheelAgainstRail } from '../../turnout/against-stock-rail';
import type { FlangeAtRail } from '../../turnout/flange-at-rail';
import { shakenWheel, type ShakenWheel } from '../../turnout/shaken-wheel';
import { normalUpperTail } from '../../rules/normal';
import { distinct } from '../build';
import type { Context } from '../context';
import type { Side } from '../pod-sides';
import type { Taken } from '../reading-index';
import { stockRail, type StockRail } from './stock-rail';

/** Value of the drawn input that stands for the line as it was traced; every other picks one of the shaken lines. */
const AS_TRACED = 0;

/** The flange that meets a point: what is drawn of it, and how the draws make a flange. */
export type WheelAtPoint = {
  readonly side: Side;
  readonly inputs: readonly [Taken, ...Taken[]];
  /** Flange for values in the order of the inputs, from the first of them on. */
  readonly flange: (values: ArrayLike<number>, from: number) => FlangeAtRail;
  readonly remarks: readonly string[];
  /** Outlines of wheel and stock rail and how they stand; null from simple readings. */
  readonly outlines: {
    readonly wheel: Outline;
    readonly rail: Outline;
    readonly stands: WheelAgainstRail;
  } | null;
  /** How far the field side of a traced tread hangs below its running band; null without a trace that reaches it. */
  readonly hollow: Taken | null;
};

export type WheelOrMissing = WheelAtPoint | { readonly missing: readonly string[] };

/** The side of the point that was read; the flanging side where that is not said. */
export function sideOfPoint({ sides }: Context, { fields }: Entity): Side | null {
  const { pointRead } = fields;
  return pointRead === 'left' || pointRead === 'right' ? pointRead : sides.flanging;
}

/**
 * The wheel of the first derailed axle on one side against the stock rail there: from its trace where one
 * was made undisturbed and a stock rail has an outline, else from flange height and angle.
 */
export function wheelAtPoint(context: Context, side: Side, turnout: Entity): WheelOrMissing {
  const traced = tracedWheel(context, side, turnout);
  if ('flange' in traced) return traced;
  const { wheelset } = context.first;
  const of = (quantity: string): Taken | null =>
    wheelset === null ? null : context.read.take('wheelset', wheelset.entity.id, quantity, side);
  const [height, angle] = [of('flangeHeight'), of('flangeAngle')];
  if (height === null || angle === null) {
    const named = (taken: Taken | null, what: string): readonly string[] =>
      taken === null ? [`${what} of the ${side} wheel of the first derailed axle, or its outline`] : [];
    return { missing: [...named(height, 'flange height'), ...named(angle, 'flange angle')] };
  }
  return {
    side,
    inputs: [height, angle],
    flange: rememberedSimple(),
    remarks: distinct([
      'From simple readings: no outline of the wheel was used. The flange is a straight face with a 12-mm round tip.',
      ...traced.why,
      wheelRemark(context, side),
    ]),
    outlines: null,
    hollow: null,
  };
}

/** The same draws come again for every place of the point; each flange is made once. */
function rememberedSimple(): WheelAtPoint['flange'] {
  const known = new Map<string, FlangeAtRail>();
  return (values, from) => {
    const [height = NaN, angle = NaN] = [values[from], values[from + 1]];
    const key = `${height}|${angle}`;
    const flange = known.get(key) ?? simpleFlangeAtRail(height, angle);
    known.set(key, flange);
    return flange;
  };
}

const wheelRemark = ({ first }: Context, side: Side): string =>
  `Wheel on the ${side} side, against the stock rail of the point that was read. ${first.wheelset?.remark ?? ''}`.trim();

function tracedWheel(
  context: Context,
  side: Side,
  turnout: Entity,
): WheelAtPoint | { readonly why: readonly string[] } {
  const wheelset = context.first.wheelset?.entity.id;
  const trace =
    wheelset === undefined
      ? undefined
      : context.traces.undisturbed({ kind: 'wheelset', id: wheelset, slot: side }).at(-1);
  if (trace === undefined) return { why: [] };
  const wheel = tracedOutline(context.record, trace);
  if (!wheel.ok) return { why: [`The outline of the ${side} wheel could not be used: ${wheel.message}`] };
  const rail = stockRail(context, side, turnout);
  if (rail === null) {
    return {
      why: [
        `The outline of the ${side} wheel was not used: no ${side} rail with a section or an outline is entered for the stock rail.`,
      ],
    };
  }
  const shaken = shakenOnce(trace, wheel.value, rail, context.seed);
  if (!shaken.ok) return { why: [`The outline of the ${side} wheel could not be used: ${shaken.message}`] };
  const { asTraced, others } = shaken.value;
  return {
    side,
    inputs: [
      {
        value: AS_TRACED,
        u: 1,
        readings: rail.trace === null ? [trace.id] : [trace.id, rail.trace.id],
        remarks: [],
      },
    ],
    flange: (values, from) => {
      const drawn = values[from] ?? AS_TRACED;
      if (drawn === AS_TRACED) return asTraced;
      return (
        others[Math.min(others.length - 1, Math.floor(normalUpperTail(drawn) * others.length))] ?? asTraced
      );
    },
    remarks: distinct([`From the outline of the ${side} wheel.`, rail.remark, wheelRemark(context, side)]),
    outlines: { wheel: wheel.value, rail: rail.outline, stands: asTraced },
    hollow: hollowTaken(trace, shaken.value),
  };
}

function hollowTaken(trace: Trace, { hollowMm, otherHollowsMm }: ShakenWheel): Taken | null {
  if (hollowMm === null || otherHollowsMm.length < 2) return null;
  const squares = otherHollowsMm.reduce((sum, other) => sum + (other - hollowMm) ** 2, 0);
  return {
    value: hollowMm,
    u: Math.sqrt(squares / otherHollowsMm.length),
    readings: [trace.id],
    remarks: [],
  };
}

const known = new WeakMap<Trace, Map<string, ReturnType<typeof shakenWheel>>>();

/** Standing the lines on the rail takes some tenths of a second; a trace of a record never changes. */
function shakenOnce(
  trace: Trace,
  wheel: Outline,
  rail: StockRail,
  seed: number,
): ReturnType<typeof shakenWheel> {
  const of = known.get(trace) ?? new Map<string, ReturnType<typeof shakenWheel>>();
  known.set(trace, of);
  const key = `${rail.trace?.id ?? rail.section}|${seed}`;
  const before = of.get(key);
  if (before !== undefined) return before;
  const found = shakenWheel(wheel, trace, rail, seed);
  of.set(key, found);
  return found;
}
