import { placesAtHeight } from '../outline/at';
import { checkOutline } from '../outline/check';
import { extentMm } from '../outline/arc';
import { outlineOf, type Outline, type PointMm } from '../outline/outline';
import { ok, refuse, type Result } from '../readings/result';
import { curveOf, type Curve } from './curve';
import { railSurface, type RailSurface } from './rail-surface';

/** 5/8 in: where 49 CFR 213.53(a) measures gauge. */
export const GAUGE_BELOW_TOP_US_MM = 15.875;
/** Where EN 13848-1 measures gauge. */
export const GAUGE_BELOW_TOP_EN_MM = 14;

/** The tread reference point is this far from the flange back (EN 15313). */
export const DATUM_FROM_BACK_MM = 70;

export type Side = 'left' | 'right';

export type SideInput = {
  readonly wheel: Outline;
  readonly rail: Outline;
  /** Radius at this wheel's tread reference point; the wheelset's when not given. */
  readonly rollingRadiusMm?: number;
};

export type ContactInput = {
  readonly left: SideInput;
  readonly right: SideInput;
  readonly backToBackMm: number;
  readonly gaugeMm: number;
  /** How far below the top of the rail the gauge was measured. */
  readonly gaugeBelowTopMm: number;
  /** Inclination of each rail, positive inward. */
  readonly cantLeftRad: number;
  readonly cantRightRad: number;
  /** Nominal radius at the tread reference point. */
  readonly rollingRadiusMm: number;
  /** Half the window of the smoothing; when not given 0.5 mm for a clean line, 2 mm for one that shivers. */
  readonly smoothingHalfWindowMm?: number;
};

/**
 * One wheel over one rail, both in the frame of their side: x outward from the track centre, y up
 * from the top of the rails. The wheel's y is taken from the level of the wheelset's nominal radius.
 */
export type ContactSide = {
  readonly input: SideInput;
  readonly rollingRadiusMm: number;
  readonly wheel: Curve;
  readonly rail: RailSurface;
  readonly railPlacing: RailPlacing;
  /** Half the width of the head, at the depth of the gauge. */
  readonly halfHeadMm: number;
};

/** From the rail's own frame to that of its side: turned by the cant, then moved. */
export type RailPlacing = { readonly cantRad: number; readonly dxMm: number; readonly dyMm: number };

export type ContactSetup = {
  readonly left: ContactSide;
  readonly right: ContactSide;
  readonly backToBackMm: number;
  readonly gaugeMm: number;
  readonly rollingRadiusMm: number;
};

/**
 * A wheelset standing square (no yaw) on a pair of rails, made ready for `contactAt`: plane contact
 * geometry of rigid bodies. Wheels and rails in the frames of `../outline/outline`, mm and rad; the
 * gauge is the distance between the gauge faces at `gaugeBelowTopMm` below the top of each rail as it
 * stands, canted (49 CFR 213.53(a); EN 13848-1). Refuses, saying what to enter instead, outlines that
 * cannot be one, a gauge face that does not reach down to the depth of the gauge, and wheels that do not
 * fit: a back-to-back as wide as the gauge, or a wheel that hangs clear of its rail.
 */
export function contactSetup(input: ContactInput): Result<ContactSetup> {
  const numbers = checkNumbers(input);
  if (!numbers.ok) return numbers;
  const left = sideOf(input, 'left');
  if (!left.ok) return left;
  const right = sideOf(input, 'right');
  if (!right.ok) return right;
  const { backToBackMm, gaugeMm, rollingRadiusMm } = input;
  return ok({ left: left.value, right: right.value, backToBackMm, gaugeMm, rollingRadiusMm });
}

function checkNumbers(input: ContactInput): Result<null> {
  const { backToBackMm, gaugeMm, gaugeBelowTopMm, cantLeftRad, cantRightRad } = input;
  const radii = [input.rollingRadiusMm, input.left.rollingRadiusMm, input.right.rollingRadiusMm];
  if (!(gaugeMm >= 200 && gaugeMm <= 3000)) {
    return refuse('Enter the gauge between 200 and 3000 mm.');
  }
  if (!(backToBackMm >= 100)) return refuse('Enter the back-to-back distance, at least 100 mm.');
  if (!(backToBackMm < gaugeMm)) {
    return refuse(
      `The back-to-back distance ${backToBackMm.toFixed(1)} mm is not less than the gauge ${gaugeMm.toFixed(1)} mm: the flanges cannot stand between the rails. Check both.`,
    );
  }
  if (!(gaugeBelowTopMm > 0 && gaugeBelowTopMm <= 40)) {
    return refuse(
      'Enter how far below the top of the rail the gauge was measured: more than 0, at most 40 mm.',
    );
  }
  if (!(Math.abs(cantLeftRad) <= MOST_CANT_RAD && Math.abs(cantRightRad) <= MOST_CANT_RAD)) {
    return refuse('Enter the cant of each rail between −0.3 and 0.3 rad (about 17°).');
  }
  if (radii.some((radius) => radius !== undefined && !(radius >= 100 && radius <= 2000))) {
    return refuse('Enter the rolling radius of a wheel between 100 and 2000 mm.');
  }
  const window = input.smoothingHalfWindowMm;
  if (window !== undefined && !(window > 0 && window <= 10)) {
    return refuse('Enter the half window of the smoothing: more than 0, at most 10 mm.');
  }
  return ok(null);
}

const MOST_CANT_RAD = 0.3;
/** Larger than any wheel or rail; keeps a wrong unit from filling the memory. */
const MOST_EXTENT_MM = 1000;

function sideOf(input: ContactInput, side: Side): Result<ContactSide> {
  const own = input[side];
  const wheel = checked(own.wheel, `${side} wheel`);
  if (!wheel.ok) return wheel;
  const rail = checked(own.rail, `${side} rail`);
  if (!rail.ok) return rail;

  const cantRad = side === 'left' ? input.cantLeftRad : input.cantRightRad;
  const section = curveOf(own.rail, input.smoothingHalfWindowMm);
  const turned = movedCurve(section, { cantRad, dxMm: 0, dyMm: 0 });
  const topMm = turned.yMm.reduce((a, b) => Math.max(a, b), -Infinity);
  const crossings = placesAtHeight(turned, topMm - input.gaugeBelowTopMm);
  const gaugeXMm = Math.min(...crossings);
  const topXMm = turned.xMm[turned.yMm.indexOf(topMm)]!;
  if (!(gaugeXMm < topXMm)) {
    return refuse(
      `The outline of the ${side} rail does not reach down its gauge face to ${input.gaugeBelowTopMm.toFixed(1)} mm below the top, where the gauge is measured. Trace it further down, or turn it so that the gauge side is at negative x.`,
    );
  }
  const railPlacing = { cantRad, dxMm: input.gaugeMm / 2 - gaugeXMm, dyMm: -topMm };
  const surface = railSurface(movedCurve(section, railPlacing));
  if (surface === null) {
    return refuse(
      `The top of the ${side} rail is not to be seen from above: the line must run from the gauge side over the top to the field side.`,
    );
  }
  const sectionTop = section.yMm.reduce((a, b) => Math.max(a, b), -Infinity);
  const halfHeadMm = placesAtHeight(section, sectionTop - input.gaugeBelowTopMm).reduce(
    (most, x) => Math.max(most, Math.abs(x)),
    0,
  );

  const rollingRadiusMm = own.rollingRadiusMm ?? input.rollingRadiusMm;
  const along = curveOf(own.wheel, input.smoothingHalfWindowMm);
  const wheelCurve: Curve = {
    xMm: along.xMm.map((x) => input.backToBackMm / 2 + x),
    yMm: along.yMm.map((y) => input.rollingRadiusMm - rollingRadiusMm - y),
    headingRad: along.headingRad.map((heading) => -heading),
  };
  const { from, to } = extentMm(wheelCurve);
  const railTo = surface.fromXMm + surface.stepMm * (surface.heightMm.length - 1);
  if (to.xMm < surface.fromXMm) {
    return refuse(
      `The ${side} wheel does not reach its rail: its field side ends ${(surface.fromXMm - to.xMm).toFixed(1)} mm inside the gauge face, so that it would drop between the rails. Check gauge, back-to-back and that the wheel is traced to its field side.`,
    );
  }
  if (from.xMm > railTo) {
    return refuse(
      `The ${side} wheel stands ${(from.xMm - railTo).toFixed(1)} mm outside its rail. Check gauge, back-to-back and that the outlines are not mirrored.`,
    );
  }
  return ok({ input: own, rollingRadiusMm, wheel: wheelCurve, rail: surface, railPlacing, halfHeadMm });
}

function checked(outline: Outline, of: string): Result<null> {
  const outcome = checkOutline(outline);
  if (!outcome.ok) return refuse(`The ${of}: ${outcome.message}`);
  const { from, to } = extentMm(outline);
  const extent = Math.max(to.xMm - from.xMm, to.yMm - from.yMm);
  if (extent > MOST_EXTENT_MM || extent < SMALLEST_EXTENT_MM) {
    return refuse(
      `The ${of} is ${extent.toPrecision(3)} mm across, which is no wheel or rail. Check the unit of its file.`,
    );
  }
  if (Math.max(Math.abs(from.xMm), Math.abs(to.xMm), Math.abs(from.yMm), Math.abs(to.yMm)) > MOST_EXTENT_MM) {
    return refuse(
      `The ${of} lies more than ${MOST_EXTENT_MM} mm from the origin of its frame. Register it first.`,
    );
  }
  return ok(null);
}

const SMALLEST_EXTENT_MM = 10;

/** A point of a rail's own frame in the frame of its side. */
export function railPointInSide(point: PointMm, { cantRad, dxMm, dyMm }: RailPlacing): PointMm {
  const [cos, sin] = [Math.cos(cantRad), Math.sin(cantRad)];
  return {
    xMm: point.xMm * cos - point.yMm * sin + dxMm,
    yMm: point.xMm * sin + point.yMm * cos + dyMm,
  };
}

/** A point of the frame of a side in the rail's own. */
export function sidePointInRail(point: PointMm, { cantRad, dxMm, dyMm }: RailPlacing): PointMm {
  const [cos, sin] = [Math.cos(cantRad), Math.sin(cantRad)];
  const [x, y] = [point.xMm - dxMm, point.yMm - dyMm];
  return { xMm: x * cos + y * sin, yMm: -x * sin + y * cos };
}

function movedCurve(curve: Curve, placing: RailPlacing): Curve {
  const n = curve.xMm.length;
  const moved = outlineOf(new Float64Array(n), new Float64Array(n));
  for (let i = 0; i < n; i += 1) {
    const point = railPointInSide({ xMm: curve.xMm[i]!, yMm: curve.yMm[i]! }, placing);
    moved.xMm[i] = point.xMm;
    moved.yMm[i] = point.yMm;
  }
  return { ...moved, headingRad: curve.headingRad.map((heading) => heading + placing.cantRad) };
}
