/** Values on a grid of pixels, row after row. */
export type Raster = { readonly width: number; readonly height: number; readonly values: Float32Array };

function bell(sigmaPx: number): readonly number[] {
  const radius = Math.ceil(2.7 * sigmaPx);
  const half = Array.from({ length: radius + 1 }, (_, i) => Math.exp(-(i * i) / (2 * sigmaPx * sigmaPx)));
  const sum = half.reduce((total, weight, i) => total + (i === 0 ? weight : 2 * weight), 0);
  return half.map((weight) => weight / sum);
}

/** A row with its first and last value repeated outwards. */
function padded(
  row: Float32Array,
  from: Float32Array,
  start: number,
  every: number,
  count: number,
  by: number,
) {
  const first = from[start]!;
  const last = from[start + (count - 1) * every]!;
  for (let i = 0; i < by; i += 1) {
    row[i] = first;
    row[by + count + i] = last;
  }
  for (let i = 0; i < count; i += 1) row[by + i] = from[start + i * every]!;
}

/** Smoothed with a bell curve of `sigmaPx`; the edge is carried on outside the picture. */
export function blurred(values: Float32Array, width: number, height: number, sigmaPx: number): Float32Array {
  const weights = bell(sigmaPx);
  const radius = weights.length - 1;
  const out = new Float32Array(values.length);
  const row = new Float32Array(width + 2 * radius);
  for (let y = 0; y < height; y += 1) {
    padded(row, values, y * width, 1, width, radius);
    for (let x = 0; x < width; x += 1) {
      let sum = weights[0]! * row[x + radius]!;
      for (let k = 1; k <= radius; k += 1) sum += weights[k]! * (row[x + radius - k]! + row[x + radius + k]!);
      out[y * width + x] = sum;
    }
  }
  // Down the picture row by row, which the processor's cache prefers to column by column.
  const sums = new Float32Array(values.length);
  for (let y = 0; y < height; y += 1) {
    const at = y * width;
    for (let k = 0; k <= radius; k += 1) {
      const weight = weights[k]!;
      const above = Math.max(0, y - k) * width;
      const below = Math.min(height - 1, y + k) * width;
      if (k === 0) for (let x = 0; x < width; x += 1) sums[at + x] = weight * out[at + x]!;
      else for (let x = 0; x < width; x += 1) sums[at + x]! += weight * (out[above + x]! + out[below + x]!);
    }
  }
  return sums;
}

const halfOf = (length: number): number => Math.max(1, Math.floor(length / 2));

function fold(
  { width, height, values }: Raster,
  join: (a: number, b: number, c: number, d: number) => number,
): Raster {
  const w = halfOf(width);
  const h = halfOf(height);
  const out = new Float32Array(w * h);
  for (let y = 0; y < h; y += 1) {
    const above = 2 * y * width;
    const below = Math.min(height - 1, 2 * y + 1) * width;
    for (let x = 0; x < w; x += 1) {
      const right = Math.min(width - 1, 2 * x + 1);
      out[y * w + x] = join(
        values[above + 2 * x]!,
        values[above + right]!,
        values[below + 2 * x]!,
        values[below + right]!,
      );
    }
  }
  return { width: w, height: h, values: out };
}

/** Half as many pixels each way, each the mean of four. */
export const halved = (raster: Raster): Raster => fold(raster, (a, b, c, d) => (a + b + c + d) / 4);

/** Half as many pixels each way, each the largest of four. */
export const pooled = (raster: Raster): Raster => fold(raster, (a, b, c, d) => Math.max(a, b, c, d));

/** Twice as many pixels each way, straight between them; `width` × `height` is the raster it was halved from. */
export function raised(raster: Raster, width: number, height: number): Float32Array {
  const out = new Float32Array(width * height);
  const { width: w, height: h, values } = raster;
  for (let y = 0; y < height; y += 1) {
    const near = Math.min(h - 1, y >> 1);
    const far = Math.min(h - 1, Math.max(0, near + (y % 2 === 0 ? -1 : 1)));
    for (let x = 0; x < width; x += 1) {
      const close = Math.min(w - 1, x >> 1);
      const other = Math.min(w - 1, Math.max(0, close + (x % 2 === 0 ? -1 : 1)));
      out[y * width + x] =
        0.5625 * values[near * w + close]! +
        0.1875 * (values[near * w + other]! + values[far * w + close]!) +
        0.0625 * values[far * w + other]!;
    }
  }
  return out;
}

/** The value between pixels, straight between the four about it; outside the picture its edge. */
export function valueAt({ width, height, values }: Raster, x: number, y: number): number {
  const u = Math.min(width - 1, Math.max(0, x));
  const v = Math.min(height - 1, Math.max(0, y));
  const left = Math.floor(u);
  const top = Math.floor(v);
  const right = Math.min(width - 1, left + 1);
  const bottom = Math.min(height - 1, top + 1);
  const across = u - left;
  const down = v - top;
  return (
    (1 - down) * ((1 - across) * values[top * width + left]! + across * values[top * width + right]!) +
    down * ((1 - across) * values[bottom * width + left]! + across * values[bottom * width + right]!)
  );
}
