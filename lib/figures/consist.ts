import { standing } from '../case/current';
import { vehicleKind } from '../case/kinds/vehicle';
import type { CaseRecord } from '../case/record';
import { toCanonical } from '../readings/convert';
import type { UnitSystem } from '../readings/unit';
import { systemOf } from './case-marks';
import { arrow, arrowHead } from './pieces/arrow';
import { scaleOf } from './pieces/axis';
import { area, box, LETTER, line, pen, words } from './pieces/draw';
import type { Figure, Shape } from './shapes';
import { standingValues } from './standing-values';
import { fitText, textWidth } from './text-width';

export type ConsistVehicle = {
  readonly position: number;
  readonly name: string;
  readonly type: string;
  readonly load: 'empty' | 'loaded' | 'partLoaded' | 'notSaid';
  readonly derailed: boolean;
  readonly firstDerailed: boolean;
  readonly hazmat: boolean;
  /** m over pulling faces; NaN when not known. */
  readonly lengthM: number;
  /** kg; NaN when not known. */
  readonly massKg: number;
};

export type ConsistData = { readonly system: UnitSystem; readonly vehicles: readonly ConsistVehicle[] };

const typeField = vehicleKind.fields.find((field) => field.id === 'type');
const TYPE_LABELS: ReadonlyMap<string, string> = new Map(
  typeField?.type === 'choice' ? typeField.choices.map(({ id, label }) => [id, label] as const) : [],
);

/** The train in the order of the record's positions, head end first. */
export function consistData(record: CaseRecord): ConsistData {
  const read = standingValues(record);
  const vehicles = standing(record, 'vehicle').map((vehicle): ConsistVehicle => {
    const { position, mark, number, type, load, derailed, firstDerailed, hazmat } = vehicle.fields;
    return {
      position: typeof position === 'number' ? position : NaN,
      name: `${mark ?? ''} ${number ?? ''}`.trim(),
      type: String(type ?? 'other'),
      load: load === 'empty' || load === 'loaded' || load === 'partLoaded' ? load : 'notSaid',
      derailed: derailed === true,
      firstDerailed: firstDerailed === true,
      hazmat: hazmat === true,
      lengthM: read(vehicle.id, 'lengthOverPullingFaces')?.value ?? NaN,
      massKg: read(vehicle.id, 'grossWeight')?.value ?? NaN,
    };
  });
  return { system: systemOf(record), vehicles: vehicles.sort((a, b) => a.position - b.position) };
}

/** Drawn with a broken outline at this length when nobody entered one. */
const UNKNOWN_LENGTH_M = toCanonical(55, 'ft', 'alongTrack');
const ROW_HEIGHT = 96;
const BODY_TOP = 30;
const BODY_MAX = 34;
const GAP = 1.5;

const lengthOf = (vehicle: ConsistVehicle): number =>
  vehicle.lengthM > 0 ? vehicle.lengthM : UNKNOWN_LENGTH_M;

/** Rows of vehicles, none longer than a row can hold at the given scale. */
function rowsOf(vehicles: readonly ConsistVehicle[], rowM: number): readonly (readonly ConsistVehicle[])[] {
  const rows: ConsistVehicle[][] = [[]];
  let used = 0;
  for (const vehicle of vehicles) {
    const length = lengthOf(vehicle);
    const row = rows[rows.length - 1]!;
    if (row.length > 0 && used + length > rowM) {
      rows.push([vehicle]);
      used = length;
    } else {
      row.push(vehicle);
      used += length;
    }
  }
  return rows;
}

/** Slanting lines for part loads: a pattern both renderers know how to draw. */
function hatch(x: number, y: number, width: number, height: number): Shape[] {
  const shapes: Shape[] = [];
  for (let start = 4; start < width + height; start += 4) {
    const [fromX, fromY] = start <= width ? [x + start, y] : [x + width, y + start - width];
    const [toX, toY] = start <= height ? [x, y + start] : [x + start - height, y + height];
    shapes.push(line([fromX, fromY], [toX, toY], pen('ink', 0.8)));
  }
  return shapes;
}

function bodyShapes(
  vehicle: ConsistVehicle,
  x: number,
  width: number,
  base: number,
  height: number,
): Shape[] {
  const known = Number.isFinite(vehicle.massKg) && vehicle.lengthM > 0;
  const outline = vehicle.derailed
    ? pen('warn', 2)
    : pen(vehicle.type === 'locomotive' ? 'rail' : 'ink', 0.9, known ? undefined : [2, 2]);
  const top = base - height;
  const inset = vehicle.derailed ? 1 : 0;
  const fill =
    vehicle.type === 'locomotive'
      ? 'rail'
      : vehicle.load === 'loaded'
        ? 'ink'
        : vehicle.load === 'notSaid'
          ? undefined
          : 'paper';
  return [
    ...(fill === undefined
      ? []
      : [box(x + inset, top, width - 2 * inset, height, { fill, fillOpacity: fill === 'ink' ? 0.62 : 1 })]),
    ...(vehicle.load === 'partLoaded' && vehicle.type !== 'locomotive'
      ? hatch(x + inset, top, width - 2 * inset, height)
      : []),
    ...(vehicle.load === 'notSaid' && vehicle.type !== 'locomotive'
      ? [line([x + inset, base], [x + width - inset, top], pen('ink', 0.8))]
      : []),
    box(x + inset, top, width - 2 * inset, height, { stroke: outline }),
  ];
}

/** A car off the rails: a tilted cross above it, whatever its colour. */
const derailedSign = (x: number, y: number): Shape[] => [
  line([x - 3.5, y - 3.5], [x + 3.5, y + 3.5], pen('warn', 1.8)),
  line([x - 3.5, y + 3.5], [x + 3.5, y - 3.5], pen('warn', 1.8)),
];

const hazmatSign = (x: number, y: number): Shape =>
  area(
    [
      [x, y - 4],
      [x + 4, y],
      [x, y + 4],
      [x - 4, y],
    ],
    'paper',
    pen('limit', 1.2),
  );

function vehicleShapes(
  vehicle: ConsistVehicle,
  x: number,
  perM: number,
  top: number,
  heaviest: number,
): Shape {
  const length = lengthOf(vehicle) * perM;
  const width = Math.max(2.5, length - GAP);
  const base = top + BODY_TOP + BODY_MAX;
  const height = Number.isFinite(vehicle.massKg) ? Math.max(5, (vehicle.massKg / heaviest) * BODY_MAX) : 14;
  const middle = x + width / 2;
  const wheel = Math.min(2.2, width / 7);
  const wheels = [0.14, 0.86].map((at): Shape => ({
    type: 'circle',
    cx: x + width * at,
    cy: base + wheel + 1,
    r: wheel,
    fill: 'rail',
  }));
  const signY = base - height - 7;
  const tip = vehicle.derailed ? signY - 6 : signY + 3;
  return {
    type: 'group',
    label: vehicleWords(vehicle),
    shapes: [
      ...bodyShapes(vehicle, x, width, base, height),
      ...wheels,
      ...(vehicle.derailed ? derailedSign(middle, signY) : []),
      ...(vehicle.hazmat ? [hazmatSign(middle, base - height / 2)] : []),
      ...(vehicle.firstDerailed
        ? arrow([middle, tip - 15], [middle, tip], { ink: 'mark', width: 2.2, head: 8 })
        : []),
    ],
  };
}

const LOAD_WORDS = {
  empty: 'empty',
  loaded: 'loaded',
  partLoaded: 'part loaded',
  notSaid: 'load not said',
} as const;

const vehicleWords = (vehicle: ConsistVehicle): string =>
  [
    `${Number.isFinite(vehicle.position) ? vehicle.position : '?'} · ${vehicle.name}`,
    TYPE_LABELS.get(vehicle.type) ?? 'Other',
    ...(vehicle.type === 'locomotive' ? [] : [LOAD_WORDS[vehicle.load]]),
    ...(vehicle.hazmat ? ['hazardous material'] : []),
    ...(vehicle.firstDerailed ? ['first to derail'] : vehicle.derailed ? ['derailed'] : []),
  ].join(', ');

/** Positions written under the row: ends, every fifth, derailed ones, as far as they have room. */
function numberShapes(
  row: readonly ConsistVehicle[],
  xs: readonly number[],
  y: number,
  right: number,
): Shape[] {
  const wanted = row.map((vehicle, i) => ({
    vehicle,
    x: xs[i]!,
    rank: vehicle.firstDerailed ? 0 : i === 0 ? 1 : vehicle.derailed ? 2 : vehicle.position % 5 === 0 ? 3 : 4,
  }));
  const taken: [number, number][] = [];
  const shapes: Shape[] = [];
  for (const { vehicle, x, rank } of [...wanted].sort((a, b) => a.rank - b.rank)) {
    if (!Number.isFinite(vehicle.position)) continue;
    const text = String(vehicle.position);
    const half = textWidth(text, LETTER, rank === 0 ? 'bold' : 'normal') / 2 + 2;
    const at = Math.min(Math.max(x, half), right - half);
    if (taken.some(([low, high]) => at - half < high && at + half > low)) continue;
    taken.push([at - half, at + half]);
    shapes.push(words(at, y, text, { anchor: 'middle', bold: rank === 0 }));
  }
  return shapes;
}

type KeyItem = { readonly text: string; readonly draw: (x: number, y: number) => readonly Shape[] };

const swatch =
  (vehicle: Partial<ConsistVehicle>) =>
  (x: number, y: number): readonly Shape[] =>
    bodyShapes(
      {
        position: 0,
        name: '',
        type: 'boxcar',
        load: 'empty',
        derailed: false,
        firstDerailed: false,
        hazmat: false,
        lengthM: 1,
        massKg: 1,
        ...vehicle,
      },
      x,
      18,
      y,
      11,
    );

const KEY: readonly KeyItem[] = [
  { text: 'locomotive', draw: swatch({ type: 'locomotive' }) },
  { text: 'loaded', draw: swatch({ load: 'loaded' }) },
  { text: 'part loaded', draw: swatch({ load: 'partLoaded' }) },
  { text: 'empty', draw: swatch({ load: 'empty' }) },
  { text: 'load not said', draw: swatch({ load: 'notSaid' }) },
  { text: 'weight or length not known', draw: swatch({ massKg: NaN }) },
  {
    text: 'derailed',
    draw: (x, y) => [...swatch({ derailed: true })(x, y).slice(0, 2), ...derailedSign(x + 9, y - 5.5)],
  },
  {
    text: 'first to derail',
    draw: (x, y) => [
      line([x + 9, y - 13], [x + 9, y - 4], pen('mark', 2.2)),
      arrowHead([x + 9, y], Math.PI / 2, 'mark', 8),
    ],
  },
  { text: 'hazardous material', draw: (x, y) => [hazmatSign(x + 9, y - 5)] },
];

function keyShapes(left: number, right: number, top: number): { shapes: Shape[]; height: number } {
  const shapes: Shape[] = [];
  let x = left;
  let y = top + 12;
  for (const { text, draw } of KEY) {
    const need = 24 + textWidth(text, LETTER);
    if (x > left && x + need > right) {
      x = left;
      y += 19;
    }
    shapes.push(...draw(x, y), words(x + 24, y, text));
    x += need + 16;
  }
  return { shapes, height: y - top + 8 };
}

/** Rows are kept to about this many at most before the cars are drawn smaller. */
const MOST_ROWS = 6;
const LARGEST_PX_PER_M = 4.2;
const LEAST_PX_PER_M = 0.45;
/** Lengths a scale bar may have. */
const BARS = { us: [200, 100, 50, 20, 10], metric: [50, 20, 10, 5] } as const;

/**
 * The train, head end at the left of the first row and every row read from left to right: length
 * of each vehicle to one scale, weight as height, fill for the load, outline and a cross for
 * derailed, an arrow on the first. Long trains go on in further rows.
 */
export function consistFigure(
  { vehicles, system }: ConsistData,
  { width }: { readonly width: number },
): Figure {
  const left = 8;
  const right = width - 8;
  if (vehicles.length === 0) {
    return {
      width,
      height: 50,
      title: 'The train',
      description: 'No vehicles are recorded.',
      shapes: [words(left, 28, 'No vehicles are recorded.', { ink: 'faint' })],
    };
  }
  const total = vehicles.reduce((sum, vehicle) => sum + lengthOf(vehicle), 0);
  const longest = Math.max(...vehicles.map(lengthOf));
  const rows_ = width < 600 ? MOST_ROWS * 2 : MOST_ROWS;
  const perM = Math.max(
    LEAST_PX_PER_M,
    Math.min(LARGEST_PX_PER_M, (rows_ * (right - left) * 0.94) / total, (right - left) / longest),
  );
  const rows = rowsOf(vehicles, (right - left) / perM);
  const masses = vehicles.map((vehicle) => vehicle.massKg).filter((mass) => mass > 0);
  const heaviest = masses.length === 0 ? 1 : Math.max(...masses);
  const top = 24;
  const shapes: Shape[] = [
    ...arrow([left + 34, 10], [left, 10], { width: 1.6 }),
    words(left + 40, 14, 'head end, direction of travel', { bold: true }),
  ];
  rows.forEach((row, r) => {
    const rowTop = top + r * ROW_HEIGHT;
    const middles: number[] = [];
    let x = left;
    for (const vehicle of row) {
      shapes.push(vehicleShapes(vehicle, x, perM, rowTop, heaviest));
      const length = lengthOf(vehicle) * perM;
      middles.push(x + (length - GAP) / 2);
      x += length;
    }
    const base = rowTop + BODY_TOP + BODY_MAX + 6;
    shapes.push(line([left, base], [Math.min(x, right), base], pen('rail', 1.2)));
    shapes.push(...numberShapes(row, middles, base + 14, width));
  });
  const along = scaleOf('alongTrack', system);
  const mass = scaleOf('mass', system);
  const bars = BARS[system].map((shown) => ({
    shown,
    m: toCanonical(shown, system === 'us' ? 'ft' : 'm', 'alongTrack'),
  }));
  const bar = bars.find(({ m }) => m * perM <= (right - left) * 0.4) ?? bars[bars.length - 1]!;
  const barText = `${bar.shown} ${along.unitLabel} along the train`;
  const footTop = top + rows.length * ROW_HEIGHT + 4;
  const barEnd = left + bar.m * perM;
  const heaviestText = `height: weight, tallest ${mass.text(Math.round(mass.toShown(heaviest)))} ${mass.unitLabel}`;
  const besideBar = barEnd + 6 + textWidth(barText, LETTER) + 20;
  const isBeside = besideBar + textWidth(heaviestText, LETTER) <= width;
  const [weightX, weightY] = isBeside ? [besideBar, footTop + 14] : [left, footTop + 32];
  const keyTop = footTop + (isBeside || masses.length === 0 ? 26 : 44);
  const key = keyShapes(left, right, keyTop);
  const known = masses.length < vehicles.length ? `, ${vehicles.length - masses.length} without weight` : '';
  const derailed = vehicles.filter((vehicle) => vehicle.derailed || vehicle.firstDerailed);
  return {
    width,
    height: keyTop + key.height,
    title: 'The train',
    description: `${vehicles.length} vehicles, ${along.text(Math.round(along.toShown(total)))} ${along.unitLabel} in all${known}, head end first. ${
      derailed.length === 0
        ? 'None is recorded as derailed.'
        : `Derailed: ${derailed.map(vehicleWords).join('; ')}.`
    }`,
    shapes: [
      ...shapes,
      line([left, footTop + 10], [barEnd, footTop + 10], pen('ink', 1.4)),
      line([left, footTop + 6], [left, footTop + 14], pen('ink', 1.4)),
      line([barEnd, footTop + 6], [barEnd, footTop + 14], pen('ink', 1.4)),
      words(barEnd + 6, footTop + 14, barText),
      ...(masses.length === 0
        ? []
        : [words(weightX, weightY, fitText(heaviestText, width - weightX, LETTER))]),
      ...key.shapes,
    ],
  };
}
