import type { Dimension, Unit } from './unit';

type Spellings = Readonly<Partial<Record<Unit, readonly string[]>>>;

const LENGTHS: Spellings = {
  in: ['in', 'in.', 'inch', 'inches', '"'],
  ft: ['ft', 'ft.', 'foot', 'feet', "'"],
  mm: ['mm', 'mm.', 'millimetre', 'millimetres', 'millimeter', 'millimeters'],
  cm: ['cm', 'cm.', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  m: ['m', 'm.', 'metre', 'metres', 'meter', 'meters'],
};

/** How people write each unit, lower case, after folding. */
const SPELLINGS: Readonly<Record<Dimension, Spellings>> = {
  crossLength: LENGTHS,
  alongTrack: {
    ft: LENGTHS.ft,
    m: LENGTHS.m,
    in: LENGTHS.in,
    mi: ['mi', 'mi.', 'mile', 'miles'],
    km: ['km', 'kilometre', 'kilometres', 'kilometer', 'kilometers'],
  },
  speed: {
    mph: ['mph', 'm.p.h.', 'mi/h', 'miles per hour'],
    'km/h': ['km/h', 'kmh', 'kph', 'kmph', 'kilometres per hour', 'kilometers per hour'],
    'm/s': ['m/s'],
  },
  mass: {
    lb: ['lb', 'lb.', 'lbs', 'lbs.', 'pound', 'pounds', '#'],
    ton: ['short ton', 'short tons', 'ton', 'tons'],
    t: ['t', 'tonne', 'tonnes', 'metric ton', 'metric tons'],
    kg: ['kg', 'kilogram', 'kilograms'],
  },
  temperature: { '°F': ['°f', 'f', 'deg f'], '°C': ['°c', 'c', 'deg c'] },
  angle: {
    '°': ['°', 'deg', 'deg.', 'degree', 'degrees'],
    rad: ['rad', 'radian', 'radians'],
    mrad: ['mrad', 'milliradian', 'milliradians'],
  },
  curvature: {
    '°curve': ['°', 'deg', 'deg.', 'degree', 'degrees', '°curve', '° curve', 'degrees of curve'],
    'm radius': ['m radius', 'm', 'metre radius', 'meter radius', 'metres', 'meters'],
    'ft radius': ['ft radius', 'ft', 'ft.', 'foot radius', 'feet'],
    '1/m': ['1/m', '/m'],
  },
  force: {
    lbf: ['lbf', 'lb', 'lbs', 'pounds'],
    kip: ['kip', 'kips'],
    kN: ['kn', 'kilonewton', 'kilonewtons'],
  },
  pressure: { psi: ['psi', 'psig', 'lb/in2'], kPa: ['kpa'], bar: ['bar'] },
  time: {
    s: ['s', 'sec', 'sec.', 'secs', 'second', 'seconds'],
    min: ['min', 'min.', 'mins', 'minute', 'minutes'],
    h: ['h', 'hr', 'hrs', 'hour', 'hours'],
  },
  ratio: { '%': ['%', 'percent', 'per cent'] },
  grade: { '%': ['%', 'percent', 'per cent'] },
  stiffness: { 'kip/in': ['kip/in'], 'kN/mm': ['kn/mm'] },
  count: {},
};

type Entry = readonly [spelling: string, unit: Unit];

const longestFirst = (spellings: Spellings): readonly Entry[] =>
  (Object.entries(spellings) as [Unit, readonly string[]][])
    .flatMap(([unit, words]) => words.map((word): Entry => [word, unit]))
    .sort((a, b) => b[0].length - a[0].length);

const ENTRIES = Object.fromEntries(
  (Object.entries(SPELLINGS) as [Dimension, Spellings][]).map(([dimension, spellings]) => [
    dimension,
    longestFirst(spellings),
  ]),
) as Readonly<Record<Dimension, readonly Entry[]>>;

/** A folded text split into its number and the unit written after it, or null when it ends in none. */
export function splitUnit(
  folded: string,
  dimension: Dimension,
): { readonly number: string; readonly unit: Unit; readonly spelling: string } | null {
  for (const [spelling, unit] of ENTRIES[dimension]) {
    if (!folded.endsWith(spelling)) continue;
    const number = folded.slice(0, folded.length - spelling.length);
    // "41/m" is 41 per metre, not 4 of "1/m".
    const follows = /^\d/.test(spelling) ? /[\d.] $/ : /[\d.] ?$/;
    if (follows.test(number)) return { number: number.trim(), unit, spelling };
  }
  return null;
}

/** How a unit is written on screen and in the report; '' for a plain ratio or a count. */
export function unitLabel(unit: Unit): string {
  switch (unit) {
    case '°curve':
      return '°';
    case 'ton':
      return 'short tons';
    case '1':
      return '';
    default:
      return unit;
  }
}
