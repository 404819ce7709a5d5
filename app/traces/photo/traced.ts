import type { TracedShape, TraceMaking } from '~/lib/case/trace';
import { extentMm } from '~/lib/outline/arc';
import type { Outline } from '~/lib/outline/outline';
import { formatMeasure } from '~/lib/readings/format';
import { ok, type Result } from '~/lib/readings/result';
import type { UnitSystem } from '~/lib/readings/unit';
import { outlineFromPhoto, type TracedOutline } from '~/lib/tracing/from-photo';
import type { PixelPoint } from '~/lib/tracing/line';
import { registerPoint } from '~/lib/turnout/register-point';
import { registerWheel } from '~/lib/wheel/register';
import { scaleOf, type ScaleWay } from './scale';

/** What was set on a picture, and how large it is said to be. */
export type TracedPhoto = {
  readonly way: ScaleWay;
  readonly marks: readonly PixelPoint[];
  readonly distances: readonly string[];
  readonly system: UnitSystem;
  readonly clicks: readonly PixelPoint[];
  readonly path: readonly PixelPoint[];
  readonly straight: readonly number[];
  readonly widthPx: number | null;
  readonly size: readonly [number, number];
  /** Focal length as of 35-mm film that the photo's file names; null when it names none. */
  readonly focal35Mm: number | null;
};

/** The outline in mm with its uncertainty, and how it was made; or what is still to be set. */
export function tracedPhoto(
  given: TracedPhoto,
): Result<TracedOutline & { readonly making: Extract<TraceMaking, { by: 'photo' }> }> {
  const { way, marks, distances, system, clicks, path, straight, widthPx, size, focal35Mm } = given;
  const scale = scaleOf(way, marks, distances, system);
  if (!scale.ok) return scale;
  const [width, height] = size;
  const traced = outlineFromPhoto({
    path,
    clicks,
    scale: scale.value,
    size: { width, height },
    straight,
    widthPx,
    taking: { focal35Mm },
  });
  if (!traced.ok) return traced;
  return ok({
    ...traced.value,
    making: { by: 'photo', size, focal35Mm, scale: scale.value, clicks, straight },
  });
}

/** Whether it can be laid at all; what a rail needs is only known with its section. */
const placedAs = (shape: TracedShape, outline: Outline): Result<unknown> | null =>
  shape === 'wheel'
    ? registerWheel(outline, { mirrored: false })
    : shape === 'point'
      ? registerPoint(outline, { mirrored: false })
      : null;

/** What has come out so far, in a sentence, or what is still to be set. */
export function outcomeOf(shape: TracedShape, given: TracedPhoto): Result<string> {
  const traced = tracedPhoto(given);
  if (!traced.ok) return traced;
  const { outline, tiltRad, uncertainty } = traced.value;
  const size = (mm: number): string =>
    formatMeasure(mm, {
      dimension: 'crossLength',
      unit: given.system === 'us' ? 'in' : 'mm',
      form: 'decimal',
    });
  const tilt =
    tiltRad === null
      ? 'One distance alone cannot show whether the camera was tilted.'
      : `A tilt of ${Math.round((tiltRad * 180) / Math.PI)}° was taken out.`;
  const { from, to } = extentMm(outline);
  const placed = placedAs(shape, outline);
  if (placed && !placed.ok) return placed;
  return ok(
    `The outline is ${size(to.xMm - from.xMm)} wide and ${size(to.yMm - from.yMm)} high as drawn. ${tilt} Scale good to ${(200 * uncertainty.scale).toPrecision(1)} % (k = 2).`,
  );
}
