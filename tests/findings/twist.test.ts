import { describe, expect, it } from 'vitest';
import { findings } from '~/lib/findings';
import { buildContext } from '~/lib/findings/context';
import { stationClasses } from '~/lib/findings/track/class-met';
import { found } from './by-id';
import { buildRecord, type ReadingSpec } from './record-builder';

/** Crosslevel in mm at places in m, in a metric case under EN 13848-5. */
const record = (
  sheet: readonly (readonly [number, number])[],
  authorised: string | null,
  mid62Mm: number | null = null,
) => {
  const readings: readonly ReadingSpec[] =
    authorised === null ? [] : [{ quantity: 'authorisedSpeed', entered: authorised }];
  return buildRecord({
    units: 'metric',
    fields: { ruleSet: 'en13848-5', alignment: mid62Mm === null ? 'tangent' : 'curveLeft' },
    readings,
    station: sheet.map(([at, level]) => ({
      id: `s${at}`,
      fields: { name: String(at), disturbance: 'undisturbed' },
      readings: [
        { quantity: 'stationPosition', entered: String(at) },
        { quantity: 'crosslevel', entered: String(level) },
        ...(mid62Mm === null ? [] : [{ quantity: 'midOrdinate62', entered: String(mid62Mm) }]),
      ],
    })),
  });
};

const met = (of: ReturnType<typeof buildRecord>) =>
  stationClasses(buildContext(of, { seed: 1 }), findings(of, { seed: 1 }));

describe('twist under EN 13848-5', () => {
  it('is held against the limit for the base it was read over', () => {
    // 35 mm over 5 m, 21 mm over 3 m, 50 mm over 10 m: 20/l + 3 mm per metre, at most 7.
    const of = record(
      [
        [-10, 0],
        [-5, 36],
        [-2, 16],
        [0, 16],
      ],
      '100',
    );
    const at = found(of);
    expect(at.measured('twist:s-5')).toMatchObject({ value: 36, limits: [{ limit: 35, exceeded: true }] });
    expect(at.measured('twist:s-2')).toMatchObject({ value: -20, limits: [{ limit: 21, exceeded: false }] });
    expect(at.measured('twist:s0').limits[0]?.limit).toBe(35);
    expect(at.measured('twist3m').value).toBe(36);
  });

  // c²/8R of a 62-ft chord on a radius of 200 m: 223 mm; cant above (200 − 100)/2 = 50 mm.
  const SHARP = 223;

  it.each([
    ['more than the cant that goes with its radius', 100, SHARP, [21, 18], 'not even the slowest'],
    ['less cant than that', 20, SHARP, [21], 'over 160 to 200 km/h'],
    ['the outer rail as much lower', -119, SHARP, [21], 'over 160 to 200 km/h'],
    ['the same cant on a wide curve', 100, 50, [21], 'over 160 to 200 km/h'],
  ])('has a limit of its own on a curve with much cant: %s', (_, cant, mid, limits, band) => {
    const of = record(
      [
        [-3, cant],
        [0, cant + 19],
      ],
      '100',
      mid,
    );
    const { value, limits: held } = found(of).measured('twist:s0');
    expect(value).toBe(19);
    expect(held.map(({ limit }) => limit)).toEqual(limits);
    expect(held.map(({ exceeded }) => exceeded)).toEqual(limits.map((limit) => limit < 19));
    expect(met(of).at(-1)?.highest ?? 'not even the slowest').toBe(band);
  });

  it('takes that limit over the base that was read, and none while the radius is not known', () => {
    const sheet = [
      [-5, 100],
      [0, 128],
    ] as const;
    // 20/5 + 1.5 = 5.5 mm per metre, and 7 without much cant.
    expect(
      found(record(sheet, '100', SHARP))
        .measured('twist:s0')
        .limits.map(({ limit }) => limit),
    ).toEqual([35, 27.5]);
    const unknown = record(sheet, '100', SHARP);
    const without = {
      ...unknown,
      readings: unknown.readings.filter(({ quantity }) => quantity !== 'midOrdinate62'),
    };
    expect(
      found(without)
        .measured('twist:s0')
        .limits.map(({ limit }) => limit),
    ).toEqual([35]);
  });

  it('decides the band each station meets, known speed or not', () => {
    const sheet = [
      [-3, 0],
      [0, 18],
    ] as const;
    // 21 mm up to 200 km/h and 15 above, over 3 m.
    expect(met(record(sheet, '100')).map(({ highest }) => highest)).toEqual(['over 160 to 200 km/h']);
    expect(met(record(sheet, null)).map(({ highest }) => highest)).toEqual(['over 160 to 200 km/h']);
    expect(found(record(sheet, null)).measured('twist3m').limits).toEqual([]);
  });

  it('says so when no two stations stand a base of the limit apart', () => {
    const far = record(
      [
        [-30, 0],
        [0, 20],
      ],
      '100',
    );
    expect(found(far).get('twist3m').kind).toBe('notMeasured');
  });
});
