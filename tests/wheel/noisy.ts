import { arcLengths } from '~/lib/outline/arc';
import { outlineOf, type Outline } from '~/lib/outline/outline';
import { normalDraws } from '~/lib/readings/draws';

/**
 * The line with noise across it, standard deviation `sigmaMm`, that holds together over `togetherMm`
 * along the line (independent values averaged over that length), as a hand with a thick pencil draws.
 */
export function noisy(outline: Outline, sigmaMm: number, togetherMm: number, seed: number): Outline {
  const along = arcLengths(outline);
  const n = along.length;
  const fine = togetherMm / 8;
  const white = normalDraws('noise', seed, Math.ceil(along[n - 1]! / fine) + 10);
  const at = (i: number): number => {
    const first = Math.floor(along[i]! / fine);
    let sum = 0;
    for (let k = 0; k < 8; k += 1) sum += white[first + k]!;
    return (sigmaMm * sum) / Math.sqrt(8);
  };
  const across = (i: number): readonly [number, number] => {
    const [a, b] = [Math.max(0, i - 1), Math.min(n - 1, i + 1)];
    const dx = outline.xMm[b]! - outline.xMm[a]!;
    const dy = outline.yMm[b]! - outline.yMm[a]!;
    const size = Math.hypot(dx, dy) || 1;
    return [-dy / size, dx / size];
  };
  return outlineOf(
    outline.xMm.map((x, i) => x + at(i) * across(i)[0]),
    outline.yMm.map((y, i) => y + at(i) * across(i)[1]),
  );
}
