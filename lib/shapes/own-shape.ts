import { type StandardShape } from '../case/trace';
import { extentMm, reversed } from '../outline/arc';
import { checkOutline } from '../outline/check';
import { outlineOf, type Outline } from '../outline/outline';
import { ok, refuse, type Result } from '../readings/result';
import { DATUM_FROM_BACK_MM } from './wheel-pieces';

/** Sizes a shape can have across and up, mm. A wheel's tread alone to its whole rim; a rail's head to its whole section. */
const SIZES: Readonly<Record<StandardShape, { readonly across: Range; readonly high: Range }>> = {
  wheel: { across: [80, 200], high: [20, 200] },
  rail: { across: [40, 200], high: [10, 220] },
};
type Range = readonly [number, number];

/** The upright axis of a rail is where the frame has it within this. */
const FRAME_MM = 2;

/**
 * A shape of the user's own as an outline in the frame of `../outline/outline`: x, y pairs in mm, checked
 * for size and frame and put in order from the flange back (gauge side) to the field side. A wheel is moved
 * so that its flange back is at x = 0 and its tread 70 mm from it at y = 0; a rail so that its top is at
 * y = 0, and must have its axis at x = 0. A shape of the other hand, in inches, or with x and y
 * exchanged is refused with what to change. Never throws.
 */
export function ownShapeOutline(shape: StandardShape, points: ArrayLike<number>): Result<Outline> {
  if (points.length % 2 !== 0) return refuse('There is an x without its y: every line needs two numbers.');
  const n = points.length / 2;
  const drawn = outlineOf(
    Float64Array.from({ length: n }, (_, i) => points[2 * i]!),
    Float64Array.from({ length: n }, (_, i) => points[2 * i + 1]!),
  );
  const checked = checkOutline(drawn);
  if (!checked.ok) return checked;
  const sized = checkSize(shape, drawn);
  if (!sized.ok) return sized;
  return shape === 'rail' ? railInFrame(inOrder(drawn)) : wheelInFrame(inOrder(drawn));
}

function checkSize(shape: StandardShape, outline: Outline): Result<Outline> {
  const { from, to } = extentMm(outline);
  const across = to.xMm - from.xMm;
  const high = to.yMm - from.yMm;
  const sizes = SIZES[shape];
  const fits = (value: number, [least, most]: Range): boolean => value >= least && value <= most;
  if (fits(across, sizes.across) && fits(high, sizes.high)) return ok(outline);
  const inInches = fits(across * 25.4, sizes.across) && fits(high * 25.4, sizes.high);
  const turned = fits(high, sizes.across) && fits(across, sizes.high);
  return refuse(
    `The shape is ${across.toFixed(1)} mm across and ${high.toFixed(1)} mm high; a ${shape} is ${sizes.across.join(' to ')} mm across and ${sizes.high.join(' to ')} mm high. ${
      inInches
        ? 'Is the file in inches? Choose inches.'
        : turned
          ? 'Are x and y the other way round? Choose the columns again.'
          : 'Check the unit and the columns.'
    }`,
  );
}

/** From the side of the flange or gauge (small x) to the field side. */
const inOrder = (outline: Outline): Outline =>
  outline.xMm[0]! > outline.xMm.at(-1)! ? reversed(outline) : outline;

const moved = ({ xMm, yMm }: Outline, dxMm: number, dyMm: number): Outline => ({
  xMm: xMm.map((x) => x + dxMm),
  yMm: yMm.map((y) => y + dyMm),
});

function railInFrame(outline: Outline): Result<Outline> {
  const { from, to } = extentMm(outline);
  const { xMm, yMm } = outline;
  const top = yMm.indexOf(to.yMm);
  const ends = Math.max(yMm[0]!, yMm.at(-1)!);
  if (ends > to.yMm - 5) {
    return refuse(
      'The two ends of a rail lie below its top: y must run upward and the line from the gauge side over the head to the field side.',
    );
  }
  const middle = (from.xMm + to.xMm) / 2;
  if (Math.abs(middle) > FRAME_MM) {
    return refuse(
      `The middle of the rail lies at x = ${middle.toFixed(1)} mm; x must be 0 on its upright axis, negative on the gauge side.`,
    );
  }
  if (top === 0 || top === xMm.length - 1)
    return refuse('The top of the head must not be an end of the line.');
  return ok(moved(outline, 0, -to.yMm));
}

function wheelInFrame(outline: Outline): Result<Outline> {
  const { from, to } = extentMm(outline);
  const { xMm, yMm } = outline;
  const tip = yMm.indexOf(to.yMm);
  const tipFromBack = xMm[tip]! - from.xMm;
  if (tipFromBack > (to.xMm - from.xMm) / 2) {
    return refuse(
      'The flange is on the right, or y runs towards the axle: x must run from the flange back to the field side and the tip of the flange must be highest. Turn x or y round.',
    );
  }
  const back = -from.xMm;
  const datum = back === 0 ? outline : moved(outline, back, 0);
  const at = crossing(datum, DATUM_FROM_BACK_MM, tip);
  if (at === null) {
    return refuse(
      'The shape does not reach the tread 70 mm from the flange back: trace the tread further out.',
    );
  }
  if (to.yMm - at < LEAST_FLANGE_MM) {
    return refuse(
      `The flange stands only ${(to.yMm - at).toFixed(1)} mm above the tread at 70 mm: check which way y runs and the columns.`,
    );
  }
  return ok(moved(datum, 0, -at));
}

const LEAST_FLANGE_MM = 15;

/** Height of the line at x after the tip of the flange; null where it does not reach. */
function crossing({ xMm, yMm }: Outline, x: number, from: number): number | null {
  for (let i = from; i + 1 < xMm.length; i += 1) {
    if (xMm[i]! <= x && xMm[i + 1]! > x) {
      return yMm[i]! + ((yMm[i + 1]! - yMm[i]!) * (x - xMm[i]!)) / (xMm[i + 1]! - xMm[i]!);
    }
  }
  return null;
}
