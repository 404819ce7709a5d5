import { type PointMm } from '../outline/outline';
import { type RailSection } from '../rail/sections';
import { mirroredPiece, type Piece } from './piece';
import { roundedPolygon, type Corner } from './rounded';

/** What a section table does not give: the shape of the head and of the fishing surfaces. mm; slopes are rise over run. */
export type RailDesign = {
  readonly crownRadiusMm: number;
  readonly shoulderRadiusMm: number;
  readonly cornerRadiusMm: number;
  /** Half the width of the crown arc. */
  readonly crownHalfWidthMm: number;
  /** Out of plumb per unit of depth; the head widens downward. */
  readonly sideSlope: number;
  /** Depth below the top at which the head has its width. */
  readonly widthAtMm: number;
  /** Heights of head and base on the upright axis, where their fishing surfaces would meet it. */
  readonly headDepthMm: number;
  readonly baseDepthMm: number;
  readonly fishingSlope: number;
  readonly lowerCornerRadiusMm: number;
  /** The web's sides are hollow with this radius and thinnest midway between the fishing surfaces. */
  readonly webRadiusMm: number;
  readonly upperFilletRadiusMm: number;
  readonly lowerFilletRadiusMm: number;
  /** Height of the edge of the base, and the flatter slope that runs to it, where there is one. */
  readonly toeMm: number;
  readonly toeSlope: number;
  readonly toeRadiusMm: number;
};

/**
 * The line of a new rail: three arcs and a straight side to each hand of the axis, then underside of
 * the head, web and base of straight surfaces with rounded corners and a hollow web. The shoulder ends where the corner arc
 * can touch the side: sin(φ + α) = (n·P − r − n·C)/(R − r), where P is the point of the side at the head
 * width, n its outward normal, α its slope, C the centre and R the radius of the shoulder, r of the corner.
 */
export function railPieces(section: RailSection, design: RailDesign): Piece[] {
  const slope = Math.atan(design.sideSlope);
  const normal = { x: Math.cos(slope), y: Math.sin(slope) };
  const crown = { xMm: 0, yMm: -design.crownRadiusMm };
  const crownEnd = Math.asin(design.crownHalfWidthMm / design.crownRadiusMm);
  const shoulder = {
    xMm: (design.crownRadiusMm - design.shoulderRadiusMm) * Math.sin(crownEnd),
    yMm: crown.yMm + (design.crownRadiusMm - design.shoulderRadiusMm) * Math.cos(crownEnd),
  };
  const side = normal.x * (section.headWidthMm / 2) - normal.y * design.widthAtMm;
  const reach =
    (side - design.cornerRadiusMm - (normal.x * shoulder.xMm + normal.y * shoulder.yMm)) /
    (design.shoulderRadiusMm - design.cornerRadiusMm);
  const shoulderEnd = Math.asin(reach) - slope;
  const corner = {
    xMm: shoulder.xMm + (design.shoulderRadiusMm - design.cornerRadiusMm) * Math.sin(shoulderEnd),
    yMm: shoulder.yMm + (design.shoulderRadiusMm - design.cornerRadiusMm) * Math.cos(shoulderEnd),
  };
  const arc = (name: string, centre: typeof crown, radiusMm: number, from: number, to: number): Piece => ({
    kind: 'arc',
    name,
    runs: true,
    centre,
    radiusMm,
    fromRad: Math.PI / 2 - from,
    toRad: Math.PI / 2 - to,
  });
  const half: Piece[] = [
    arc('crown', crown, design.crownRadiusMm, 0, crownEnd),
    arc('shoulder', shoulder, design.shoulderRadiusMm, crownEnd, shoulderEnd),
    arc('corner', corner, design.cornerRadiusMm, shoulderEnd, Math.PI / 2 - slope),
    ...belowTheCorner(section, design, {
      xMm: corner.xMm + design.cornerRadiusMm * normal.x,
      yMm: corner.yMm + design.cornerRadiusMm * normal.y,
    }),
  ];
  return [...half.map(mirroredPiece).reverse(), ...half];
}

function belowTheCorner(section: RailSection, design: RailDesign, from: PointMm): Piece[] {
  const { sideSlope, fishingSlope, toeSlope } = design;
  const baseMm = section.baseWidthMm / 2;
  const webMm = section.webMm / 2;
  const bottomMm = -section.heightMm;
  // Side: x = a + sideSlope·(−y). Underside: y = −headDepth + fishingSlope·x.
  const a = from.xMm + sideSlope * from.yMm;
  const lowerX = (a + sideSlope * design.headDepthMm) / (1 + sideSlope * fishingSlope);
  const baseTop = (xMm: number): number => bottomMm + design.baseDepthMm - fishingSlope * xMm;
  const toeTop = (xMm: number): number => bottomMm + design.toeMm + toeSlope * (baseMm - xMm);
  const breakX =
    fishingSlope === toeSlope
      ? null
      : (design.baseDepthMm - design.toeMm - toeSlope * baseMm) / (fishingSlope - toeSlope);
  const corner = (name: string, xMm: number, yMm: number, radiusMm: number): Corner => ({
    name,
    xMm,
    yMm,
    radiusMm,
  });
  const middle = (-design.headDepthMm + bottomMm + design.baseDepthMm) / 2;
  const web: Circle = { xMm: webMm + design.webRadiusMm, yMm: middle, radiusMm: design.webRadiusMm };
  const upper = filletToWeb(web, design.upperFilletRadiusMm, -design.headDepthMm, fishingSlope, -1);
  const lower = filletToWeb(web, design.lowerFilletRadiusMm, bottomMm + design.baseDepthMm, -fishingSlope, 1);
  const [side, ...underside] = roundedPolygon(
    [
      corner('side', from.xMm, from.yMm, 0),
      corner('lower corner', lowerX, -design.headDepthMm + fishingSlope * lowerX, design.lowerCornerRadiusMm),
      corner('underside', upper.onLine.xMm, upper.onLine.yMm, 0),
    ],
    false,
  );
  const below = roundedPolygon(
    [
      corner('top of base', lower.onLine.xMm, lower.onLine.yMm, 0),
      ...(breakX === null ? [] : [corner('break of base', breakX, baseTop(breakX), BREAK_RADIUS_MM)]),
      corner('toe', baseMm, toeTop(baseMm), design.toeRadiusMm),
      corner('edge of base', baseMm, bottomMm, 0),
    ],
    false,
  );
  const arc = (name: string, circle: Circle, fromMm: PointMm, toMm: PointMm): Piece => {
    const angle = (point: PointMm): number => {
      const rad = Math.atan2(point.yMm - circle.yMm, point.xMm - circle.xMm);
      return rad < 0 ? rad + 2 * Math.PI : rad;
    };
    return {
      kind: 'arc',
      name,
      runs: false,
      centre: { xMm: circle.xMm, yMm: circle.yMm },
      radiusMm: circle.radiusMm,
      fromRad: angle(fromMm),
      toRad: angle(toMm),
    };
  };
  return [
    ...(side === undefined ? [] : [{ ...side, name: 'side', runs: true }]),
    ...underside,
    arc('upper fillet', upper.circle, upper.onLine, upper.onWeb),
    arc('web', web, upper.onWeb, lower.onWeb),
    arc('lower fillet', lower.circle, lower.onWeb, lower.onLine),
    ...below,
  ];
}

/** Between the two slopes of a European base. */
const BREAK_RADIUS_MM = 40;

type Circle = PointMm & { readonly radiusMm: number };

/**
 * The fillet between a fishing surface y = atAxis + slope·x and the hollow side of the web: its centre
 * lies r from the surface (`side` −1 below, 1 above) and R − r from the centre of the web's arc.
 */
function filletToWeb(web: Circle, radiusMm: number, atAxisMm: number, slope: number, side: 1 | -1) {
  const tilt = Math.sqrt(1 + slope * slope);
  const lineAt = atAxisMm + side * radiusMm * tilt;
  // (x − X)² + (lineAt + slope·x − Y)² = (R − r)²
  const rise = lineAt - web.yMm;
  const halfB = slope * rise - web.xMm;
  const c = web.xMm ** 2 + rise ** 2 - (web.radiusMm - radiusMm) ** 2;
  const xMm = (-halfB - Math.sqrt(halfB ** 2 - tilt ** 2 * c)) / tilt ** 2;
  const circle: Circle = { xMm, yMm: lineAt + slope * xMm, radiusMm };
  const apart = web.radiusMm - radiusMm;
  return {
    circle,
    onLine: {
      xMm: circle.xMm + (side * radiusMm * slope) / tilt,
      yMm: circle.yMm - (side * radiusMm) / tilt,
    },
    onWeb: {
      xMm: web.xMm + ((circle.xMm - web.xMm) / apart) * web.radiusMm,
      yMm: web.yMm + ((circle.yMm - web.yMm) / apart) * web.radiusMm,
    },
  };
}
