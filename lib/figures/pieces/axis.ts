import { ticks } from 'd3-array';
import { fromCanonical } from '../../readings/convert';
import type { Dimension, Unit, UnitSystem } from '../../readings/unit';

/** What an axis measures: values come in the dimension's canonical unit and are shown in this one. */
export type Scale = {
  readonly unitLabel: string;
  readonly toShown: (canonical: number) => number;
  /** Round values between two shown values, about `count` of them. */
  readonly ticks: (low: number, high: number, count: number) => readonly number[];
  readonly text: (shown: number) => string;
};

const MINUS = '−';
const signed = (value: number, text: string): string => (value < 0 ? `${MINUS}${text}` : text);

/** Decimals that tell neighbouring ticks apart; ticks come in steps of 1, 2 or 5 times a power of ten. */
const decimal = (shown: number): string => {
  const text = Math.abs(Number(shown.toPrecision(10))).toString();
  return signed(shown, text);
};

/** Steps a ruler has, inches: a reader of fractions looks for these and not for tenths. */
const INCH_STEPS = [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 5, 10, 20, 50];

function inchTicks(low: number, high: number, count: number): readonly number[] {
  const step = INCH_STEPS.find((each) => (high - low) / each <= count) ?? (high - low) / count;
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
}

/** Inches as a reader of rulers writes them: 56 1/2. Nearest sixteenth. */
export function inchText(inches: number): string {
  const parts = Math.round(Math.abs(inches) * 16);
  const whole = Math.floor(parts / 16);
  let top = parts % 16;
  let bottom = 16;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const fraction = top === 0 ? '' : `${top}/${bottom}`;
  const text = fraction === '' ? String(whole) : whole === 0 ? fraction : `${whole} ${fraction}`;
  return signed(parts === 0 ? 0 : inches, text);
}

const plain = (unit: Unit, dimension: Dimension, unitLabel: string): Scale => ({
  unitLabel,
  toShown: (canonical) => fromCanonical(canonical, unit, dimension),
  ticks,
  text: decimal,
});

const INCHES: Scale = { ...plain('in', 'crossLength', 'in'), ticks: inchTicks, text: inchText };

/** Only whole numbers are counts. */
const COUNTS: Scale = {
  unitLabel: 'number',
  toShown: (canonical) => canonical,
  ticks: (low, high, count) => ticks(low, high, count).filter(Number.isInteger),
  text: decimal,
};

const NOTCHES: Scale = { ...COUNTS, unitLabel: 'notch' };

const SCALES = {
  crossLength: { us: INCHES, metric: plain('mm', 'crossLength', 'mm') },
  alongTrack: { us: plain('ft', 'alongTrack', 'ft'), metric: plain('m', 'alongTrack', 'm') },
  /** Degrees of curve; elsewhere the reciprocal of the radius, which unlike the radius passes through zero. */
  curvature: {
    us: plain('°curve', 'curvature', 'degrees'),
    metric: { ...plain('1/m', 'curvature', '1/km'), toShown: (canonical: number) => canonical * 1000 },
  },
  speed: { us: plain('mph', 'speed', 'mph'), metric: plain('km/h', 'speed', 'km/h') },
  pressure: { us: plain('psi', 'pressure', 'psi'), metric: plain('kPa', 'pressure', 'kPa') },
  force: { us: plain('kip', 'force', 'kip'), metric: plain('kN', 'force', 'kN') },
  mass: { us: plain('ton', 'mass', 'short tons'), metric: plain('t', 'mass', 't') },
  acceleration: {
    us: { ...plain('mph', 'speed', 'mph/s') },
    metric: { ...plain('m/s', 'speed', 'm/s²') },
  },
  time: { us: plain('s', 'time', 's'), metric: plain('s', 'time', 's') },
  ratio: { us: plain('1', 'ratio', 'ratio'), metric: plain('1', 'ratio', 'ratio') },
  share: { us: plain('%', 'ratio', '%'), metric: plain('%', 'ratio', '%') },
  count: { us: COUNTS, metric: COUNTS },
  notch: { us: NOTCHES, metric: NOTCHES },
} as const satisfies Record<string, Record<UnitSystem, Scale>>;

export type ScaleKind = keyof typeof SCALES;

/** The scale on which a kind of value is shown in a system of units. */
export const scaleOf = (kind: ScaleKind, system: UnitSystem): Scale => SCALES[kind][system];
