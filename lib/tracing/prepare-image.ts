import { blurred, halved, pooled, raised } from './raster';

/** How strongly each pixel looks like the middle of a dark line, on a grid `step` pixels wide. */
export type RidgeLevel = {
  readonly step: number;
  readonly width: number;
  readonly height: number;
  readonly strength: Float32Array;
};

/** A picture made ready for following lines. Plain data, so that it can be handed to and from a worker. */
export type PreparedImage = {
  readonly width: number;
  readonly height: number;
  /** Share of the paper's own light that is missing: 0 paper, 1 black. */
  readonly darkness: Float32Array;
  /** Steps 1, 2 and 4, finest first. */
  readonly levels: readonly RidgeLevel[];
  /** Strength below which there is nothing but the grain of paper and camera. */
  readonly grain: number;
};

const CELL = 16;
const BLOCK = 4;
/** Below this the paper itself is black; the division would only magnify noise. */
const DARKEST_PAPER = 12;

/**
 * The light on the bare paper, one value for each cell of 16 × 16 pixels: the brightest block of
 * 4 × 4 in the cell, so that a line through the cell does not darken it, then evened out.
 */
function paperLight(grey: ArrayLike<number>, width: number, height: number) {
  const columns = Math.max(1, Math.ceil(width / CELL));
  const rows = Math.max(1, Math.ceil(height / CELL));
  const brightest = new Float32Array(columns * rows);
  for (let top = 0; top < height; top += BLOCK) {
    for (let left = 0; left < width; left += BLOCK) {
      const bottom = Math.min(height, top + BLOCK);
      const right = Math.min(width, left + BLOCK);
      let sum = 0;
      for (let y = top; y < bottom; y += 1) {
        for (let x = left; x < right; x += 1) sum += grey[y * width + x]!;
      }
      const mean = sum / ((bottom - top) * (right - left));
      const cell = Math.floor(top / CELL) * columns + Math.floor(left / CELL);
      if (mean > brightest[cell]!) brightest[cell] = mean;
    }
  }
  return { columns, rows, light: blurred(brightest, columns, rows, 1.5) };
}

/** Grey values with uneven light taken out: 1 − grey/light of the bare paper about it. */
function darknessOf(grey: ArrayLike<number>, width: number, height: number): Float32Array {
  const { columns, rows, light } = paperLight(grey, width, height);
  const darkness = new Float32Array(width * height);
  for (let y = 0; y < height; y += 1) {
    const v = Math.min(rows - 1, Math.max(0, (y + 0.5) / CELL - 0.5));
    const above = Math.floor(v) * columns;
    const below = Math.min(rows - 1, Math.floor(v) + 1) * columns;
    const down = v - Math.floor(v);
    for (let x = 0; x < width; x += 1) {
      const u = Math.min(columns - 1, Math.max(0, (x + 0.5) / CELL - 0.5));
      const left = Math.floor(u);
      const right = Math.min(columns - 1, left + 1);
      const across = u - left;
      const paper =
        (1 - down) * ((1 - across) * light[above + left]! + across * light[above + right]!) +
        down * ((1 - across) * light[below + left]! + across * light[below + right]!);
      darkness[y * width + x] = 1 - grey[y * width + x]! / Math.max(DARKEST_PAPER, paper);
    }
  }
  return darkness;
}

const SIGMA_PX = 1.5;

/**
 * Ridge strength at one scale: of the second derivatives of the smoothed darkness the eigenvalue
 * across the line, σ²·(−λ₁ − |λ₂|/2) where positive. λ₂ runs along the line and is near zero on a
 * line, as large as λ₁ on a speck.
 * Source of scale-normalised ridge detection: T. Lindeberg, "Edge detection and ridge detection with
 * automatic scale selection", Int. J. Computer Vision 30 (1998); the share taken off for specks: our own.
 */
function ridgeOf(darkness: Float32Array, width: number, height: number): Float32Array {
  const smooth = blurred(darkness, width, height, SIGMA_PX);
  const strength = new Float32Array(width * height);
  for (let y = 1; y < height - 1; y += 1) {
    for (let x = 1; x < width - 1; x += 1) {
      const i = y * width + x;
      const twice = 2 * smooth[i]!;
      const xx = smooth[i - 1]! + smooth[i + 1]! - twice;
      const yy = smooth[i - width]! + smooth[i + width]! - twice;
      const mean = (xx + yy) / 2;
      if (mean >= 0) continue;
      const xy =
        (smooth[i + width + 1]! + smooth[i - width - 1]! - smooth[i + width - 1]! - smooth[i - width + 1]!) /
        4;
      const half = (xx - yy) / 2;
      const spread = Math.sqrt(half * half + xy * xy);
      const found = spread - mean - Math.abs(mean + spread) / 2;
      if (found > 0) strength[i] = SIGMA_PX * SIGMA_PX * found;
    }
  }
  return strength;
}

const larger = (a: Float32Array, b: Float32Array): Float32Array => {
  for (let i = 0; i < a.length; i += 1) if (b[i]! > a[i]!) a[i] = b[i]!;
  return a;
};

const GRAIN_TIMES_MEDIAN = 6;
/** A pencil that takes less than this share of the light cannot be told from a shadow. */
const FAINTEST = 0.015;
const SAMPLES = 20_000;

function grainOf(strength: Float32Array): number {
  const every = Math.max(1, Math.floor(strength.length / SAMPLES));
  const sample = Float32Array.from(
    { length: Math.ceil(strength.length / every) },
    (_, i) => strength[i * every]!,
  ).sort();
  return Math.max(FAINTEST, GRAIN_TIMES_MEDIAN * (sample[Math.floor(sample.length / 2)] ?? 0));
}

/**
 * A grey picture made ready for following dark lines on light paper: uneven light divided out, and
 * the ridge strength at three scales, for lines from about 2 to 20 pixels wide.
 *
 * `grey` is row after row, 0 black to 255 white, `width` × `height` pixels. Meant for 0.5 to 4
 * megapixels; a larger photo is reduced first. Throws when there are not as many values as pixels
 * (a bug, never a user's error).
 */
export function prepareImage(
  grey: Uint8ClampedArray | Uint8Array,
  width: number,
  height: number,
): PreparedImage {
  if (grey.length !== width * height) throw new Error('A picture has one grey value for each pixel.');
  const darkness = darknessOf(grey, width, height);
  const half = halved({ width, height, values: darkness });
  const quarter = halved(half);
  const fine = { width, height, values: ridgeOf(darkness, width, height) };
  const middle = { ...half, values: ridgeOf(half.values, half.width, half.height) };
  const coarse = { ...quarter, values: ridgeOf(quarter.values, quarter.width, quarter.height) };
  const grain = grainOf(fine.values);
  const middleFine = pooled(fine);
  const coarseMiddle = pooled(middle);
  const level2 = larger(larger(pooled(middleFine).values, coarseMiddle.values), coarse.values);
  const level1 = larger(larger(middleFine.values, middle.values), raised(coarse, half.width, half.height));
  const level0 = larger(
    larger(fine.values, raised(middle, width, height)),
    raised({ ...half, values: raised(coarse, half.width, half.height) }, width, height),
  );
  return {
    width,
    height,
    darkness,
    levels: [
      { step: 1, width, height, strength: level0 },
      { step: 2, width: half.width, height: half.height, strength: level1 },
      { step: 4, width: quarter.width, height: quarter.height, strength: level2 },
    ],
    grain,
  };
}
