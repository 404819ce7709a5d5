import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseMeasure } from '~/lib/readings/parse';
import type { Measure } from '~/lib/readings/quantity';
import type { Unit, UnitSystem } from '~/lib/readings/unit';
import {
  crosslevel,
  curvature,
  flangeAngle,
  friction,
  gauge,
  MEASURES,
  pressure,
  speed,
  station,
  temperature,
  weight,
} from './measures';

const SEED = { seed: 20240229 };
const IN = 25.4;
const FT = 0.3048;
const LB = 0.45359237;
const CURVE = 1 / (5729.58 * FT);

type Reads = readonly [
  text: string,
  value: number,
  unit: Unit,
  resolution: number | null,
  system?: UnitSystem,
];

function reads(name: string, quantity: Measure, rows: readonly Reads[]): void {
  describe(name, () => {
    it.each(rows.map((row) => [row[0], row] as const))(
      '%s',
      (_, [text, value, unit, resolution, system = 'us']) => {
        const parsed = parseMeasure(text, quantity, system);
        if (!parsed.ok) throw new Error(parsed.message);
        expect(Math.abs(parsed.value.value - value)).toBeLessThanOrEqual(1e-11 * Math.abs(value));
        expect(parsed.value.unit).toBe(unit);
        if (resolution === null) expect(parsed.value.resolution).toBeNull();
        else expect(parsed.value.resolution).toBeCloseTo(resolution, 9);
      },
    );
  });
}

reads('gauge', gauge, [
  ['56 3/4', 56.75 * IN, 'in', IN / 8],
  ['56-3/4', 56.75 * IN, 'in', IN / 8],
  ['56 3/4"', 56.75 * IN, 'in', IN / 8],
  ['56 3/4 in', 56.75 * IN, 'in', IN / 8],
  ['56 3/4 in.', 56.75 * IN, 'in', IN / 8],
  ['56 12/16', 56.75 * IN, 'in', IN / 32],
  ['56¾', 56.75 * IN, 'in', IN / 8],
  ['56 ¾″', 56.75 * IN, 'in', IN / 8],
  ['56³⁄₄', 56.75 * IN, 'in', IN / 8],
  ["56 3/4''", 56.75 * IN, 'in', IN / 8],
  [' 56.75 ', 56.75 * IN, 'in', 0.005 * IN],
  ['56.50', 56.5 * IN, 'in', 0.005 * IN],
  ['56.', 56 * IN, 'in', null],
  ['56', 56 * IN, 'in', null],
  [`4' 8 1/2"`, 56.5 * IN, 'in', IN / 4],
  [`4'8-1/2`, 56.5 * IN, 'in', IN / 4],
  [`4'-8 1/2"`, 56.5 * IN, 'in', IN / 4],
  [`4' - 8 1/2"`, 56.5 * IN, 'in', IN / 4],
  ['4′ 8½″', 56.5 * IN, 'in', IN / 4],
  ['4’8½”', 56.5 * IN, 'in', IN / 4],
  ['4 ft 8 1/2 in', 56.5 * IN, 'in', IN / 4],
  ['4ft8.5in', 56.5 * IN, 'in', 0.05 * IN],
  [`4' 8"`, 56 * IN, 'in', null],
  ['4.75 ft', 57 * IN, 'ft', 0.005 * 304.8],
  ['1435', 1435, 'mm', 0.5],
  ['1435 mm', 1435, 'mm', 0.5],
  ['1435mm', 1435, 'mm', 0.5],
  ['1,435', 1435, 'mm', 0.5],
  ['1440', 1440, 'mm', null],
  ['1435.0', 1435, 'mm', 0.05],
  ['143.5cm', 1435, 'cm', 0.5],
  ['1.435 m', 1435, 'm', 0.5],
  ['1435', 1435, 'mm', 0.5, 'metric'],
  ['56 1/2', 56.5 * IN, 'in', IN / 4, 'metric'],
  ['56.5', 56.5 * IN, 'in', 0.05 * IN, 'metric'],
  [`4' 8 1/2"`, 56.5 * IN, 'in', IN / 4, 'metric'],
]);

reads('crosslevel', crosslevel, [
  ['1 3/16', 1.1875 * IN, 'in', IN / 32],
  ['1-3/16"', 1.1875 * IN, 'in', IN / 32],
  ['1 3/16 in', 1.1875 * IN, 'in', IN / 32],
  ['-1/4', -0.25 * IN, 'in', IN / 8],
  ['−1/4', -0.25 * IN, 'in', IN / 8],
  ['-½', -0.5 * IN, 'in', IN / 4],
  ['- ⅜', -0.375 * IN, 'in', IN / 16],
  ['-1 1/4', -1.25 * IN, 'in', IN / 8],
  ['+1/4', 0.25 * IN, 'in', IN / 8],
  ['.5', 0.5 * IN, 'in', 0.05 * IN],
  ['0', 0, 'in', null],
  ['-0', 0, 'in', null],
  ['0', 0, 'mm', null, 'metric'],
  ['-7', -7, 'mm', 0.5, 'metric'],
  ['1/128', IN / 128, 'in', IN / 256],
]);

reads('along the track', station, [
  [`15'6"`, 15.5 * FT, 'ft', null],
  [`-15' 6"`, -15.5 * FT, 'ft', null],
  [`−15′ 6″`, -15.5 * FT, 'ft', null],
  [`15' 6 1/2"`, (15 + 6.5 / 12) * FT, 'ft', 0.0254 / 4],
  ['15.5', 15.5 * FT, 'ft', 0.05 * FT],
  ['15 1/2 ft', 15.5 * FT, 'ft', FT / 4],
  [`62'`, 62 * FT, 'ft', null],
  ['-310', -310 * FT, 'ft', null],
  ['12 m', 12, 'm', 0.5],
  ['0.25 mi', 0.25 * 1609.344, 'mi', 0.005 * 1609.344],
  ['12.5', 12.5, 'm', 0.05, 'metric'],
  ['1.2 km', 1200, 'km', 50],
]);

reads('curvature', curvature, [
  ['6', 6 * CURVE, '°curve', 0.5 * CURVE],
  ['6.5°', 6.5 * CURVE, '°curve', 0.05 * CURVE],
  ["7°30'", 7.5 * CURVE, '°curve', null],
  ['7° 31′', (7 + 31 / 60) * CURVE, '°curve', (0.5 / 60) * CURVE],
  [`-7°30'15"`, -(7 + 30 / 60 + 15 / 3600) * CURVE, '°curve', (0.5 / 3600) * CURVE],
  ['7 1/2 degrees', 7.5 * CURVE, '°curve', CURVE / 4],
  ['291 m', 1 / 291, 'm radius', 0.5 / 291 ** 2],
  ['955 ft radius', 1 / (955 * FT), 'ft radius', (0.5 * FT) / (955 * FT) ** 2],
  ['291', 1 / 291, 'm radius', 0.5 / 291 ** 2, 'metric'],
  ['20', 20 * CURVE, '°curve', null, 'metric'],
  ['-291', -1 / 291, 'm radius', 0.5 / 291 ** 2, 'metric'],
  ['0.004 1/m', 0.004, '1/m', 0.0005],
  ['tangent', 0, '°curve', null],
]);

reads('angle', flangeAngle, [
  ['75', (75 * Math.PI) / 180, '°', (0.5 * Math.PI) / 180],
  ["75° 30'", (75.5 * Math.PI) / 180, '°', null],
  ['75.5 deg', (75.5 * Math.PI) / 180, '°', (0.05 * Math.PI) / 180],
  ['1.31 rad', 1.31, 'rad', 0.005],
  ['1305 mrad', 1.305, 'mrad', 0.0005],
]);

reads('weight', weight, [
  ['62,000 lb', 62_000 * LB, 'lb', null],
  ['62,000', 62_000 * LB, 'lb', null],
  ['262,450#', 262_450 * LB, 'lb', null],
  ['263,125 lbs', 263_125 * LB, 'lb', 0.5 * LB],
  ['1,062,000.5', 1_062_000.5 * LB, 'lb', 0.05 * LB],
  ['31 tons', 62_000 * LB, 'ton', 0.5 * 2000 * LB],
  ['31 short tons', 62_000 * LB, 'ton', 0.5 * 2000 * LB, 'metric'],
  ['28.1', 28_100, 't', 50, 'metric'],
  ['28,105 kg', 28_105, 'kg', 0.5, 'metric'],
]);

reads('speed', speed, [
  ['40', 40 * 0.44704, 'mph', null],
  ['41 mph', 41 * 0.44704, 'mph', 0.5 * 0.44704],
  ['65 km/h', 65 / 3.6, 'km/h', 0.5 / 3.6],
  ['200', 200 / 3.6, 'km/h', null],
]);

reads('temperature', temperature, [
  ['95', 35, '°F', 0.5 / 1.8],
  ['95 °F', 35, '°F', 0.5 / 1.8],
  ['95F', 35, '°F', 0.5 / 1.8],
  ['95°', 35, '°F', 0.5 / 1.8],
  ['-40 °C', -40, '°C', null],
  ['35℃', 35, '°C', 0.5],
  ['131', 55, '°F', 0.5 / 1.8, 'metric'],
]);

reads('pressure and friction', pressure, [
  ['88 psi', 88 * 6.894757293168361, 'psi', 0.5 * 6.894757293168361],
  ['5.2 bar', 520, 'bar', 5],
  ['88 psig', 88 * 6.894757293168361, 'psi', 0.5 * 6.894757293168361],
]);
reads('friction', friction, [
  ['0.35', 0.35, '1', 0.005],
  ['35 %', 0.35, '%', 0.005],
  ['35%', 0.35, '%', 0.005],
]);

describe('refused, saying what to enter instead', () => {
  const refusals: readonly [string, Measure, UnitSystem, RegExp][] = [
    ['', gauge, 'us', /Nothing is entered.*Example: 57 1\/4 in or 1454\.2 mm/],
    ['   ', gauge, 'us', /Nothing is entered/],
    ['56 3/0', gauge, 'us', /zero below the line/],
    ['1/0', crosslevel, 'us', /zero below the line/],
    ['0/0', crosslevel, 'us', /zero below the line/],
    ['1 3 16', crosslevel, 'us', /1 3\/16/],
    ['1-3-16', crosslevel, 'us', /1 3\/16/],
    ['3/5', crosslevel, 'us', /no ruler is divided in 5/],
    ['1 ⅓', crosslevel, 'us', /no ruler is divided in 3/],
    ['1 3/256', crosslevel, 'us', /no ruler/],
    ['1 5/4', crosslevel, 'us', /enter 2 1\/4/],
    ['8/8', crosslevel, 'us', /enter 1\./],
    ['0/8', crosslevel, 'us', /enter 0/],
    ['3,5', crosslevel, 'us', /3\.5/],
    ['1.435,0', gauge, 'metric', /point for decimals/],
    ['1,43', gauge, 'metric', /1\.43/],
    ['28,105', weight, 'metric', /28\.105 or 28105/],
    ['1,435 m', gauge, 'metric', /1\.435 or 1435/],
    ['0,435', gauge, 'metric', /0\.435/],
    ['56 57', gauge, 'us', /two numbers/],
    ['56 - 57', gauge, 'us', /two numbers/],
    ['56-57', gauge, 'us', /two numbers/],
    ['56 -1/2', gauge, 'us', /Enter it as 56 1\/2/],
    ["4' -8 1/2", gauge, 'us', /Enter it as 4' 8 1\/2/],
    ['56 in 1435 mm', gauge, 'us', /mixes units/],
    ['1435 mm (56 1/2 in)', gauge, 'us', /mixes units|not a/],
    ['4 ft 8 cm', gauge, 'us', /mixes units/],
    [`56" 3/4`, gauge, 'us', /mixes units/],
    ["4' 13", gauge, 'us', /less than 12/],
    ["4.5' 6", gauge, 'us', /whole feet/],
    ["62'000", station, 'us', /less than 12/],
    ['15 1/2', station, 'us', /15 1\/2 in or 15 1\/2 ft or 15 1\/2 m/],
    ['15 1/2', station, 'metric', /15 1\/2 in or 15 1\/2 m or 15 1\/2 ft/],
    ['56.5 1/2', gauge, 'us', /decimal and a fraction/],
    ['5.5/8', crosslevel, 'us', /Enter/],
    ['about 56', gauge, 'us', /doubt in the note/],
    ['56?', gauge, 'us', /doubt in the note/],
    ['56 ± 1/16', gauge, 'us', /reading alone/],
    ['wide', gauge, 'us', /not a number/],
    ['56 furlongs', gauge, 'us', /“furlongs” is not a unit for this. Use in, ft, mm, cm, m/],
    ['56 km', gauge, 'us', /not a unit/],
    ['5 mm', station, 'metric', /not a unit/],
    ['1e3', gauge, 'us', /./],
    ['--5', crosslevel, 'us', /./],
    ['5-', crosslevel, 'us', /./],
    ['99999999999', gauge, 'us', /too many digits/],
    ['7°30', curvature, 'us', /mark the minutes/],
    ["7°75'", curvature, 'us', /less than 60/],
    ['0 m', curvature, 'metric', /tangent/],
    ['31 tons', weight, 'metric', /metric or short tons/],
    [
      '-56 1/2',
      gauge,
      'us',
      /must be between 50 in and 66 in; −56.5 in is not\. Did you put in a minus sign/,
    ],
    ['-1435', gauge, 'metric', /minus sign/],
    ['143.5', gauge, 'us', /leave out the unit cm/],
    ['14350', gauge, 'metric', /leave out the decimal point \(1435\)/],
    ['4', gauge, 'us', /must be between/],
    ['56 1/2 mm', gauge, 'us', /Did you mean 56.5 in/],
    ['35', friction, 'us', /leave out the unit %/],
    ['20 m', curvature, 'metric', /must be 30 m radius or more; 20 m radius is not/],
  ];
  it.each(refusals)('%s', (text, quantity, system, message) => {
    const parsed = parseMeasure(text, quantity, system);
    if (parsed.ok) throw new Error(`read as ${parsed.value.value} ${parsed.value.unit}`);
    expect(parsed.message).toMatch(message);
  });
});

describe('unusual but possible', () => {
  it('is kept, with a question', () => {
    const parsed = parseMeasure('60', gauge, 'us');
    expect(parsed.ok && parsed.value.value).toBeCloseTo(1524, 9);
    expect(parsed.ok && parsed.value.question).toMatch(
      /usually between 56 in and 58\.5 in. Is 60 in right\?/,
    );
  });
  it('is not asked about when usual', () => {
    const parsed = parseMeasure('56 1/2', gauge, 'us');
    expect(parsed.ok && parsed.value.question).toBeNull();
  });
  it('takes the ends of the range as possible', () => {
    expect(parseMeasure('50', gauge, 'us').ok).toBe(true);
    expect(parseMeasure('66', gauge, 'us').ok).toBe(true);
    expect(parseMeasure('66 1/128', gauge, 'us').ok).toBe(false);
  });
});

describe('whatever is typed', () => {
  const anyMeasure = fc.constantFrom(...MEASURES);
  const anySystem = fc.constantFrom<UnitSystem>('us', 'metric');
  const pieces = fc.constantFrom(
    ...[
      '1',
      '0',
      '3',
      '56',
      '/',
      ' ',
      '-',
      '−',
      "'",
      '"',
      '.',
      ',',
      '½',
      '°',
      'in',
      'ft',
      'mm',
      'm',
      '%',
      '′',
      '²',
    ],
  );
  const typed = fc.oneof(
    fc.string({ unit: 'binary' }),
    fc.string({ unit: 'grapheme' }),
    fc.array(pieces, { maxLength: 9 }).map((parts) => parts.join('')),
  );

  it('never throws, and gives a possible value or a message', () => {
    fc.assert(
      fc.property(typed, anyMeasure, anySystem, (text, quantity, system) => {
        const parsed = parseMeasure(text, quantity, system);
        if (!parsed.ok) return parsed.message.trim().length > 10;
        const [low, high] = quantity.possible;
        const slack = 1e-6 * (Math.abs(low) + Math.abs(high));
        return parsed.value.value >= low - slack && parsed.value.value <= high + slack;
      }),
      { ...SEED, numRuns: 3000 },
    );
  });

  it('refuses every zero denominator', () => {
    fc.assert(
      fc.property(
        fc.nat(99),
        fc.nat(99),
        fc.constantFrom('0', '00', '000'),
        fc.constantFrom('', '-', '−'),
        fc.constantFrom('', ' in', '"', ' ft'),
        fc.constantFrom(gauge, crosslevel, station),
        (whole, top, zero, sign, unit, quantity) => {
          const parsed = parseMeasure(`${sign}${whole} ${top}/${zero}${unit}`, quantity, 'us');
          return !parsed.ok && parsed.message.includes('zero');
        },
      ),
      SEED,
    );
  });

  it('reads a mixed number the same however it is joined, and as the sum of its parts', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 51, max: 65 }),
        fc
          .constantFrom(2, 4, 8, 16, 32, 64, 128)
          .chain((bottom) => fc.integer({ min: 1, max: bottom - 1 }).map((top) => [top, bottom] as const)),
        (whole, [top, bottom]) => {
          const expected = (whole + top / bottom) * IN;
          const feet = Math.floor(whole / 12);
          const texts = [
            `${whole} ${top}/${bottom}`,
            `${whole}-${top}/${bottom}"`,
            `${feet}' ${whole - 12 * feet} ${top}/${bottom}"`,
            `${feet} ft ${whole - 12 * feet}-${top}/${bottom}`,
          ];
          for (const text of texts) {
            const parsed = parseMeasure(text, gauge, 'us');
            if (!parsed.ok) throw new Error(parsed.message);
            expect(parsed.value.value).toBeCloseTo(expected, 9);
            expect(parsed.value.resolution).toBeCloseTo(IN / (2 * bottom), 9);
          }
        },
      ),
      SEED,
    );
  });

  it('reads a minus as the mirror of a plus where the range is symmetrical', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1199 }), fc.constantFrom('-', '−', '–'), (hundredths, minus) => {
        const text = (hundredths / 100).toFixed(2);
        const plus = parseMeasure(text, crosslevel, 'us');
        const mirrored = parseMeasure(minus + text, crosslevel, 'us');
        return plus.ok && mirrored.ok && mirrored.value.value === -plus.value.value + 0;
      }),
      SEED,
    );
  });
});
