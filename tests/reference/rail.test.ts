import { describe, expect, it } from 'vitest';
import { rolloverLimit } from '~/lib/mechanics/rollover';
import { leverArms } from '~/lib/rail/lever-arms';
import { RAIL_SECTIONS, railSection, type RailSection } from '~/lib/rail/sections';

const section = (id: string): RailSection => {
  const found = railSection(id);
  if (found === null) throw new Error(`${id} is not in the table`);
  return found;
};

/** Height, base, head width and web in mm, as two rail makers' catalogues reprint the tables. */
const REPRINTED: readonly [string, string, readonly [number, number, number, number]][] = [
  ['115RE', 'AREMA 2015 ch. 4', [168.28, 139.7, 69.06, 15.88]],
  ['119RE', 'AREMA ch. 4', [173.04, 139.7, 67.47, 15.88]],
  ['132RE', 'AREMA ch. 4', [180.98, 152.4, 76.2, 16.67]],
  ['133RE', 'AREMA ch. 4', [179.39, 152.4, 76.2, 17.46]],
  ['136RE', 'AREMA 2015 ch. 4', [185.74, 152.4, 74.61, 17.46]],
  ['141RE', 'AREMA 2015 ch. 4', [188.91, 152.4, 77.79, 17.46]],
  ['60E1', 'EN 13674-1:2011', [172, 150, 72, 16.5]],
  ['54E1', 'EN 13674-1:2011', [159, 140, 70, 16]],
];

/** The reprints round to 0.01 mm. */
const HALF_A_DIGIT = 0.0051;

describe('rail sections as reprinted in makers’ catalogues', () => {
  for (const [id, source, [height, base, head, web]] of REPRINTED) {
    it(`${id}, ${source}: height, base, head and web to 0.01 mm`, () => {
      const rail = section(id);
      expect(Math.abs(rail.heightMm - height)).toBeLessThanOrEqual(HALF_A_DIGIT);
      expect(Math.abs(rail.baseWidthMm - base)).toBeLessThanOrEqual(HALF_A_DIGIT);
      expect(Math.abs(rail.headWidthMm - head)).toBeLessThanOrEqual(HALF_A_DIGIT);
      expect(Math.abs(rail.webMm - web)).toBeLessThanOrEqual(HALF_A_DIGIT);
    });
  }

  it('the fraction printed is the number kept, for every section', () => {
    const inches = (text: string) =>
      text.split(' ').reduce((sum, part) => {
        const [over, under = '1'] = part.split('/');
        return sum + Number(over) / Number(under);
      }, 0);
    for (const rail of RAIL_SECTIONS) {
      const scale = rail.printed.unit === 'in' ? 25.4 : 1;
      expect(rail.heightMm, rail.id).toBeCloseTo(inches(rail.printed.height) * scale, 10);
      expect(rail.baseWidthMm, rail.id).toBeCloseTo(inches(rail.printed.base) * scale, 10);
      expect(rail.headWidthMm, rail.id).toBeCloseTo(inches(rail.printed.headWidth) * scale, 10);
      expect(rail.webMm, rail.id).toBeCloseTo(inches(rail.printed.web) * scale, 10);
    }
  });

  it('names are found however they are written, and others are not', () => {
    expect(railSection('136 re')?.id).toBe('136RE');
    expect(railSection('60-E1')?.id).toBe('60E1');
    expect(railSection('140RE')).toBeNull();
  });
});

describe('rollover of 136RE (AREMA section table, moments about the base corner)', () => {
  const rail = section('136RE');

  it('high rail, flange 5/8 in down (49 CFR 213.53(a)): 0.45 mid-head, 0.67 on the gauge face', () => {
    expect(rolloverLimit(leverArms(rail, 'midHead', 'gaugeFace'), 0)).toBeCloseTo(3 / 6.6875, 10);
    expect(rolloverLimit(leverArms(rail, 'gaugeFace', 'gaugeFace'), 0)).toBeCloseTo(4.46875 / 6.6875, 10);
  });

  it('low rail, tread friction at the top: 0.41 mid-head', () => {
    expect(rolloverLimit(leverArms(rail, 'midHead', 'topOfRail'), 0)).toBeCloseTo(3 / 7.3125, 10);
  });

  it('engineering judgement of places: about 0.6 at the gauge corner, 0.27 at a false flange on the low rail', () => {
    expect(rolloverLimit(leverArms(rail, 'gaugeCorner', 'gaugeFace'), 0)).toBeCloseTo(0.6, 2);
    expect(rolloverLimit(leverArms(rail, 'fieldSide', 'topOfRail'), 0)).toBeCloseTo(2 / 7.3125, 10);
  });

  it('plane rotation, cant 1:40: 0.479 inward, 0.419 outward', () => {
    const arms = leverArms(rail, 'midHead', 'gaugeFace');
    expect(rolloverLimit(arms, Math.atan(1 / 40))).toBeCloseTo(0.479, 3);
    expect(rolloverLimit(arms, -Math.atan(1 / 40))).toBeCloseTo(0.419, 3);
  });
});
