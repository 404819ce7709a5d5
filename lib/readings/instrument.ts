import type { Entity, Reading } from '../case/record';
import { roundUncertainty } from './format';
import { writtenHalfWidth } from './parseMeasure';
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

export const instrumentKind = (id: string): InstrumentKind | undefined =>
  INSTRUMENT_KINDS.find((kind) => kind.id === id);

export type ReadingUncertainty = { readonly u: number; readonly basis: string };

const positive = (value: unknown): number | null =>
  typeof value === 'number' && Number.isFinite(value) && value > 0 ? value : null;

/** Lengths stand on the instrument in mm, whatever the instrument is used for; all else is canonical. */
const statedIn = (stated: number | null, dimension: Dimension): number | null =>
  stated !== null && dimension === 'alongTrack' ? stated / 1000 : stated;

function size(value: number, dimension: Dimension): string {
  const unit = DIMENSIONS[dimension].canonical;
  const { u, places } = roundUncertainty(value);
  return `${u.toFixed(Math.max(0, places))}${unit === '1' ? '' : ` ${unit}`}`;
}

type Resolving = { readonly halfWidth: number; readonly said: string };

function resolving(quantity: Measure, instrument: Entity | undefined): Resolving {
  const { dimension } = quantity;
  const name = typeof instrument?.fields.name === 'string' ? ` “${instrument.fields.name}”` : '';
  const own = statedIn(positive(instrument?.fields.resolutionHalfWidth), dimension);
  if (own !== null) return { halfWidth: own, said: `instrument${name} resolves ±${size(own, dimension)}` };
  const kind =
    typeof instrument?.fields.kind === 'string' ? instrumentKind(instrument.fields.kind) : undefined;
  const usual = kind?.halfWidth[dimension];
  if (kind && usual !== undefined) {
    return {
      halfWidth: usual,
      said: `${kind.name.toLowerCase()} resolves ±${size(usual, dimension)} (${kind.status})`,
    };
  }
  const { halfWidth, source } = quantity.defaultResolution;
  return {
    halfWidth,
    said: `ordinary instrument for this reading, ±${size(halfWidth, dimension)} (${source})`,
  };
}

/**
 * Standard uncertainty of one reading, in the canonical unit of its quantity, and what it rests on.
 *
 * An instrument that states its standard uncertainty (`standardUncertainty`) is combined with the
 * half-width of how the reading was written, by root sum of squares (JCGM 100:2008, 5.1.2).
 * Otherwise the coarser of the instrument's resolution (`resolutionHalfWidth`, else that of its
 * `kind`, else the quantity's ordinary one) and the half-width as written counts once, as a/√3
 * (4.3.7): both describe the same last division. On the instrument lengths are in mm, all else in
 * the dimension's canonical unit. Throws on a reading without a value.
 */
export function uncertaintyOf(
  reading: Reading,
  quantity: Measure,
  instrument: Entity | undefined,
): ReadingUncertainty {
  if (reading.value === null) throw new RangeError(`reading ${reading.id} has no value`);
  const { dimension } = quantity;
  const written = writtenHalfWidth(reading.entered, quantity, reading.unit);
  const stated = statedIn(positive(instrument?.fields.standardUncertainty), dimension);
  if (stated !== null) {
    const name = typeof instrument?.fields.name === 'string' ? ` “${instrument.fields.name}”` : '';
    const said = `instrument${name} states u = ${size(stated, dimension)}`;
    if (written === null || written <= 0) return { u: stated, basis: said };
    return {
      u: combine(stated, standardUncertaintyFromHalfWidth(written)),
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
