import { describe, expect, it } from 'vitest';
import type { Entity, Reading } from '~/lib/case/record';
import { findInstrumentKind, INSTRUMENT_KINDS, uncertaintyOf } from '~/lib/readings/instrument';
import { parseReading } from '~/lib/readings/parse';
import { parseWidth } from '~/lib/readings/parse-width';
import type { Measure } from '~/lib/readings/quantity';
import type { UnitSystem } from '~/lib/readings/unit';
import { gauge, speed, station, temperature } from './measures';

const reading = (entered: string, quantity: Measure, system: UnitSystem = 'us'): Reading => {
  const parsed = parseReading(entered, quantity, system);
  if (!parsed.ok) throw new Error(parsed.message);
  return {
    id: 'r1',
    subject: { kind: 'station', id: 's1' },
    quantity: quantity.id,
    slot: '',
    entered,
    unit: parsed.value.unit,
    value: parsed.value.value,
    state: null,
    examined: null,
    instrumentId: null,
    personId: null,
    takenAt: null,
    disturbance: 'notSaid',
    sampling: 'notSaid',
    note: '',
    replaces: null,
    reason: null,
    withdrawn: false,
    createdAt: '2024-05-01T12:00:00Z',
  };
};

const instrument = (fields: Entity['fields']): Entity => ({
  id: 'i1',
  order: 1,
  fields: { name: 'Gauge 7', ...fields },
  removed: null,
  createdAt: '2024-05-01T12:00:00Z',
});

const R3 = Math.sqrt(3);
const IN = 25.4;

describe('uncertainty of a reading', () => {
  it('is that of the ordinary instrument when none is named', () => {
    const { u, basis } = uncertaintyOf(reading('56 13/16', gauge), gauge, undefined);
    expect(u).toBeCloseTo(IN / 32 / R3, 9);
    expect(basis).toMatch(/ordinary instrument.*made up for the test.*4\.3\.7/);
  });

  it('does not call a reduced fraction coarse: 56 3/4 may be 56 12/16', () => {
    expect(uncertaintyOf(reading('56 3/4', gauge), gauge, undefined).u).toBeCloseTo(IN / 32 / R3, 9);
    expect(uncertaintyOf(reading('56¾', gauge), gauge, undefined).u).toBeCloseTo(IN / 32 / R3, 9);
  });

  it('takes a decimal written coarser than the instrument at its word', () => {
    const { u, basis } = uncertaintyOf(reading('56.8', gauge), gauge, undefined);
    expect(u).toBeCloseTo((0.05 * IN) / R3, 9);
    expect(basis).toMatch(/written to ±/);
  });

  it('does not call whole inches coarse', () => {
    expect(uncertaintyOf(reading('57', gauge), gauge, undefined).u).toBeCloseTo(IN / 32 / R3, 9);
  });

  it('is never finer for having been written with more digits', () => {
    expect(uncertaintyOf(reading('56.7500', gauge), gauge, undefined).u).toBeCloseTo(IN / 32 / R3, 9);
  });

  it('takes the division of the instrument, then its kind', () => {
    const divided = instrument({ kind: 'trackGauge', resolution: '1/8 in' });
    expect(uncertaintyOf(reading('56 13/16', gauge), gauge, divided).u).toBeCloseTo(IN / 16 / R3, 9);
    const kind = instrument({ kind: 'pinContourGauge' });
    const found = uncertaintyOf(reading('56 13/16', gauge), gauge, kind);
    expect(found.u).toBeCloseTo(IN / 16 / R3, 9);
    expect(found.basis).toMatch(/pin contour gauge.*common practice, no source/);
  });

  it('combines a stated standard uncertainty with how the reading was written', () => {
    const certified = instrument({ kind: 'trackGauge', standardUncertainty: '0.2 mm' });
    const { u, basis } = uncertaintyOf(reading('1441', gauge), gauge, certified);
    expect(u).toBeCloseTo(Math.sqrt(0.2 ** 2 + 0.5 ** 2 / 3), 12);
    expect(basis).toMatch(/“Gauge 7” states u = 0\.2 mm.*5\.1\.2/);
    expect(uncertaintyOf(reading('57', gauge), gauge, certified).u).toBeCloseTo(0.2, 12);
  });

  it('says when the instrument is of no use for the reading, and goes on', () => {
    const wrong = instrument({ kind: 'thermometer', resolution: '2 °F' });
    const { u, basis } = uncertaintyOf(reading('56 13/16', gauge), gauge, wrong);
    expect(u).toBeCloseTo(IN / 32 / R3, 9);
    expect(basis).toMatch(/“2 °F” is no division for this reading/);
  });

  it('keeps to the unit of the quantity', () => {
    const tape = instrument({ kind: 'tape', resolution: '1/4 in' });
    expect(uncertaintyOf(reading(`-15' 6 1/4"`, station), station, tape).u).toBeCloseTo(0.0254 / 8 / R3, 12);
    const cold = instrument({ kind: 'thermometer' });
    expect(uncertaintyOf(reading('95', temperature), temperature, cold).u).toBeCloseTo(1 / 1.8 / R3, 9);
  });

  it('does not doubt an instruction', () => {
    const authorised: Measure = { ...speed, defaultResolution: { halfWidth: 0, source: 'an instruction' } };
    expect(uncertaintyOf(reading('41', authorised), authorised, undefined)).toEqual({
      u: 0,
      basis: 'an instruction',
    });
  });

  it('needs a value', () => {
    const withdrawn: Reading = { ...reading('57', gauge), value: null };
    expect(() => uncertaintyOf(withdrawn, gauge, undefined)).toThrow(RangeError);
  });
});

describe('kinds of instrument', () => {
  it('have their own ids, a source, and widths above zero', () => {
    expect(new Set(INSTRUMENT_KINDS.map(({ id }) => id)).size).toBe(INSTRUMENT_KINDS.length);
    for (const kind of INSTRUMENT_KINDS) {
      expect(kind.source).not.toBe('');
      for (const width of Object.values(kind.halfWidth)) expect(width).toBeGreaterThan(0);
      expect(findInstrumentKind(kind.id)).toBe(kind);
    }
  });
  it('knows that a go/no-go gauge measures nothing', () => {
    expect(findInstrumentKind('goNoGoGauge')?.halfWidth).toEqual({});
  });
});

describe('a width marked on an instrument', () => {
  it.each([
    ['1/16 in', 'crossLength', IN / 16],
    ['1/16', 'crossLength', IN / 16],
    ['±0.1 mm', 'crossLength', 0.1],
    ['1/4 in', 'alongTrack', 0.00635],
    ['2 °F', 'temperature', 2 / 1.8],
    ['0.05', 'ratio', 0.05],
    ['1 psi', 'pressure', 6.894757293168361],
  ] as const)('%s in %s', (text, dimension, width) => {
    const parsed = parseWidth(text, dimension);
    expect(parsed.ok && parsed.value).toBeCloseTo(width, 12);
  });
  it.each([
    ['0.1', 'crossLength'],
    ['0 mm', 'crossLength'],
    ['-1/16 in', 'crossLength'],
    ['1/0 in', 'crossLength'],
    ['fine', 'crossLength'],
    ['2 °F', 'crossLength'],
    ['1 m', 'curvature'],
    ['1,000 lb', 'mass'],
  ] as const)('refuses %s in %s', (text, dimension) => {
    const parsed = parseWidth(text, dimension);
    expect(!parsed.ok && parsed.message.length > 10).toBe(true);
  });
});
