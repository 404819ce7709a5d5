import { type Method } from '../findings/finding';
import { type PointSection } from './point-section';

/**
 * How far the field side of a hollow tread hangs below the top of the stock rail while the tread runs on
 * the point, mm: hollow + depth of the point's top below the stock rail (above it is negative). More than
 * zero: it meets the stock rail.
 */
export const falseFlangeBelowStockRail = (hollowMm: number, pointDepthMm: number): number =>
  hollowMm + pointDepthMm;

/**
 * Where the tread passes from the stock rail to the point: the first place, mm behind the tip, where the
 * top of the point is level with the stock rail, straight between sections; null where it is still lower
 * at the last. `sections` from the tip back.
 */
export function treadTransfersMm(
  sections: readonly Pick<PointSection, 'behindMm' | 'depthMm'>[],
): number | null {
  for (const [i, here] of sections.entries()) {
    if (here.depthMm > 0) continue;
    const before = sections[i - 1];
    if (before === undefined || before.depthMm <= here.depthMm) return here.behindMm;
    const share = before.depthMm / (before.depthMm - here.depthMm);
    return before.behindMm + (here.behindMm - before.behindMm) * share;
  }
  return null;
}

export const falseFlangeMethod: Method = {
  id: 'false-flange-at-point',
  name: 'False flange at the points',
  formula:
    'hollow = highest place of the field side of the tread − lowest of its running band, each a parabola over 10 mm of the traced line, else as read; below the stock rail = hollow + depth of the top of the point where it was read farthest back. The tread passes to the point where its top is level with the stock rail.',
  validRange:
    'A tread traced out to its field-side edge, or its hollow as read, and a point read back to where it carries the tread: level with the stock rail or above it. The tread is taken level on the point; cone, cant and deflection are not in it.',
  sources: [
    {
      text: '49 CFR 213.135(c): the outer edge of the wheel tread must not contact the gauge side of the stock rail',
      status: 'published',
    },
    { text: 'Plane geometry', status: 'published' },
    { text: 'A false flange is spoken of from a hollow of 1 mm', status: 'engineering judgement' },
  ],
};
