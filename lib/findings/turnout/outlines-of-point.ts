import type { Entity } from '../../case/record';
import type { Trace } from '../../case/trace';
import { DEPTH_STEP_MM } from '../../turnout/flange-at-rail';
import type { Chip } from '../../turnout/point-section';
import type { PointSide } from '../../turnout/point-side';
import { pointTraceMethod, tracedPoint, type TracedPoint } from '../../turnout/point-trace';
import { distinct } from '../build';
import type { Context } from '../context';
import type { Taken } from '../reading-index';
import { LEFT_OUT_WORDS } from '../reading-state';
import { traceRemarks } from '../traced/with-traces';
import { sideOfPoint } from './wheel-at-point';

/** An undisturbed outline of the point that was read, laid in its own frame. */
export type OutlineOfPoint = {
  readonly behindMm: number;
  readonly trace: Trace;
  readonly point: TracedPoint;
  readonly thickness: Taken;
};

/** The outlines that stand for a point, one for each distance behind its tip; those that cannot be laid are left out. */
export const outlinesOfPoint = (context: Context, turnout: Entity): readonly OutlineOfPoint[] =>
  sectionsTraced(context, turnout).flatMap(({ behindMm, trace, earlier, leftOut }) => {
    const point = trace && tracedOnce(trace);
    if (trace === null || !point?.ok) return [];
    const { thicknessMm, uMm } = point.value;
    return [
      {
        behindMm,
        trace,
        point: point.value,
        thickness: {
          value: thicknessMm,
          u: uMm,
          readings: [trace.id] as const,
          method: pointTraceMethod,
          remarks: distinct([
            ...traceRemarks(trace),
            earlier === 0 ? '' : `The latest of ${earlier + 1} outlines of this cross-section is taken.`,
            leftOut.length === 0
              ? ''
              : `${leftOut.length === 1 ? 'Another outline' : `${leftOut.length} other outlines`} of it left out: ${distinct(leftOut.map((why) => LEFT_OUT_WORDS[why])).join(', ')}.`,
          ]),
        },
      },
    ];
  });

/** Cross-sections of the point that was read, as they were traced. */
export function sectionsTraced(context: Context, turnout: Entity) {
  const side = sideOfPoint(context, turnout);
  return side === null ? [] : context.traces.alongPoint(turnout.id, side);
}

const known = new WeakMap<Trace, ReturnType<typeof tracedPoint>>();

/** A trace of a record never changes. */
export function tracedOnce(trace: Trace): ReturnType<typeof tracedPoint> {
  const found = known.get(trace) ?? tracedPoint(trace);
  known.set(trace, found);
  return found;
}

/**
 * The side below the top that the point would have without its chip: the highest part of an outline taken
 * within the chip is the chip's floor.
 */
export function belowChip({ behindMm, point }: OutlineOfPoint, chip: Chip | null): PointSide {
  const { side } = point;
  if (chip === null || !isWithin(chip, behindMm)) return side;
  const missing = Math.round(chip.depthMm / DEPTH_STEP_MM);
  return { ...side, outMm: Float64Array.from([...Array<number>(missing).fill(0), ...side.outMm]) };
}

export const isWithin = ({ fromMm, lengthMm }: Chip, behindMm: number): boolean =>
  behindMm >= fromMm && behindMm < fromMm + lengthMm;
