import type { Context } from '../findings/context';
import { pointDrawing, type PointDrawing } from '../findings/turnout/point-drawing';
import type { UnitSystem } from '../readings/unit';
import { systemOf } from './case-marks';

export type PointSectionData = PointDrawing & { readonly system: UnitSystem };

/** Sections through stock rail, point and flange at one facing turnout; null where nothing could be computed. */
export function pointSectionData(context: Context, turnoutId: string): PointSectionData | null {
  const drawing = pointDrawing(context, turnoutId);
  return drawing && { ...drawing, system: systemOf(context.record) };
}
