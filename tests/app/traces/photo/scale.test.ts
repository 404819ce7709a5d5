import { describe, expect, it } from 'vitest';
import { scaleOf } from '~/app/traces/photo/scale';

const CORNERS = [
  [0, 0],
  [0, 850],
  [1100, 850],
  [1100, 0],
] as const;

describe('the scale of a picture', () => {
  it('makes the four sides of a sheet from its corners and two lengths', () => {
    const scale = scaleOf('sheet', CORNERS, ['8 1/2 in', '11'], 'us');
    expect(scale).toMatchObject({ ok: true });
    if (!scale.ok) return;
    expect(scale.value.map(({ apartMm }) => apartMm)).toEqual([215.9, 279.4, 215.9, 279.4]);
    expect(scale.value[0]).toMatchObject({ from: [0, 0], to: [0, 850] });
  });

  it('takes a bare number in the units of the case', () => {
    const marks = [
      [0, 0],
      [100, 0],
    ] as const;
    expect(scaleOf('pair', marks, ['150'], 'metric')).toMatchObject({ value: [{ apartMm: 150 }] });
    expect(scaleOf('pair', marks, ['6'], 'us')).toMatchObject({ value: [{ apartMm: 152.4 }] });
  });

  it('says how many points are missing, and what to enter for a length', () => {
    const few = scaleOf('cross', CORNERS.slice(0, 3), ['6 in', '4 in'], 'us');
    expect(few).toMatchObject({ ok: false, message: expect.stringContaining('3 of them are marked') });
    expect(scaleOf('sheet', CORNERS, ['8 1/2 in', ''], 'us')).toMatchObject({
      ok: false,
      message: 'Long side: enter it, such as 6 in or 150 mm.',
    });
    expect(scaleOf('sheet', CORNERS, ['8 1/0', '11'], 'us')).toMatchObject({
      ok: false,
      message: expect.stringContaining('Short side: '),
    });
  });
});
