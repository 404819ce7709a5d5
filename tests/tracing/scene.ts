import type { ScalePair } from '~/lib/case/trace';
import { placed } from '~/lib/outline/placing';
import type { Outline } from '~/lib/outline/outline';
import { integerGenerator, normalDraws } from '~/lib/readings/draws';
import { normalised, sheetToPicture, taken, type Camera } from '~/lib/tracing/camera';
import { gap, type PixelPoint } from '~/lib/tracing/line';
import { rectangleSides } from '~/lib/tracing/scale-marks';
import { blurred } from '~/lib/tracing/raster';
import { wornS1002, type Wear } from './worn';

export type SceneMarks = 'cross' | 'rectangle';

/** A photo made by arithmetic, and what somebody tracing it would click. */
export type Scene = {
  readonly grey: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly wear: Wear;
  /** The wheel that was drawn, in its own frame. */
  readonly truth: Outline;
  readonly tiltRad: number;
  readonly marks: SceneMarks;
  /** Points on the line with an error of up to 3 pixels each way, and marks with one of up to 1 pixel. */
  readonly clicks: readonly PixelPoint[];
  readonly scale: readonly ScalePair[];
};

const WIDTH = 1600;
const HEIGHT = 1200;
const PEN_MM = 0.7;
const MARK_PEN_MM = 0.35;
/** Some of the paper is ruled. */
const RULE_MM = 0.3;
const NOISE_TABLE = normalDraws('scene', 1, 65_536);

/** Draws between bounds, in order. */
export function drawsOf(seed: number): (low: number, high: number) => number {
  const next = integerGenerator('scene', seed);
  return (low, high) => low + ((high - low) * (next() + 0.5)) / 2 ** 32;
}

type Draw = ReturnType<typeof drawsOf>;
type Ink = { readonly darkness: Float32Array; readonly project: (mm: PixelPoint) => PixelPoint };

/** A stroke of a pen along points of the paper (mm, y up), as dark as it gets where strokes lie over each other. */
function draw(
  { darkness, project }: Ink,
  mm: readonly PixelPoint[],
  penMm: number,
  inkAt: (share: number) => number,
): void {
  const seen = mm.map(project);
  for (let i = 1; i < seen.length; i += 1) {
    const [a, b] = [seen[i - 1]!, seen[i]!];
    const perMm = gap(a, b) / gap(mm[i - 1]!, mm[i]!);
    const radius = (penMm * perMm) / 2;
    const ink = inkAt(i / seen.length);
    const reach = radius + 1.5;
    const length2 = Math.max(1e-12, gap(a, b) ** 2);
    for (
      let y = Math.max(0, Math.floor(Math.min(a[1], b[1]) - reach));
      y <= Math.min(HEIGHT - 1, Math.max(a[1], b[1]) + reach);
      y += 1
    ) {
      for (
        let x = Math.max(0, Math.floor(Math.min(a[0], b[0]) - reach));
        x <= Math.min(WIDTH - 1, Math.max(a[0], b[0]) + reach);
        x += 1
      ) {
        const share = Math.min(
          1,
          Math.max(0, ((x - a[0]) * (b[0] - a[0]) + (y - a[1]) * (b[1] - a[1])) / length2),
        );
        const away = Math.hypot(x - a[0] - share * (b[0] - a[0]), y - a[1] - share * (b[1] - a[1]));
        const dark = ink * Math.min(1, Math.max(0, radius + 0.5 - away));
        const at = y * WIDTH + x;
        if (dark > darkness[at]!) darkness[at] = dark;
      }
    }
  }
}

function cameraOf(draw: Draw, tiltRad: number): Camera {
  const direction = draw(-Math.PI, Math.PI);
  const focal = draw(0.68, 1.1);
  // 140 mm of drawing over some half of the picture's width.
  const distance = (focal * 140) / draw(0.5, 0.6);
  return [
    Math.log(focal),
    draw(-0.01, 0.01),
    draw(-0.01, 0.01),
    tiltRad * Math.cos(direction),
    tiltRad * Math.sin(direction),
    draw(-0.15, 0.15),
    draw(-0.03, 0.03),
    draw(-0.03, 0.03),
    Math.log(distance),
  ];
}

/** From the paper (mm, y up) to pixels, with a lens that bends a little. */
function projection(camera: Camera, bend: number): (mm: PixelPoint) => PixelPoint {
  const h = sheetToPicture(camera);
  const [zeroX, zeroY] = normalised([0, 0], { width: WIDTH, height: HEIGHT });
  return ([x, y]) => {
    const [u, v] = taken(h, [x, -y]);
    const out = 1 + bend * (u * u + v * v) * 2.56;
    return [(u * out - zeroX) * WIDTH, (v * out - zeroY) * WIDTH];
  };
}

/** Light and paper over a drawing: a lamp to one side, a darker rim, a soft shadow, grain of paper, noise of the camera. */
function photographed(darkness: Float32Array, draw: Draw): Uint8Array {
  const soft = blurred(darkness, WIDTH, HEIGHT, draw(0.6, 1.3));
  const paper = draw(185, 235);
  const [slopeX, slopeY] = [draw(-0.3, 0.3), draw(-0.3, 0.3)];
  const rim = draw(0, 0.3);
  const [shadowX, shadowWidth, shadow] = [draw(-0.4, 0.4), draw(0.05, 0.2), draw(0, 0.25)];
  const noise = draw(2, 6);
  const grain = draw(0.5, 2.5);
  const [first, second] = [Math.floor(draw(0, 65_536)), Math.floor(draw(0, 65_536))];
  const grey = new Uint8Array(WIDTH * HEIGHT);
  const shades = Float64Array.from(
    { length: WIDTH },
    (_, x) => 1 - shadow / (1 + Math.exp((x / WIDTH - 0.5 - shadowX) / (shadowWidth / 4))),
  );
  let state = first;
  for (let y = 0; y < HEIGHT; y += 1) {
    const v = y / WIDTH - 0.375;
    for (let x = 0; x < WIDTH; x += 1) {
      const u = x / WIDTH - 0.5;
      const light = (1 + slopeX * u + slopeY * v) * (1 - rim * (u * u + v * v) * 2.56) * shades[x]!;
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      const fibre = grain * NOISE_TABLE[((x >> 1) * 7919 + (y >> 1) * 104_729 + second) & 65_535]!;
      const value = (paper + fibre) * light * (1 - soft[y * WIDTH + x]!) + noise * NOISE_TABLE[state >>> 16]!;
      grey[y * WIDTH + x] = Math.min(255, Math.max(0, Math.round(value)));
    }
  }
  return grey;
}

const plus = ([x, y]: PixelPoint): readonly (readonly PixelPoint[])[] => [
  [
    [x - 2, y],
    [x + 2, y],
  ],
  [
    [x, y - 2],
    [x, y + 2],
  ],
];

/** Where the scale is marked on the paper, mm from the middle of the drawing. */
const CROSS = { alongMm: 160, acrossMm: 100 };
const RECTANGLE = { widthMm: 165, heightMm: 110 };

function markPlaces(marks: SceneMarks): readonly PixelPoint[] {
  if (marks === 'cross') {
    const [x, y] = [CROSS.alongMm / 2, CROSS.acrossMm / 2];
    return [
      [-x, 0],
      [x, 0],
      [0, y],
      [0, -y],
    ];
  }
  const [x, y] = [RECTANGLE.widthMm / 2, RECTANGLE.heightMm / 2];
  return [
    [-x, y],
    [x, y],
    [x, -y],
    [-x, -y],
  ];
}

function scaleOf(marks: SceneMarks, marked: readonly PixelPoint[]): readonly ScalePair[] {
  const [a, b, c, d] = marked as readonly [PixelPoint, PixelPoint, PixelPoint, PixelPoint];
  return marks === 'cross'
    ? [
        { from: a, to: b, apartMm: CROSS.alongMm },
        { from: c, to: d, apartMm: CROSS.acrossMm },
      ]
    : rectangleSides([a, b, c, d], RECTANGLE.widthMm, RECTANGLE.heightMm);
}

export const MOST_TILT_RAD = (15 * Math.PI) / 180;

/** A scene by its number, the same every time: wear, camera, light, noise and the hand that traces it. */
export function sceneOf(seed: number): Scene {
  const between = drawsOf(seed);
  const wear = { hollowMm: between(0, 4), flangeMm: between(0, 4) };
  const truth = wornS1002(wear);
  const turned = placed(truth, { mirrored: false, angleRad: between(-0.35, 0.35), dxMm: 0, dyMm: 0 });
  const [middleX, middleY] = [turned.xMm, turned.yMm].map(
    (axis) => (Math.min(...axis) + Math.max(...axis)) / 2,
  ) as [number, number];
  const mm = Array.from(turned.xMm, (x, i): PixelPoint => [x - middleX + 0, turned.yMm[i]! - middleY]);
  const tiltRad = between(0, 1) * MOST_TILT_RAD;
  const project = projection(cameraOf(between, tiltRad), between(-0.004, 0.004));
  const darkness = new Float32Array(WIDTH * HEIGHT);
  const ink = { darkness, project };
  const press = between(0.45, 0.85);
  const wave = between(5, 30);
  draw(
    ink,
    mm.filter((_, i) => i % 2 === 0),
    PEN_MM,
    (share) => press * (1 - 0.12 * (1 + Math.sin(wave * share))),
  );
  if (between(0, 1) < 0.35) {
    const [apart, pale] = [between(6, 9), between(0.08, 0.2)];
    for (let y = -120; y <= 120; y += apart) {
      const rule = Array.from({ length: 61 }, (_, i): PixelPoint => [5 * (i - 30), y]);
      draw(ink, rule, RULE_MM, () => pale);
    }
  }
  const marks: SceneMarks = seed % 2 === 0 ? 'cross' : 'rectangle';
  const places = markPlaces(marks);
  for (const place of places) for (const stroke of plus(place)) draw(ink, stroke, MARK_PEN_MM, () => 0.7);
  const off = ([x, y]: PixelPoint, by: number): PixelPoint => [x + between(-by, by), y + between(-by, by)];
  const clickCount = 8 + Math.floor(between(0, 5));
  const clicks = Array.from({ length: clickCount }, (_, i) => {
    const ends = i === 0 || i === clickCount - 1;
    const share = i / (clickCount - 1) + (ends ? 0 : between(-0.02, 0.02));
    return off(project(mm[Math.round(share * (mm.length - 1))]!), 3);
  });
  const { width, height } = { width: WIDTH, height: HEIGHT };
  for (const [x, y] of places.map(project)) {
    if (x < 2 || y < 2 || x > width - 3 || y > height - 3)
      throw new Error(`Scene ${seed}: a mark is out of the picture.`);
  }
  const marked = places.map((place) => off(project(place), 1));
  return {
    grey: photographed(darkness, between),
    width,
    height,
    wear,
    truth,
    tiltRad,
    marks,
    clicks,
    scale: scaleOf(marks, marked),
  };
}
