import type { Entity, Reading } from '../case/record';
import { roundUncertainty } from './format';
import { writtenHalfWidth } from './parse-measure';
import { parseWidth } from './parse-width';
import type { Measure } from './quantity';
import { combine, standardUncertaintyFromHalfWidth } from './uncertainty';
import { DIMENSIONS, type Dimension } from './unit';

export { combine, expanded, standardUncertaintyFromHalfWidth } from './uncertainty';

export type InstrumentKind = {
  readonly id: string;
  readonly name: string;
  /** Half-width of the resolution per dimension it reads, canonical unit. Empty: pass or fail only. */
  readonly halfWidth: Readonly<Partial<Record<Dimension, number>>>;
  readonly status: 'published' | 'common practice, no source' | 'from memory';
  readonly source: string;
};

const INCH_MM = 25.4;
const half = (divisionInches: number): number => (divisionInches * INCH_MM) / 2;

/** Kinds of instrument and what each resolves when its own data sheet is not at hand. */
export const INSTRUMENT_KINDS: readonly InstrumentKind[] = [
  {
    id: 'tape',
    name: 'Tape',
    halfWidth: { crossLength: half(1 / 16), alongTrack: 0.0127 },
    status: 'common practice, no source',
    source: 'Divided in 1/16 in; along the track read to 1 in because of sag and alignment',
  },
  {
    id: 'steelRule',
    name: 'Steel rule',
    halfWidth: { crossLength: half(1 / 32) },
    status: 'common practice, no source',
    source: 'Divided in 1/32 in',
  },
  {
    id: 'levelBoard',
    name: 'Level board',
    halfWidth: { crossLength: half(1 / 8) },
    status: 'common practice, no source',
    source: 'Read to 1/8 in',
  },
  {
    id: 'trackGauge',
    name: 'Track gauge',
    halfWidth: { crossLength: half(1 / 16) },
    status: 'common practice, no source',
    source: 'Divided in 1/16 in',
  },
  {
    id: 'stringLine',
    name: 'String line with rule',
    halfWidth: { crossLength: half(1 / 8) },
    status: 'common practice, no source',
    source: 'Read to 1/8 in: the string has a thickness and moves in the wind',
  },
  {
    id: 'pinContourGauge',
    name: 'Pin contour gauge',
    halfWidth: { crossLength: INCH_MM / 16 },
    status: 'common practice, no source',
    source: 'Good to about ±1/16 in',
  },
  {
    id: 'wheelGauge',
    name: 'Wheel finger gauge',
    halfWidth: { crossLength: half(1 / 16) },
    status: 'common practice, no source',
    source: 'Divided in 1/16 in',
  },
  {
    id: 'backToBackRod',
    name: 'Back-to-back rod',
    halfWidth: { crossLength: half(1 / 16) },
    status: 'common practice, no source',
    source: 'Divided in 1/16 in',
  },
  {
    id: 'chordGauge',
    name: 'Chord gauge with dial or depth micrometer',
    halfWidth: { crossLength: half(0.001) },
    status: 'common practice, no source',
    source: 'Dial divided in 0.001 in',
  },
  {
    id: 'profilometer',
    name: 'Profilometer, laser or contact',
    halfWidth: { crossLength: 0.1 },
    status: 'from memory',
    source: 'About 0.1 mm',
  },
  {
    id: 'goNoGoGauge',
    name: 'Go/no-go gauge',
    halfWidth: {},
    status: 'common practice, no source',
    source: 'Gives pass or fail of one check, not a value',
  },
  {
    id: 'angleGauge',
    name: 'Protractor or inclinometer',
    halfWidth: { angle: (0.5 * Math.PI) / 180 },
    status: 'common practice, no source',
    source: 'Divided in whole degrees',
  },
  {
    id: 'scale',
    name: 'Weigh scale',
    halfWidth: { mass: 22.68, force: 0.2224 },
    status: 'common practice, no source',
    source: 'Divided in 100 lb',
  },
  {
    id: 'thermometer',
    name: 'Thermometer',
    halfWidth: { temperature: 1 / 1.8 },
    status: 'common practice, no source',
    source: 'Rail thermometer divided in 2 °F',
  },
  {
    id: 'tribometer',
    name: 'Tribometer',
    halfWidth: { ratio: 0.05 },
    status: 'from memory',
    source: 'Repeats to about 0.05 in friction coefficient on one spot',
  },
  {
    id: 'recorder',
    name: 'Event recorder',
    halfWidth: { speed: 0.22352, pressure: 3.447, time: 0.5, alongTrack: 0.5 },
    status: 'common practice, no source',
    source:
      'Recorded in whole miles per hour, pounds per square inch and seconds; wheel size is an error of its own',
  },
];

export const findInstrumentKind = (id: string): InstrumentKind | undefined =>
  INSTRUMENT_KINDS.find((kind) => kind.id === id);

export type ReadingUncertainty = { readonly u: number; readonly basis: string };

function size(value: number, dimension: Dimension): string {
  const unit = DIMENSIONS[dimension].canonical;
  const { u, places } = roundUncertainty(value);
  return `${u.toFixed(Math.max(0, places))}${unit === '1' ? '' : ` ${unit}`}`;
}

type Stated = { readonly width: number } | { readonly unreadable: string } | null;

/** A width kept as text on the instrument, read in the dimension of the reading. */
function stated(field: unknown, dimension: Dimension): Stated {
  if (typeof field !== 'string' || field.trim() === '') return null;
  const width = parseWidth(field, dimension);
  return width.ok ? { width: width.value } : { unreadable: field.trim() };
}

const named = (instrument: Entity | undefined): string => {
  const name = instrument?.fields.name;
  return typeof name === 'string' && name !== '' ? `instrument “${name}”` : 'instrument';
};

type Resolving = { readonly halfWidth: number; readonly said: string };

function resolving(quantity: Measure, instrument: Entity | undefined): Resolving {
  const { dimension } = quantity;
  const division = stated(instrument?.fields.resolution, dimension);
  if (division && 'width' in division) {
    const halfWidth = division.width / 2;
    return {
      halfWidth,
      said: `${named(instrument)} reads to ±${size(halfWidth, dimension)}, half its division`,
    };
  }
  const aside = division
    ? `${named(instrument)}: “${division.unreadable}” is no division for this reading; `
    : '';
  const kindId = instrument?.fields.kind;
  const kind = typeof kindId === 'string' ? findInstrumentKind(kindId) : undefined;
  const usual = kind?.halfWidth[dimension];
  if (kind && usual !== undefined) {
    return {
      halfWidth: usual,
      said: `${aside}${kind.name.toLowerCase()}, ±${size(usual, dimension)} (${kind.status})`,
    };
  }
  const { halfWidth, source } = quantity.defaultResolution;
  return {
    halfWidth,
    said: `${aside}ordinary instrument for this reading, ±${size(halfWidth, dimension)} (${source})`,
  };
}

/**
 * Standard uncertainty of one reading, in the canonical unit of its quantity, and what it rests on.
 *
 * An instrument whose certificate states its standard uncertainty (`standardUncertainty`) is
 * combined with the half-width of how the reading was written, by root sum of squares
 * (JCGM 100:2008, 5.1.2). Otherwise the coarser of the instrument's resolution (half its smallest
 * division, `resolution`; else that of its `kind`; else the quantity's ordinary one) and the
 * half-width as written counts once, as a/√3 (4.3.7): both describe the same last division.
 * A quantity whose ordinary half-width is zero is an instruction, not a measurement: u = 0.
 * The instrument's fields are those of its kind in lib/case/kinds. Throws on a reading without a value.
 */
export function uncertaintyOf(
  reading: Reading,
  quantity: Measure,
  instrument: Entity | undefined,
): ReadingUncertainty {
  if (reading.value === null) throw new RangeError(`reading ${reading.id} has no value`);
  const { dimension, defaultResolution } = quantity;
  if (defaultResolution.halfWidth === 0) return { u: 0, basis: defaultResolution.source };
  const written = writtenHalfWidth(reading.entered, quantity, reading.unit);
  const certificate = stated(instrument?.fields.standardUncertainty, dimension);
  if (certificate && 'width' in certificate) {
    const said = `${named(instrument)} states u = ${size(certificate.width, dimension)}`;
    if (written === null) return { u: certificate.width, basis: said };
    return {
      u: combine(certificate.width, standardUncertaintyFromHalfWidth(written)),
      basis: `${said}, combined with ±${size(written, dimension)} as written (JCGM 100:2008, 4.3.7 and 5.1.2)`,
    };
  }
  const ordinary = resolving(quantity, instrument);
  if (written !== null && written > ordinary.halfWidth) {
    return {
      u: standardUncertaintyFromHalfWidth(written),
      basis: `written to ±${size(written, dimension)}, coarser than the instrument; a/√3 (JCGM 100:2008, 4.3.7)`,
    };
  }
  return {
    u: standardUncertaintyFromHalfWidth(ordinary.halfWidth),
    basis: `${ordinary.said}; a/√3 (JCGM 100:2008, 4.3.7)`,
  };
}

/**
 * Standard uncertainty of what a named instrument gives by itself, where nothing was written down
 * that could be coarser, canonical unit: as its certificate states, else half its division or the
 * half-width of its kind as a/√3 (JCGM 100:2008, 4.3.7). Null when none of them is known.
 */
export function uncertaintyOfInstrument(dimension: Dimension, { fields }: Entity): number | null {
  const certificate = stated(fields.standardUncertainty, dimension);
  if (certificate && 'width' in certificate) return certificate.width;
  const division = stated(fields.resolution, dimension);
  if (division && 'width' in division) return standardUncertaintyFromHalfWidth(division.width / 2);
  const usual = findInstrumentKind(String(fields.kind ?? ''))?.halfWidth[dimension];
  return usual === undefined ? null : standardUncertaintyFromHalfWidth(usual);
}
