import { describe, expect, it } from 'vitest';
import { fitBackToBack } from '~/lib/wheel/back-to-back';
import { findInstrumentKind } from '~/lib/readings/instrument';
import { quantityOf } from '~/lib/readings/quantities';
import { found } from '../findings/by-id';
import { buildRecord } from '../findings/record-builder';

const inches = (n: number) => n * 25.4;
const rad = (degrees: number) => (degrees * Math.PI) / 180;

const measure = (id: string) => {
  const quantity = quantityOf(id);
  if (quantity.kind !== 'measure') throw new Error(`${id} is not measured`);
  return quantity;
};

describe('common practice, no source', () => {
  it('back-to-back of a freight wheelset is 53 in within a few sixteenths', () => {
    const { reference, possible } = measure('backToBack');
    for (const limit of [reference.low, reference.high]) {
      expect(Math.abs(limit - inches(53))).toBeLessThan(inches(5 / 16));
    }
    expect(reference.low).toBeLessThan(inches(53));
    expect(reference.high).toBeGreaterThan(inches(53));
    // A wheelset far out is still a reading, and the one most worth keeping.
    expect(possible[0]).toBeLessThan(inches(50));
    expect(possible[1]).toBeGreaterThan(inches(56));
  });

  it.each([1 / 4, 3 / 8, 1 / 2])(
    'three places 120° apart, because a bend that swings %f in throws off what is read at one',
    (swing) => {
      for (const greatestAt of [0, 25, 77, 190, 300]) {
        const at = (degrees: number) => ({
          clockRad: rad(degrees),
          backToBackMm: inches(53) + (inches(swing) / 2) * Math.cos(rad(degrees - greatestAt)),
        });
        const fit = fitBackToBack([at(0), at(120), at(240)], inches(1 / 64));
        if (fit.kind !== 'fitted') throw new Error(fit.why);
        expect(fit.meanMm).toBeCloseTo(inches(53), 9);
        expect(fit.swingMm).toBeCloseTo(inches(swing), 9);
        // One place, where it happens to be greatest, is out by half the swing.
        expect(at(greatestAt).backToBackMm - fit.meanMm).toBeCloseTo(inches(swing / 2), 9);
      }
    },
  );

  it.each([
    ['15/16', false],
    ['1', false],
    ['1 1/16', true],
  ])('a shelled spot %s in wide is condemnable in interchange: %s', (entered, condemned) => {
    const record = buildRecord({
      vehicle: [{ id: 'car', fields: { position: 1, type: 'boxcar' } }],
      wheelset: [{ id: 'axle', fields: { vehicle: 'car', axle: 1, disturbance: 'undisturbed' } }],
      wheelDefect: [
        {
          id: 'spot',
          fields: { wheelset: 'axle', side: 'left', type: 'shelled', appearance: 'old' },
          readings: [{ quantity: 'defectWidth', entered }],
        },
      ],
    });
    const [limit] = found(record).measured('defectWidth:spot').limits;
    expect(limit).toMatchObject({ exceeded: condemned, source: { status: 'common practice, no source' } });
    expect(limit?.limit).toBeCloseTo(inches(1), 9);
  });

  it('a pin gauge is good to about 1/16 in either way, and shapes are taken to be read with one', () => {
    const pins = findInstrumentKind('pinContourGauge');
    expect(pins?.halfWidth.crossLength).toBeCloseTo(inches(1 / 16), 12);
    expect(pins?.status).toBe('common practice, no source');
    for (const id of ['flangeThickness', 'flangeHeight', 'treadHollow', 'verticalLoss', 'gaugeFaceLoss']) {
      expect(measure(id).defaultResolution.halfWidth, id).toBeCloseTo(inches(1 / 16), 12);
    }
  });
});
