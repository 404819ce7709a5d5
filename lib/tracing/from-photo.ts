import type { ScalePair, TraceUncertainty } from '../case/trace';
import { outlineOf, type Outline } from '../outline/outline';
import { ok, refuse, type Result } from '../readings/result';
import { combine, standardUncertaintyFromHalfWidth } from '../readings/uncertainty';
import type { PictureSize } from './camera';
import { evenlySpaced, lengthOf, type PixelPoint } from './line';
import { spanOf, twoDigits } from './numbers';
import { MARKED_TO_PX, mmPerPixel, sheetFromScale, type PictureTaking, type Sheet } from './sheet';

export type TracedPicture = {
  /** The line through the clicks, pixels of the picture, as `followClicks` gives it. */
  readonly path: readonly PixelPoint[];
  readonly clicks: readonly PixelPoint[];
  readonly scale: readonly ScalePair[];
  readonly size: PictureSize;
  /** Stretches between clicks that were drawn straight. */
  readonly straight?: readonly number[];
  /** Width of the pencil stroke, pixels; null when not known. */
  readonly widthPx?: number | null;
  readonly taking?: PictureTaking;
};

export type TracedOutline = {
  readonly outline: Outline;
  readonly uncertainty: TraceUncertainty;
  /** Tilt of the camera that was taken out, rad; null when one pair cannot tell. */
  readonly tiltRad: number | null;
  readonly lineWidthMm: number;
};

const SPACING_MM = 0.25;
/** A sharp pencil or a fine pen. Common practice, no source. */
const USUAL_LINE_MM = 0.7;
const SHORTEST_MM = 20;
const LONGEST_MM = 1500;
/** A rule is laid and read to the nearest half millimetre. Common practice, no source. */
const RULE_HALF_WIDTH_MM = 0.25;
/** What a lens bends, as a share of the line's size, after the camera's own correction. Common practice, no source. */
const LENS_SHARE = 0.0005;

function extentOf(points: readonly PixelPoint[]): number {
  const span = (axis: 0 | 1): number => spanOf(points.map((point) => point[axis]));
  return Math.hypot(span(0), span(1));
}

function scaleSentence(
  scale: readonly ScalePair[],
  tiltRad: number,
  share: number,
  flatbed: boolean,
): string {
  const percent = `${twoDigits(100 * share)} %`;
  const marked = `each point marked to ${MARKED_TO_PX} pixel, distances laid off to ±${RULE_HALF_WIDTH_MM} mm`;
  const tilt = `a tilt of ${Math.round((tiltRad * 180) / Math.PI)}° was taken out`;
  if (scale.length > 1) {
    const what = scale.length === 2 ? 'two pairs across each other' : 'the four corners of a rectangle';
    return `Scale from ${what}, ${marked}; ${tilt}: ${percent} of length.`;
  }
  return flatbed
    ? `Scale from one pair on a flatbed scan, ${marked}: ${percent} of length.`
    : `Scale from one pair, ${marked}; one pair cannot show a tilted camera, so 5° is allowed for (common practice, no source): ${percent} of length. A second pair across the first, or the corners of the sheet, would settle it.`;
}

function uncertaintyOf(
  picture: TracedPicture,
  sheet: Sheet,
  mm: readonly PixelPoint[],
  lineWidthMm: number,
): TraceUncertainty {
  const { path, scale, straight = [], taking = {} } = picture;
  const every = Math.max(1, Math.floor(path.length / 60));
  const spread = sheet.spreadOver(path.filter((_, index) => index % every === 0));
  const distances = scale.map(
    ({ apartMm }) => standardUncertaintyFromHalfWidth(RULE_HALF_WIDTH_MM) / apartMm,
  );
  const ruled = Math.max(...distances) / Math.sqrt(Math.min(2, scale.length));
  const share = combine(spread.scale, ruled);
  const pixelMm = mmPerPixel(sheet, path[Math.floor(path.length / 2)]!);
  const pencil = standardUncertaintyFromHalfWidth(lineWidthMm / 2);
  const pixel = standardUncertaintyFromHalfWidth(pixelMm / 2);
  const lens = LENS_SHARE * extentOf(mm);
  const measured = picture.widthPx != null && picture.widthPx > 0;
  const drawn = straight.map((index) => index + 1).join(', ');
  return {
    acrossMm: combine(pencil, pixel, spread.warpMm, lens),
    scale: share,
    because: [
      `Pencil line ${twoDigits(lineWidthMm)} mm wide${measured ? '' : ' (common practice, no source)'}, taken along its middle; whether its inner or outer edge is the shape is not known: ${twoDigits(pencil)} mm.`,
      `Pixel of ${twoDigits(pixelMm)} mm: ${twoDigits(pixel)} mm.`,
      ...(spread.warpMm >= 0.005
        ? [`What the scale marks leave open of the tilt, besides scale: ${twoDigits(spread.warpMm)} mm.`]
        : []),
      `Lens not corrected, 1/${Math.round(1 / LENS_SHARE)} of the drawing's size (common practice, no source): ${twoDigits(lens)} mm.`,
      scaleSentence(scale, sheet.tiltRad, share, taking.with === 'flatbed'),
      ...(drawn === ''
        ? []
        : [
            `${straight.length === 1 ? 'Stretch' : 'Stretches'} ${drawn} between points drawn straight, since the line could not be followed there; how far off is not in these figures.`,
          ]),
    ],
  };
}

/**
 * The outline in mm from a line followed on a picture: tilt and scale by `sheetFromScale`, x to the
 * right and y up as the picture shows it, a point every 0.25 mm. It starts at the end that lies
 * farther left. All pixels are those of one and the same picture, `size` large.
 *
 * The middle of the pencil line is taken for the shape. A pencil held against the outside of pins or
 * of a template draws half its width outside; which side it was on is not known, so half the
 * width is in the uncertainty.
 *
 * Refuses scale marks that do not fit (`sheetFromScale`) and a line shorter than 20 mm or longer
 * than 1.5 m, which comes from a wrong distance. Never throws.
 */
export function outlineFromPhoto(picture: TracedPicture): Result<TracedOutline> {
  const { path, clicks, scale, size, taking = {}, widthPx = null } = picture;
  if (clicks.length < 2 || path.length < 2)
    return refuse('Set at least two points on the line: one at each end, and more where it bends.');
  if (![...path, ...clicks].every(([x, y]) => Number.isFinite(x) && Number.isFinite(y)))
    return refuse('A point of the line has no place in the picture. Set it again.');
  const sheet = sheetFromScale(scale, size, taking);
  if (!sheet.ok) return sheet;
  const mm = sheet.value.toMm(path);
  if (!mm.ok) return mm;
  const length = lengthOf(mm.value);
  if (length < SHORTEST_MM || length > LONGEST_MM) {
    return refuse(
      `The line is ${twoDigits(length)} mm long at this scale, which is no wheel or rail. Check the distance entered for the scale, and that the line goes from end to end.`,
    );
  }
  const even = evenlySpaced(mm.value, SPACING_MM);
  const forwards = even[0]![0] <= even.at(-1)![0] ? even : [...even].reverse();
  const middle = path[Math.floor(path.length / 2)]!;
  const lineWidthMm =
    widthPx !== null && widthPx > 0 ? widthPx * mmPerPixel(sheet.value, middle) : USUAL_LINE_MM;
  return ok({
    outline: outlineOf(
      forwards.map(([x]) => x),
      forwards.map(([, y]) => y),
    ),
    uncertainty: uncertaintyOf(picture, sheet.value, mm.value, lineWidthMm),
    tiltRad: scale.length > 1 ? sheet.value.tiltRad : null,
    lineWidthMm,
  });
}
