import { describe, expect, it } from 'vitest';
import { checkLimit, limitsFor } from '../../lib/rules/apply';
import type { RuleQuantityId } from '../../lib/rules/rule-quantity';
import type { RuleSet } from '../../lib/rules/rule-set';
import { caFreightCar } from '../../lib/rules/sets/ca-freight-car';
import { us49cfr215_229_230 } from '../../lib/rules/sets/us-49cfr215-229-230';

const MM_PER_INCH = 25.4;
const US = us49cfr215_229_230;
const CA = caFreightCar;

/** condemnedAt: the printed words condemn the limit's own value ("or more", "or less"). */
type Row = readonly [
  section: string,
  readAt: string,
  set: RuleSet,
  kind: string,
  quantity: RuleQuantityId,
  sense: 'max' | 'min',
  inches: number,
  condemnedAt: boolean,
];

const MEMORY = 'from memory';
const TRUCK = 'law.lawstack.com, 49 CFR 215.119, 20 June 2026';
const L73 = 'docslib.org, 49 CFR 229.73';
const L75 = 'laws9.com and docslib.org, 49 CFR 229.75';
const S112 = 'federal.elaws.us, 49 CFR 230.112';
const S113 = 'docslib.org and yumpu.com, 49 CFR 230.113';
const CANADA = 'tc.canada.ca, Freight Car Inspection and Safety Rules, part II';

const ROWS: readonly Row[] = [
  ['215.103(a)', MEMORY, US, 'freightCar', 'flangeThickness', 'min', 0.875, true],
  ['215.103(b)', MEMORY, US, 'freightCar', 'flangeHeight', 'max', 1.5, true],
  ['215.103(c)', MEMORY, US, 'freightCar', 'rimThickness', 'min', 0.6875, true],
  ['215.103(e)', MEMORY, US, 'freightCar', 'flangeChipLength', 'max', 1.5, true],
  ['215.103(f)(1)', MEMORY, US, 'freightCar', 'flatSpot', 'max', 2.5, false],
  ['215.103(f)(2)', MEMORY, US, 'freightCar', 'flatSpotAdjoining', 'max', 2, false],
  ['215.103(f)(1)', MEMORY, US, 'freightCar', 'shelledSpot', 'max', 2.5, false],
  ['215.119(c)(3)', TRUCK, US, 'freightCar', 'sideBearingClearanceEnd', 'max', 0.75, false],
  ['215.119(c)(4)', TRUCK, US, 'freightCar', 'sideBearingClearanceDiagonal', 'max', 0.75, false],
  ['229.69(b)', L73, US, 'locomotiveRoad', 'sideBearingClearanceEnd', 'max', 0.5, false],
  ['229.73(c) least', L73, US, 'locomotiveRoad', 'backToBack', 'min', 53, false],
  ['229.73(c) most', L73, US, 'locomotiveRoad', 'backToBack', 'max', 53.25, false],
  ['229.73(d)', L73, US, 'locomotiveYard', 'backToBackVariation', 'max', 0.25, false],
  ['229.75(a)', L75, US, 'locomotiveRoad', 'flatSpot', 'max', 2.5, true],
  ['229.75(a) adjoining', L75, US, 'locomotiveRoad', 'flatSpotAdjoining', 'max', 2, true],
  ['229.75(b)', L75, US, 'locomotiveRoad', 'flangeChipLength', 'max', 1.5, false],
  ['229.75(c)', L75, US, 'locomotiveRoad', 'brokenRimTread', 'min', 3.75, false],
  ['229.75(d)', L75, US, 'locomotiveRoad', 'shelledSpot', 'max', 2.5, true],
  ['229.75(f)', L75, US, 'locomotiveRoad', 'flangeThickness', 'min', 0.875, true],
  ['229.75(g) road', L75, US, 'locomotiveRoad', 'treadHollow', 'max', 0.3125, true],
  ['229.75(g) switching', L75, US, 'locomotiveYard', 'treadHollow', 'max', 0.375, true],
  ['229.75(h)', MEMORY, US, 'locomotiveRoad', 'flangeHeight', 'max', 1.5, true],
  ['229.75(j) road', L75, US, 'locomotiveRoad', 'rimThickness', 'min', 1, false],
  ['229.75(j) yard', L75, US, 'locomotiveYard', 'rimThickness', 'min', 0.75, false],
  ['230.112(a)', S112, US, 'steam', 'diameterDifference', 'max', 0.09375, false],
  ['230.112(b) least', S112, US, 'steam', 'backToBack', 'min', 53, false],
  ['230.112(b) most', S112, US, 'steam', 'backToBack', 'max', 53.375, false],
  ['230.112(c)', S112, US, 'steam', 'backToBackVariation', 'max', 0.25, false],
  ['230.113(b)', S113, US, 'steam', 'flatSpot', 'max', 2.5, true],
  ['230.113(c)', S113, US, 'steam', 'flangeChipLength', 'max', 1.5, false],
  ['230.113(d)', S113, US, 'steam', 'brokenRimTread', 'min', 3.75, false],
  ['230.113(e)', S113, US, 'steam', 'shelledSpotAdjoining', 'max', 2, true],
  ['230.113(g)', S113, US, 'steam', 'flangeThickness', 'min', 0.9375, true],
  ['230.113(h)', S113, US, 'steam', 'treadHollow', 'max', 0.3125, true],
  ['230.113(i) least', S113, US, 'steam', 'flangeHeight', 'min', 1, false],
  ['230.113(i) most', S113, US, 'steam', 'flangeHeight', 'max', 1.5, false],
  ['230.113(j)', S113, US, 'steam', 'rimThickness', 'min', 1, false],
  ['Canada 9.1(vi)', CANADA, CA, 'freightCar', 'flangeThickness', 'min', 0.875, true],
  ['Canada 9.1(vii)', CANADA, CA, 'freightCar', 'flangeHeight', 'max', 1.5, false],
  ['Canada 9.1(viii)', CANADA, CA, 'freightCar', 'rimThickness', 'min', 0.6875, true],
  ['Canada 9.1(iv)', CANADA, CA, 'freightCar', 'flatSpot', 'max', 2.5, false],
];

describe('wheel and side-bearing limits against the printed rules', () => {
  for (const [section, readAt, set, kind, quantity, sense, inches, condemnedAt] of ROWS) {
    it(`${section}: ${quantity}, ${kind}, ${sense} ${inches} in (${readAt})`, () => {
      const found = limitsFor(set, kind, quantity, { onCurve: false }).filter((l) => l.limit.sense === sense);
      expect(found).toHaveLength(1);
      const limit = found[0]!;
      expect(limit.value / MM_PER_INCH).toBeCloseTo(inches, 9);
      expect(limit.limit.source.status).toBe(readAt === MEMORY ? 'from memory' : 'published');

      const at = (offsetMm: number) =>
        checkLimit({ value: inches * MM_PER_INCH + offsetMm, u: 0, limit }).exceeded;
      const beyond = sense === 'max' ? 0.01 : -0.01;
      expect(at(0)).toBe(condemnedAt);
      expect(at(beyond)).toBe(true);
      expect(at(-beyond)).toBe(false);
    });
  }

  it('part 215 limits neither hollow nor back-to-back of freight cars', () => {
    expect(limitsFor(US, 'freightCar', 'treadHollow', { onCurve: false })).toEqual([]);
    expect(limitsFor(US, 'freightCar', 'backToBack', { onCurve: false })).toEqual([]);
  });
});
