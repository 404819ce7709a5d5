import type { ScalePair } from '../case/trace';
import { ok, refuse, type Result } from '../readings/result';
import { backwards, normalised, sheetToPicture, taken, type Camera, type PictureSize } from './camera';
import { cholesky, leastSquares, type LeastSquares } from './least-squares';
import { gap, type PixelPoint } from './line';
import { knownPoints, type KnownPoint } from './scale-marks';

/** What is known of how the picture was taken. */
export type PictureTaking = {
  /** A flatbed scanner looks straight down; a camera may be tilted. */
  readonly with?: 'camera' | 'flatbed';
  /** Focal length as of 35-mm film, from the photo's EXIF; null or absent when not known. */
  readonly focal35Mm?: number | null;
};

/** A flat sheet as a picture shows it: from pixels to mm on the paper. */
export type Sheet = {
  readonly camera: Camera;
  /** Tilt of the camera out of square with the paper, rad. */
  readonly tiltRad: number;
  /** A line in mm on the paper, x to the right and y up as in the picture. Refuses points on or beyond the horizon. */
  readonly toMm: (points: readonly PixelPoint[]) => Result<readonly PixelPoint[]>;
  /**
   * How well the sheet is known over a line, k = 1: `scale` as a share of length; `warpMm` what the
   * line would still be out of shape after the best move, turn and scale, root mean square.
   */
  readonly spreadOver: (points: readonly PixelPoint[]) => { readonly scale: number; readonly warpMm: number };
};

/** A point is marked to about a pixel; k = 1. Common practice, no source. */
export const MARKED_TO_PX = 1;

/** Diagonal of a 36 × 24 mm film picture, mm, to which equivalent focal lengths refer (CIPA DC-008, Exif: FocalLengthIn35mmFilm). */
const FILM_DIAGONAL_MM = Math.hypot(36, 24);

/**
 * What is expected before anything is marked; k = 1, all common practice, no source: telephones
 * and pocket cameras see 24 to 50 mm as of 35-mm film (focal length 0.85 of the longer side, to a
 * factor of 1.35); the lens looks out near the middle of the picture; a photo taken as square as
 * the hand can is within 5°, one that carries a second pair may be anywhere up to 35°.
 */
const USUAL_FOCAL = Math.log(0.85);
const FOCAL_SPREAD = 0.3;
const EXIF_FOCAL_SPREAD = 0.06;
const CENTRE_SPREAD = 0.03;
const TILT_BY_HAND_RAD = (5 * Math.PI) / 180;
const TILT_TO_BE_FOUND_RAD = (20 * Math.PI) / 180;
const TILT_OF_A_SCANNER_RAD = 1e-4;
const MOST_TILT_RAD = (35 * Math.PI) / 180;

/** Observations beyond the nine numbers of the camera, with four points: their eight coordinates and the five spreads. */
const LEFT_OVER = 4;
/** Sum of squares beyond which the marks are not what they are said to be: 6 in 100 of good marks (chi-squared of 4) reach it, fewer in practice. */
const POOR_FIT = 9;

/** Share of a standard uncertainty by which the camera is moved to see what it does to a line; small, so that it acts in proportion. */
const SMALL = 0.02;

const STARTS: readonly PixelPoint[] = [
  [0, 0],
  [0.25, 0],
  [-0.25, 0],
  [0, 0.25],
  [0, -0.25],
];

function expectedLogFocal(size: PictureSize, focal35Mm: number | null): number {
  if (focal35Mm === null || !(focal35Mm > 0)) return USUAL_FOCAL;
  const diagonal = Math.hypot(size.width, size.height) / Math.max(size.width, size.height);
  return Math.log((focal35Mm / FILM_DIAGONAL_MM) * diagonal);
}

/** Where a camera looking straight down would stand, from the longest of the known distances. */
function squareOn(points: readonly KnownPoint[], logFocal: number, tilt: PixelPoint): readonly number[] {
  const [first, second] = points as readonly [KnownPoint, KnownPoint];
  const seen = [second.seen[0] - first.seen[0], second.seen[1] - first.seen[1]] as const;
  const true_ = [second.mm[0] - first.mm[0], second.mm[1] - first.mm[1]] as const;
  const turn = Math.atan2(seen[1], seen[0]) - Math.atan2(true_[1], true_[0]);
  const perMm = Math.hypot(...seen) / Math.hypot(...true_);
  const cos = perMm * Math.cos(turn);
  const sin = perMm * Math.sin(turn);
  const focal = Math.exp(logFocal);
  const x = (first.seen[0] - cos * first.mm[0] + sin * first.mm[1]) / focal;
  const y = (first.seen[1] - sin * first.mm[0] - cos * first.mm[1]) / focal;
  return [logFocal, 0, 0, ...tilt, turn, x, y, Math.log(focal / perMm)];
}

function fitted(
  points: readonly KnownPoint[],
  logFocal: number,
  focalSpread: number,
  tiltSpread: number,
  markedTo: number,
) {
  const residuals = (p: readonly number[]): readonly number[] => {
    const [f = 0, cx = 0, cy = 0, tx = 0, ty = 0] = p;
    const h = sheetToPicture(p as unknown as Camera);
    return [
      ...points.flatMap(({ mm, seen }) => {
        const [x, y] = taken(h, mm);
        return [(x - seen[0]) / markedTo, (y - seen[1]) / markedTo];
      }),
      (f - logFocal) / focalSpread,
      cx / CENTRE_SPREAD,
      cy / CENTRE_SPREAD,
      tx / tiltSpread,
      ty / tiltSpread,
    ];
  };
  return STARTS.map((tilt) =>
    leastSquares(residuals, squareOn(points, logFocal, tilt)),
  ).reduce<LeastSquares | null>(
    (best, next) => (next !== null && (best === null || next.sum < best.sum) ? next : best),
    null,
  );
}

/** Whether two lines of points are the same but for a move, a turn and a scale: that scale, and what is left over. */
function likeness(base: readonly PixelPoint[], moved: readonly PixelPoint[]) {
  const mean = (points: readonly PixelPoint[], axis: 0 | 1): number =>
    points.reduce((sum, point) => sum + point[axis], 0) / points.length;
  const centredOn = (points: readonly PixelPoint[]): readonly PixelPoint[] => {
    const [x, y] = [mean(points, 0), mean(points, 1)];
    return points.map((point) => [point[0] - x, point[1] - y]);
  };
  const [z, w] = [centredOn(base), centredOn(moved)];
  const size = z.reduce((sum, [x, y]) => sum + x * x + y * y, 0);
  if (!(size > 0)) return { scale: 0, leftMm: 0 };
  const real = z.reduce((sum, [x, y], i) => sum + x * w[i]![0] + y * w[i]![1], 0) / size;
  const imaginary = z.reduce((sum, [x, y], i) => sum + x * w[i]![1] - y * w[i]![0], 0) / size;
  const left = z.reduce((sum, [x, y], i) => {
    const [u, v] = [real * x - imaginary * y, real * y + imaginary * x];
    return sum + (w[i]![0] - u) ** 2 + (w[i]![1] - v) ** 2;
  }, 0);
  return { scale: Math.hypot(real, imaginary) - 1, leftMm: Math.sqrt(left / z.length) };
}

/**
 * The sheet of paper behind the pixels, from distances known on it:
 *
 * - one pair: the scale. Nothing reveals a tilt; one of 5° (k = 1) is allowed for in the uncertainty;
 * - two pairs: a cross, two lines at right angles that halve each other (a sheet folded both ways
 *   shows one, its ends the middles of the edges);
 * - four pairs, each beginning where the one before ends: the sides of a rectangle, such as the edges
 *   of the paper.
 *
 * Two lengths alone leave a tilt and its opposite alike, since both shorten the lines in the same
 * way; where the lines cross, or the far side of the rectangle, tells them apart. The four points
 * fix a homography (8 numbers); it is sought among those of a camera with square pixels, whose
 * focal length and centre are allowed to differ from the usual within stated spreads, by least
 * squares. Source of the homography of a plane: R. Hartley and A. Zisserman, Multiple View
 * Geometry, 2nd ed., 2003, chapter 8; taking prior spreads as observations: JCGM 101/102, our own use.
 *
 * Refuses marks that are not one of these or that no camera could have seen so, and a tilt above 35°.
 */
export function sheetFromScale(
  scale: readonly ScalePair[],
  size: PictureSize,
  taking: PictureTaking = {},
): Result<Sheet> {
  const longer = Math.max(size.width, size.height);
  if (!(longer > 0) || !Number.isFinite(longer))
    return refuse('The picture has no size. Choose the picture again.');
  const known = knownPoints(scale, size);
  if (!known.ok) return known;
  const single = scale.length === 1;
  const flatbed = taking.with === 'flatbed';
  const focal35Mm = taking.focal35Mm ?? null;
  const fit = fitted(
    known.value,
    expectedLogFocal(size, focal35Mm),
    focal35Mm === null ? FOCAL_SPREAD : EXIF_FOCAL_SPREAD,
    flatbed ? TILT_OF_A_SCANNER_RAD : single ? TILT_BY_HAND_RAD : TILT_TO_BE_FOUND_RAD,
    MARKED_TO_PX / longer,
  );
  const misfit = refuse(
    scale.length === 2
      ? 'The two pairs do not fit two lines at right angles that halve each other. Mark the four ends again, check both distances, or mark one pair only.'
      : 'The marks do not fit the distances given. Mark the points again and check each distance.',
  );
  if (fit === null || fit.sum > POOR_FIT) return misfit;
  const camera = fit.parameters as unknown as Camera;
  const tiltRad = Math.hypot(camera[3], camera[4]);
  if (tiltRad > MOST_TILT_RAD) {
    return refuse(
      `The camera would have been tilted by ${Math.round((tiltRad * 180) / Math.PI)}°, more than the 35° that can be taken out. Check the marks and distances, or take the photo again from straight above.`,
    );
  }
  const lower = cholesky(fit.covariance);
  // Marks that fit worse than expected are known less well than expected (R. T. Birge, Phys. Rev. 40, 1932).
  const widened = single ? 1 : Math.sqrt(Math.max(1, fit.sum / LEFT_OVER));
  const mapped = (p: readonly number[], points: readonly PixelPoint[]): readonly PixelPoint[] | null => {
    const back = backwards(sheetToPicture(p as unknown as Camera));
    if (back === null) return null;
    const cos = Math.cos(p[5]!);
    const sin = Math.sin(p[5]!);
    return points.map((point) => {
      const [x, y] = taken(back, normalised(point, size));
      return [cos * x - sin * y, -(sin * x + cos * y)];
    });
  };
  return ok({
    camera,
    tiltRad,
    toMm: (points) => {
      const mm = mapped(camera, points);
      return mm !== null && mm.every(([x, y]) => Number.isFinite(x) && Number.isFinite(y))
        ? ok(mm)
        : refuse(
            'Part of the line lies where the paper cannot be. Check the scale marks, and trace the line again.',
          );
    },
    spreadOver: (points) => {
      const base = mapped(camera, points);
      if (base === null || lower === null) return { scale: NaN, warpMm: NaN };
      const ways = camera.map((_, k) => {
        const moved = mapped(
          camera.map((value, i) => value + SMALL * lower[i]![k]!),
          points,
        );
        const { scale: grown, leftMm } = moved === null ? { scale: NaN, leftMm: NaN } : likeness(base, moved);
        return { scale: grown / SMALL, leftMm: leftMm / SMALL };
      });
      return {
        scale: widened * Math.hypot(...ways.map((way) => way.scale)),
        warpMm: widened * Math.hypot(...ways.map((way) => way.leftMm)),
      };
    },
  });
}

/** The shape of the paper's pixels about a point: mm for one pixel. */
export function mmPerPixel(sheet: Sheet, at: PixelPoint): number {
  const beside = sheet.toMm([
    [at[0] - 0.5, at[1]],
    [at[0] + 0.5, at[1]],
    [at[0], at[1] - 0.5],
    [at[0], at[1] + 0.5],
  ]);
  if (!beside.ok) return NaN;
  const [a, b, c, d] = beside.value as readonly [PixelPoint, PixelPoint, PixelPoint, PixelPoint];
  return Math.sqrt(gap(a, b) * gap(c, d));
}
