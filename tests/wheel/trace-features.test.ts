import { describe, expect, it } from 'vitest';
import { type Trace } from '~/lib/case/trace';
import { wheelTraceFeatures } from '~/lib/wheel/trace-features';
import { newWheel } from './wheels';

const { xMm, yMm } = newWheel('s1002');
const trace: Trace = {
  id: 'trace-1',
  order: 0,
  shape: 'wheel',
  subject: { kind: 'wheelset', id: 'wheelset-1' },
  side: 'left',
  behindMm: null,
  sha256: '',
  fileName: 'wheel.csv',
  making: { by: 'file', unit: 'mm', columns: [0, 1], flipped: { x: false, y: false } },
  pointsMm: Float64Array.from({ length: 2 * xMm.length }, (_, i) => (i % 2 ? yMm : xMm)[i >> 1]!),
  uncertainty: { acrossMm: 0.1, scale: 0, because: [] },
  mirrored: false,
  hand: null,
  distanceRunKm: null,
  instrumentId: null,
  personId: null,
  takenAt: null,
  disturbance: 'undisturbed',
  note: '',
  removed: null,
  createdAt: '2024-01-01T00:00:00Z',
};
const taken = (given: Trace, seed = 1) => {
  const result = wheelTraceFeatures(given, seed);
  if (!result.ok) throw new Error(result.message);
  return result.value;
};
const heightOf = (given: Trace, seed = 1) => {
  const { flangeHeight } = taken(given, seed).features;
  if (!flangeHeight.ok) throw new Error(flangeHeight.message);
  return flangeHeight.value;
};

describe('features of a traced wheel with their uncertainty', () => {
  it('are the same for the same seed, and grow with the noise of the line', () => {
    const height = heightOf(trace);
    expect(heightOf(trace)).toEqual(height);
    expect(heightOf(trace, 2).u).not.toBe(height.u);
    // Noise of 0.1 mm tilts 29.5 mm of back by some 0.1°, 55 mm from the tread reference point.
    expect(height.u).toBeGreaterThan(0.07);
    expect(height.u).toBeLessThan(0.2);
    const finer = heightOf({ ...trace, uncertainty: { ...trace.uncertainty, acrossMm: 0.02 } });
    expect(finer.u).toBeLessThan(height.u / 3);
  });

  it('carry the uncertainty of the scale', () => {
    const { u } = heightOf({ ...trace, uncertainty: { acrossMm: 0, scale: 0.01, because: [] } });
    expect(u).toBeGreaterThan(0.2);
    expect(u).toBeLessThan(0.35);
  });

  it('follow a correction by hand, and say so', () => {
    const hand = { dxMm: 0, dyMm: 1, angleRad: 0, reason: 'Burr on the tread.' };
    const moved = { ...trace, hand };
    expect(heightOf(moved).value - heightOf(trace).value).toBeCloseTo(1, 6);
    expect(taken(moved).remarks.join()).toContain('Burr on the tread.');
    expect(taken(moved).placing.dyMm - taken(trace).placing.dyMm).toBeCloseTo(1, 9);
  });
});
