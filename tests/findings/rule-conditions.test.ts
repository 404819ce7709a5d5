import { describe, expect, it } from 'vitest';
import { findings } from '~/lib/findings';
import { buildContext } from '~/lib/findings/context';
import { otherClasses, stationClasses } from '~/lib/findings/track/class-met';
import { exceptionWords } from '~/lib/findings/track/exception-words';
import { found as byId } from './by-id';
import { buildRecord, stationSheet, type ReadingSpec, type RecordSpec } from './record-builder';

const OPTIONS = { seed: 1 };
const UNDISTURBED = { disturbance: 'undisturbed' } as const;

const turnout = (trackClass: string, readings: readonly ReadingSpec[], fields = UNDISTURBED as object) =>
  buildRecord({
    fields: { trackClass, alignment: 'tangent' },
    turnout: [{ id: 'x1', fields: { name: 'East switch', movement: 'facing', ...fields }, readings }],
  });

const classes = (record: ReturnType<typeof buildRecord>) => {
  const context = buildContext(record, OPTIONS);
  const all = findings(record, OPTIONS);
  return { stations: stationClasses(context, all), others: otherClasses(context, all) };
};

describe('requirements without a figure', () => {
  it('fail by the answers the rule set lists, pass by others', () => {
    const at = byId(
      turnout('3', [
        { quantity: 'heelState', state: 'loose' },
        { quantity: 'pointFits', state: 'fits' },
        { quantity: 'turnoutAnchors', state: 'none' },
        { quantity: 'stockRailSeated', state: 'couldNotTell' },
      ]),
      OPTIONS,
    );
    const heel = at.get('condition-heel-secure:x1');
    expect(heel).toMatchObject({ kind: 'passFail', pass: false, part: 'turnout' });
    expect(heel.kind === 'passFail' && heel.check).toContain('49 CFR 213.135(d)');
    expect(heel.kind === 'passFail' && heel.check).toContain('found: bolts loose or missing');
    expect(at.get('condition-point-fits:x1')).toMatchObject({ kind: 'passFail', pass: true });
    expect(at.get('condition-turnout-anchors:x1')).toMatchObject({ kind: 'passFail', pass: false });
    expect(at.get('condition-stock-rail-seated:x1')).toMatchObject({ kind: 'notMeasured' });
  });

  it('hold for the classes they are written for', () => {
    const anchors = [{ quantity: 'turnoutAnchors', state: 'none' }];
    const ids = (trackClass: string) => findings(turnout(trackClass, anchors), OPTIONS).map(({ id }) => id);
    expect(ids('2')).not.toContain('condition-turnout-anchors:x1');
    expect(ids('3')).toContain('condition-turnout-anchors:x1');
  });

  it('are not judged from a turnout the derailment disturbed', () => {
    const record = turnout('3', [{ quantity: 'heelState', state: 'loose' }], { disturbance: 'disturbed' });
    expect(byId(record, OPTIONS).get('condition-heel-secure:x1')).toMatchObject({ kind: 'notMeasured' });
  });

  it('say nothing where nothing was answered', () => {
    expect(findings(turnout('3', []), OPTIONS).filter(({ id }) => id.startsWith('condition-'))).toEqual([]);
  });
});

describe('the class a turnout meets', () => {
  it('falls with a figure and with a condition, each with section and finding', () => {
    const { others } = classes(
      turnout('3', [
        { quantity: 'guardCheckGauge', entered: '54 1/4' },
        { quantity: 'heelState', state: 'loose' },
        { quantity: 'frogTreadWear', entered: '7/16' },
      ]),
    );
    expect(others).toHaveLength(1);
    expect(others[0]).toMatchObject({ of: 'turnout', name: 'East switch', highest: null });
    const words = others[0]!.exceptions.map(exceptionWords);
    expect(words.map(({ section }) => section)).toEqual([
      '49 CFR 213.143(a)',
      '49 CFR 213.137(c)',
      '49 CFR 213.135(d)',
    ]);
    expect(words[0]).toMatchObject({ unit: 'mm', answer: null });
    expect(words[0]!.excess).toBeCloseTo(25.4 / 8, 6);
    expect(words[1]!.limit).toContain('10 mph');
    expect(words[2]).toMatchObject({ excess: null, probability: null, answer: 'Bolts loose or missing' });
  });

  it('takes the heavy-point frog by its own limit only where it is so equipped', () => {
    const check = { quantity: 'guardCheckGauge', entered: '54 7/16' };
    const of = (more: readonly ReadingSpec[]) => classes(turnout('5', [check, ...more])).others[0]?.highest;
    expect(of([])).toBe('class 4');
    expect(of([{ quantity: 'heavyPointFrog', state: 'equipped' }])).toBe('class 5');
    expect(of([{ quantity: 'heavyPointFrog', state: 'notEquipped' }])).toBe('class 4');
  });

  it('holds no flange-bearing frog to a depth of flangeway', () => {
    const depth = { quantity: 'flangewayDepth', entered: '1' };
    const exceptions = (more: readonly ReadingSpec[]) =>
      findings(turnout('3', [depth, ...more]), OPTIONS).flatMap((each) =>
        each.kind === 'measured' && each.what === 'flangewayDepth' ? each.limits : [],
      );
    expect(exceptions([])).toMatchObject([{ exceeded: true }]);
    expect(exceptions([{ quantity: 'frogKind', state: 'flangeBearing' }])).toEqual([]);
  });
});

describe('ties and steps at joints', () => {
  const sheet = (trackClass: string, answer: string): RecordSpec => ({
    fields: { trackClass, alignment: 'tangent' },
    station: [
      {
        id: 's0',
        fields: { name: '0', joint: 'left', ...UNDISTURBED },
        readings: [
          { quantity: 'stationPosition', entered: '0' },
          { quantity: 'jointTies', slot: 'left', state: answer },
          { quantity: 'mismatchTread', slot: 'left', entered: '7/32' },
        ],
      },
    ],
  });

  it('lower the class the station meets', () => {
    const met = (trackClass: string, answer: string) =>
      classes(buildRecord(sheet(trackClass, answer))).stations[0];
    // 213.115: 1/4 in on classes 1 and 2, 3/16 in on class 3; 213.109(e): one tie within 24 in on 1 and 2.
    expect(met('3', 'within18')?.highest).toBe('class 2');
    expect(met('3', 'within18')?.exceptions.map(({ kind }) => kind)).toEqual(['limit']);
    expect(met('3', 'oneWithin24')?.exceptions.map(({ kind }) => kind)).toEqual(['limit', 'condition']);
    expect(met('2', 'oneWithin24')?.exceptions).toEqual([]);
    expect(met('2', 'none')?.highest).toBeNull();
  });
});

describe('excepted track', () => {
  const record = (readings: readonly ReadingSpec[]) =>
    buildRecord({
      fields: { trackClass: 'excepted', alignment: 'tangent' },
      readings,
      station: stationSheet([0], { gauge: () => '58 1/8' }),
    });

  it('is what its stations meet while its conditions hold', () => {
    const { stations, others } = classes(
      record([
        { quantity: 'exceptedNamed', state: 'yes' },
        { quantity: 'placardedCars', entered: '5' },
      ]),
    );
    expect(stations[0]?.highest).toBe('excepted track');
    expect(others).toMatchObject([{ of: 'segment', exceptions: [] }]);
  });

  it('is lost with a condition that does not hold: the gauge of class 1 is then not met', () => {
    const bridge = classes(record([{ quantity: 'exceptedBridge', state: 'placarded' }]));
    expect(bridge.stations[0]?.highest).toBeNull();
    expect(bridge.others[0]?.exceptions.map((each) => exceptionWords(each).section)).toEqual([
      '49 CFR 213.4(d)',
    ]);
    const cars = classes(record([{ quantity: 'placardedCars', entered: '6' }]));
    expect(cars.others[0]?.exceptions.map((each) => exceptionWords(each).section)).toEqual([
      '49 CFR 213.4(e)(3)',
    ]);
  });
});

describe('operations at more than 5 in of cant deficiency', () => {
  const record = (qualified: string | null, alignment = 'curveLeft') =>
    buildRecord({
      fields: { trackClass: '3', alignment },
      readings: qualified === null ? [] : [{ quantity: 'qualifiedUnbalance', entered: qualified }],
      station: stationSheet([-4, -3, -2, -1, 0, 1, 2, 3, 4], {
        midOrdinate62: (step) => (step === 0 ? '7 1/2' : '6'),
        'profile62.left': () => '0',
        'profile31.left': (step) => (step === 0 ? '1 1/2' : '0'),
        crosslevel: () => '3',
      }),
    });
  const sections = (from: ReturnType<typeof buildRecord>) =>
    byId(from, OPTIONS)
      .measured('alinement62Worst')
      .limits.map(({ citation }) => citation);

  it('brings the tables of (b) in, on curves and above 5 in only', () => {
    expect(sections(record(null))).toEqual(['49 CFR 213.55(a)']);
    expect(sections(record('5'))).toEqual(['49 CFR 213.55(a)']);
    expect(sections(record('6'))).toEqual(['49 CFR 213.55(a)', '49 CFR 213.55(b)']);
    expect(sections(record('6', 'tangent'))).toEqual(['49 CFR 213.55(a)']);
  });

  it('holds profile of a 31-ft chord against its own limit', () => {
    const limits = (of: ReturnType<typeof buildRecord>) =>
      byId(of, OPTIONS)
        .measured('profile31LeftWorst')
        .limits.map(({ citation, exceeded }) => [citation, exceeded]);
    expect(limits(record('6'))).toEqual([['49 CFR 213.63(b)', true]]);
    expect(limits(record(null))).toEqual([]);
  });

  it('raises the speed the curve allows', () => {
    const speed = (of: ReturnType<typeof buildRecord>) =>
      byId(of, OPTIONS).measured('maximumCurvingSpeed').value;
    // V² is in proportion to Ea + Eu: (3 + 6) / (3 + 3).
    expect(speed(record('6')) / speed(record(null))).toBeCloseTo(Math.sqrt(9 / 6), 2);
  });

  it('holds alinement and profile of the outer rail together, down and outward counting the same way', () => {
    const together = (profileAtPod: string, qualified: string | null = '6', alignment = 'curveLeft') =>
      byId(
        buildRecord({
          fields: { trackClass: '3', alignment },
          readings: qualified === null ? [] : [{ quantity: 'qualifiedUnbalance', entered: qualified }],
          station: stationSheet([-4, -3, -2, -1, 0, 1, 2, 3, 4], {
            midOrdinate62: (step) => (step === 0 ? '7 1/2' : '6'),
            'profile62.right': (step) => (step === 0 ? profileAtPod : '0'),
          }),
        }),
        OPTIONS,
      );
    // From uniform 1 1/3 in outward and 4/9 in down, of 1 1/4 in and 1 3/4 in.
    const both = together('1/2').measured('combined62Worst');
    expect(both.value).toBeCloseTo(0.75 * (4 / 3 / 1.25 + 4 / 9 / 1.75), 6);
    expect(both.limits).toMatchObject([{ citation: '49 CFR 213.65', limit: 1, exceeded: false }]);
    expect(both.readings).toHaveLength(18);
    expect(together('3/4').measured('combined62Worst').limits[0]?.exceeded).toBe(true);
    expect(together('-1/2').measured('combined62Worst').value).toBeCloseTo(
      0.75 * (4 / 3 / 1.25 - 4 / 9 / 1.75),
      6,
    );
    // Not up to 5 in, not on tangent; the inner rail says nothing of it.
    expect(together('1/2', '5').has('combined62Worst')).toBe(false);
    expect(together('1/2', '6', 'tangent').has('combined62Worst')).toBe(false);
    expect(together('1/2', '6', 'curveRight').get('combined62Worst')).toMatchObject({ kind: 'notMeasured' });
  });

  it('wants elevation throughout the curve and an even runoff, of classes 1 to 5', () => {
    const sectionsOf = (readings: readonly ReadingSpec[]) =>
      classes(buildRecord({ fields: { trackClass: '3', alignment: 'curveLeft' }, readings })).others.flatMap(
        ({ exceptions }) => exceptions.map((each) => exceptionWords(each).section),
      );
    expect(
      sectionsOf([
        { quantity: 'elevationThroughout', state: 'no' },
        { quantity: 'elevationRunoff', state: 'short' },
      ]),
    ).toEqual(['49 CFR 213.59(a)', '49 CFR 213.59(b)']);
    expect(
      sectionsOf([
        { quantity: 'elevationThroughout', state: 'conditions' },
        { quantity: 'elevationRunoff', state: 'onTangent' },
      ]),
    ).toEqual([]);
    expect(sectionsOf([{ quantity: 'elevationRunoff', state: 'couldNotTell' }])).toEqual([]);
  });

  it('asks for crosslevel less than 10 ft apart', () => {
    expect(byId(record('6'), OPTIONS).get('warpWithin10')).toMatchObject({ kind: 'notMeasured' });
    expect(findings(record(null), OPTIONS).some(({ id }) => id === 'warpWithin10')).toBe(false);
  });
});
