/** A series thinned for drawing: places and values in order, NaN where there was nothing. */
export type Thinned = { readonly x: readonly number[]; readonly y: readonly number[] };

/** A pause this many times the usual step is a gap in the recording, not a straight line. */
const GAP_STEPS = 5;

const usualStep = (x: ArrayLike<number>): number => {
  const steps: number[] = [];
  const stride = Math.max(1, Math.floor(x.length / 200));
  for (let i = 1; i < x.length; i += stride) {
    const step = x[i]! - x[i - 1]!;
    if (step > 0) steps.push(step);
  }
  steps.sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? 0;
};

/** All samples between `from` and `to`, with a NaN put into each pause and at each step back. */
function whole(x: ArrayLike<number>, y: ArrayLike<number>, first: number, last: number): Thinned {
  const step = usualStep(x);
  const [xs, ys]: [number[], number[]] = [[], []];
  for (let i = first; i <= last; i += 1) {
    const run = x[i]! - x[i - 1]!;
    if (i > first && step > 0 && (run > GAP_STEPS * step || run < 0)) {
      xs.push((x[i]! + x[i - 1]!) / 2);
      ys.push(NaN);
    }
    xs.push(x[i]!);
    ys.push(y[i] ?? NaN);
  }
  return { x: xs, y: ys };
}

/**
 * A long series against an ascending x, thinned to at most two points for each of `buckets` equal
 * stretches between `from` and `to`: the lowest and the highest value of each, in the order they
 * came, so that no peak is lost. Stretches without a value become NaN. Series short enough are
 * kept whole.
 */
export function downSample(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  from: number,
  to: number,
  buckets: number,
): Thinned {
  let first = 0;
  while (first < x.length && !(x[first]! >= from)) first += 1;
  let last = x.length - 1;
  while (last >= first && !(x[last]! <= to)) last -= 1;
  if (last < first) return { x: [], y: [] };
  if (last - first + 1 <= 2 * buckets) return whole(x, y, first, last);

  const low = new Int32Array(buckets).fill(-1);
  const high = new Int32Array(buckets).fill(-1);
  const perX = buckets / (to - from);
  for (let i = first; i <= last; i += 1) {
    const value = y[i] ?? NaN;
    const bucket = Math.min(buckets - 1, Math.floor((x[i]! - from) * perX));
    if (!Number.isFinite(value) || !(bucket >= 0)) continue;
    const [l, h] = [low[bucket]!, high[bucket]!];
    if (l < 0 || value < y[l]!) low[bucket] = i;
    if (h < 0 || value > y[h]!) high[bucket] = i;
  }
  const [xs, ys]: [number[], number[]] = [[], []];
  for (let bucket = 0; bucket < buckets; bucket += 1) {
    const [l, h] = [low[bucket]!, high[bucket]!];
    if (l < 0) {
      xs.push(from + (bucket + 0.5) / perX);
      ys.push(NaN);
      continue;
    }
    for (const i of l === h ? [l] : l < h ? [l, h] : [h, l]) {
      xs.push(x[i]!);
      ys.push(y[i]!);
    }
  }
  return { x: xs, y: ys };
}
