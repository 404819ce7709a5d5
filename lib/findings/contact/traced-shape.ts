import type { Trace } from '../../case/trace';
import type { Outline } from '../../outline/outline';
import type { Context } from '../context';
import type { Side } from '../pod-sides';
import { placeRemark, railsNearPod } from '../rail-place';
import { outlineIn, traceKey, type TracedFeatures } from '../traced/trace-features';
import type { TracedPart } from '../traced/trace-index';

/** The undisturbed outline that stands for a wheel or rail, in the frame of its shape. */
export type TracedShape = {
  readonly trace: Trace;
  readonly outline: Outline;
  readonly features: TracedFeatures;
  /** Everything the outline depends on. */
  readonly key: string;
  readonly remark: string;
};

function shapeOf(context: Context, part: TracedPart, remark: string): TracedShape | null {
  const trace = context.traces.undisturbed(part).at(-1);
  if (trace === undefined) return null;
  const features = context.traces.features(trace);
  const outline = outlineIn(features);
  return outline.ok
    ? {
        trace,
        outline: outline.value,
        features,
        key: traceKey(context.record, trace, context.seed),
        remark,
      }
    : null;
}

/** A wheel of the first derailed wheelset; null when no undisturbed outline of it can be placed. */
export function tracedWheel(context: Context, side: Side): TracedShape | null {
  const { wheelset } = context.first;
  return wheelset === null
    ? null
    : shapeOf(context, { kind: 'wheelset', id: wheelset.entity.id, slot: side }, wheelset.remark);
}

/** The rail of a side nearest the POD of which an undisturbed outline can be placed; null when there is none. */
export function tracedRail(context: Context, side: Side): TracedShape | null {
  for (const rail of railsNearPod(context, side)) {
    const shape = shapeOf(context, { kind: 'rail', id: rail.entity.id, slot: '' }, placeRemark(rail));
    if (shape !== null) return shape;
  }
  return null;
}

/** What is wanting, in the words of a list. */
export const wanting = (side: Side, part: 'wheel' | 'rail'): string =>
  part === 'wheel'
    ? `an undisturbed outline of the ${side} wheel of the first derailed axle`
    : `an undisturbed outline of the ${side} rail near the POD`;
