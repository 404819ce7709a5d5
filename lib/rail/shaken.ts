import { type TraceUncertainty } from '../case/trace';
import { arcLengths } from '../outline/arc';
import { outlineOf, type Outline } from '../outline/outline';
import { normalDraws } from '../readings/draws';

/** Along the line, noise of a pencil or a pin is much the same over this distance, mm. Engineering judgement. */
export const NOISE_LENGTH_MM = 5;

/**
 * `draws` other traces of the same shape: each point moved across the line by normal noise of standard
 * deviation `acrossMm`, drawn every `NOISE_LENGTH_MM` along the line and blended between, and the whole
 * scaled by 1 + a normal draw of standard deviation `scale`. The same for the same key and seed.
 */
export function shakenTraces(
  outline: Outline,
  { acrossMm, scale }: Pick<TraceUncertainty, 'acrossMm' | 'scale'>,
  key: string,
  seed: number,
  draws: number,
): Outline[] {
  const { xMm, yMm } = outline;
  const n = xMm.length;
  const along = arcLengths(outline);
  const knots = Math.ceil((along[n - 1] ?? 0) / NOISE_LENGTH_MM) + 2;
  const across = normalDraws(`${key}|across`, seed, draws * knots);
  const scales = normalDraws(`${key}|scale`, seed, draws);
  return Array.from({ length: draws }, (_, draw) => {
    const factor = 1 + scale * scales[draw]!;
    const x = new Float64Array(n);
    const y = new Float64Array(n);
    for (let i = 0; i < n; i += 1) {
      const place = along[i]! / NOISE_LENGTH_MM;
      const knot = draw * knots + Math.floor(place);
      const share = place - Math.floor(place);
      // Blended so that the variance stays that of one draw.
      const blend = ((1 - share) * across[knot]! + share * across[knot + 1]!) / Math.hypot(1 - share, share);
      const a = Math.max(0, i - 1);
      const b = Math.min(n - 1, i + 1);
      const length = Math.hypot(xMm[b]! - xMm[a]!, yMm[b]! - yMm[a]!) || 1;
      x[i] = factor * (xMm[i]! - (acrossMm * blend * (yMm[b]! - yMm[a]!)) / length);
      y[i] = factor * (yMm[i]! + (acrossMm * blend * (xMm[b]! - xMm[a]!)) / length);
    }
    return outlineOf(x, y);
  });
}
