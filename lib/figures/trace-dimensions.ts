import type { TakenShape } from '../findings/traced/taken-shape';
import type { Outline, PointMm } from '../outline/outline';
import { formatWithUncertainty } from '../readings/format';
import type { Result } from '../readings/result';
import type { Dimension, UnitSystem } from '../readings/unit';
import { RAIL_FEATURES, type RailFeatureId } from '../rail/features';
import type { TracedRailFeature } from '../rail/trace-features';
import { WHEEL_FEATURES, type WheelFeatureId } from '../wheel/feature-table';
import type { TracedWheelFeature } from '../wheel/trace-features';
import type { OutlineDimension } from './outline-dimensions';

/** How far dimensions stand off the shape, mm. */
const OFF_MM = 6;
const ABOVE_MM = 7;
const BELOW_MM = 3;
/** The vertical loss is drawn beside the axis of the rail, the head width below its gauge points. */
const BESIDE_AXIS_MM = 12;
const WIDTH_BELOW_MM = 26;

/** A feature's value as it is written at its dimension, k = 2 said once for all. */
export const featureText = (value: number, u: number, dimension: Dimension, system: UnitSystem): string =>
  formatWithUncertainty(value, u, dimension, system).replace(' (k = 2)', '');

const shown = (value: number, u: number): boolean => value > 2 * u;

const middle = (a: PointMm, b: PointMm): PointMm => ({
  xMm: (a.xMm + b.xMm) / 2,
  yMm: (a.yMm + b.yMm) / 2,
});

const nearestIndex = ({ xMm, yMm }: Outline, to: PointMm): number => {
  let best = 0;
  let least = Infinity;
  xMm.forEach((x, i) => {
    const away = Math.hypot(x - to.xMm, yMm[i]! - to.yMm);
    if (away < least) [best, least] = [i, away];
  });
  return best;
};

/** The line between its points nearest to two places. */
function pathBetween(outline: Outline, from: PointMm, to: PointMm): readonly PointMm[] {
  const ends = [nearestIndex(outline, from), nearestIndex(outline, to)].sort((a, b) => a - b);
  const [first, last] = [ends[0]!, ends[1]!];
  return Array.from({ length: last - first + 1 }, (_, i) => ({
    xMm: outline.xMm[first + i]!,
    yMm: outline.yMm[first + i]!,
  }));
}

/**
 * The features of a traced wheel as dimensions of its drawing: those an engineer would draw, at the
 * gauge line of the system the case is worked in. A hollow or a false flange no larger than its
 * uncertainty (k = 2) is not drawn.
 */
function wheelDimensions(
  outline: Outline,
  features: Readonly<Record<WheelFeatureId, Result<TracedWheelFeature>>>,
  system: UnitSystem,
): readonly OutlineDimension[] {
  const high = outline.yMm.reduce((a, b) => Math.max(a, b), 0);
  const low = outline.yMm.reduce((a, b) => Math.min(a, b), 0);
  const thickness = system === 'us' ? 'flangeThicknessNa' : 'flangeThickness';
  return WHEEL_FEATURES.flatMap(({ id, name, dimension }): OutlineDimension[] => {
    const feature = features[id];
    if (!feature.ok) return [];
    const { value, u, where } = feature.value;
    const [from, to] = [where[0]!, where[1]!];
    const said = { name, text: featureText(value, u, dimension, system) };
    switch (id) {
      case 'flangeHeight':
        return [{ ...said, kind: 'upright', from, to, xMm: -OFF_MM }];
      case 'flangeThickness':
      case 'flangeThicknessNa':
        return id === thickness ? [{ ...said, kind: 'across', from, to, yMm: high + ABOVE_MM }] : [];
      case 'flangeAngle':
        return [{ ...said, kind: 'tangent', at: middle(from, to), angleRad: -value }];
      case 'climbLength':
        return [{ ...said, kind: 'along', path: pathBetween(outline, from, to) }];
      case 'treadHollow':
        return shown(value, u) ? [{ ...said, kind: 'upright', from, to, xMm: from.xMm }] : [];
      case 'falseFlange':
        return shown(value, u) ? [{ ...said, kind: 'upright', from, to, xMm: to.xMm }] : [];
      case 'rimWidth':
        return [{ ...said, kind: 'across', from, to, yMm: low - BELOW_MM }];
      default:
        return [];
    }
  });
}

/** The same for a traced rail; the gauge-face loss at the depth the gauge is measured at in the system. */
function railDimensions(
  outline: Outline,
  features: Readonly<Record<RailFeatureId, Result<TracedRailFeature>>>,
  system: UnitSystem,
): readonly OutlineDimension[] {
  const low = outline.yMm.reduce((a, b) => Math.min(a, b), 0);
  const loss = system === 'us' ? 'gaugeFaceLoss' : 'gaugeFaceLossEu';
  return RAIL_FEATURES.flatMap(({ id, name, dimension }): OutlineDimension[] => {
    const feature = features[id];
    if (!feature.ok) return [];
    const { value, u, where } = feature.value;
    const { from, to } = where;
    const said = { name, text: featureText(value, u, dimension, system) };
    switch (id) {
      case 'verticalLoss':
        return [{ ...said, kind: 'upright', from, to, xMm: BESIDE_AXIS_MM }];
      case 'gaugeFaceLoss':
      case 'gaugeFaceLossEu':
        return id === loss ? [{ ...said, kind: 'across', from, to, yMm: from.yMm }] : [];
      case 'gaugeFaceAngle':
        return [{ ...said, kind: 'tangent', at: middle(from, to), angleRad: value }];
      case 'headWidth':
        return [{ ...said, kind: 'across', from, to, yMm: Math.max(-WIDTH_BELOW_MM, low + OFF_MM) }];
      default:
        return [];
    }
  });
}

/** What is drawn of an outline with its number, in the units of the case. */
export const dimensionsOf = (taken: TakenShape, system: UnitSystem): readonly OutlineDimension[] =>
  taken.shape === 'wheel'
    ? wheelDimensions(taken.outline, taken.features, system)
    : railDimensions(taken.outline, taken.features, system);
