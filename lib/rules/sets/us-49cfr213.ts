import type { Source } from '../../findings/finding';
import type { RuleLimit, RuleSet } from '../rule-set';
import { conditions } from './us-49cfr213-conditions';
import { counts, feet, lengths, mph, printedMm } from './printed';

/** The section's text was read in a public reprint of the Code and compared with the numbers here. */
const read = (text: string): Source => ({ text, status: 'published' });

const GAUGE = read('49 CFR 213.53, read as reprinted 18 November 2020');
const ALINEMENT = read('49 CFR 213.55(a), 78 FR 16100 (13 March 2013), read as reprinted 31 March 2024');
const ALINEMENT_HIGH = read('49 CFR 213.55(b), 78 FR 16100 (13 March 2013), read as reprinted 31 March 2024');
const SURFACE_HIGH = read('49 CFR 213.63(b), 78 FR 16101 (13 March 2013), read as reprinted');
const SURFACE = read('49 CFR 213.63(a), 63 FR 34029 (1998) and 78 FR 16101 (2013), read as reprinted');
const COMBINED: Source = {
  text: '49 CFR 213.65, read as reprinted; the formula, an image there, with its factor ¾ from memory',
  status: 'from memory',
};
const CURVES = read('49 CFR 213.57, read in the 1 October 2013 edition of the Code');
const TIES = read('49 CFR 213.109(b)(4), read as reprinted with the amendments of 2011');
const FROGS = read('49 CFR 213.137, as amended by 85 FR 63388 (7 October 2020), read as reprinted');
const GUARDS = read('49 CFR 213.143, as amended by 85 FR 63388 (7 October 2020), read as reprinted');

const CHORD_62 = { kind: 'chord', lengthM: feet(62), includesExact: true } as const;
const CHORD_31 = { kind: 'chord', lengthM: feet(31), includesExact: true } as const;
/** The tables of 213.55(b) and 213.63(b): operations at a qualified cant deficiency of more than 5 in. */
const ABOVE_5_IN = {
  unbalanceOverMm: printedMm('5"'),
  applies: 'curve',
  sense: 'max',
  strict: true,
} as const satisfies Partial<RuleLimit>;
const WITHIN_62 = { kind: 'within', lengthM: feet(62), includesExact: false } as const;

/** Of geometry and structure, excepted track is held to its gauge alone. */
const classes1to5 = (c1: string, c2: string, c3: string, c4: string, c5: string) =>
  lengths({ excepted: null, '1': c1, '2': c2, '3': c3, '4': c4, '5': c5 });

const gaugeLimits = (quantity: 'gauge' | 'gaugeUnderLoad', citation: string, note?: string) =>
  [
    {
      id: `${quantity}-min`,
      quantity,
      sense: 'min',
      strict: true,
      applies: 'both',
      ...classes1to5(`4'8"`, `4'8"`, `4'8"`, `4'8"`, `4'8"`),
      citation,
      source: GAUGE,
      note,
    },
    {
      id: `${quantity}-max`,
      quantity,
      sense: 'max',
      strict: true,
      applies: 'both',
      ...lengths({
        excepted: `4'10 1/4"`,
        '1': `4'10"`,
        '2': `4'9 3/4"`,
        '3': `4'9 3/4"`,
        '4': `4'9 1/2"`,
        '5': `4'9 1/2"`,
      }),
      citation,
      source: GAUGE,
      note,
    },
  ] as const satisfies readonly RuleLimit[];

const geometry: readonly RuleLimit[] = [
  ...gaugeLimits('gauge', '49 CFR 213.53(b)', 'Excepted track: also 49 CFR 213.4(e)(4).'),
  ...gaugeLimits(
    'gaugeUnderLoad',
    '49 CFR 213.53(b) with 213.13',
    'Movement seen under load is added to the static reading (213.13). The loaded-gauge figures of 213.110 ' +
      'belong to a gauge restraint measuring vehicle and its loads, and are not compared with hand readings.',
  ),
  {
    id: 'alinement62-tangent',
    quantity: 'alinement62',
    sense: 'max',
    strict: true,
    applies: 'tangent',
    ...classes1to5('5"', '3"', '1 3/4"', '1 1/2"', '3/4"'),
    base: CHORD_62,
    citation: '49 CFR 213.55(a)',
    source: ALINEMENT,
    note: 'Either rail may be the line rail, but the same rail for the full length of the tangent.',
  },
  {
    id: 'alinement62-curve',
    quantity: 'alinement62',
    sense: 'max',
    strict: true,
    applies: 'curve',
    ...classes1to5('5"', '3"', '1 3/4"', '1 1/2"', '5/8"'),
    base: CHORD_62,
    citation: '49 CFR 213.55(a)',
    source: ALINEMENT,
    note: 'Chord ends on the gauge side of the outer rail, 5/8 in below the top.',
  },
  {
    id: 'alinement31-curve',
    quantity: 'alinement31',
    sense: 'max',
    strict: true,
    applies: 'curve',
    ...lengths({ excepted: null, '1': null, '2': null, '3': '1 1/4"', '4': '1"', '5': '1/2"' }),
    base: CHORD_31,
    citation: '49 CFR 213.55(a)',
    source: ALINEMENT,
    note: 'Outer rail only. Not applicable to classes 1 and 2.',
  },
  {
    id: 'alinement62-high-unbalance',
    quantity: 'alinement62',
    ...ABOVE_5_IN,
    ...classes1to5('1 1/4"', '1 1/4"', '1 1/4"', '7/8"', '5/8"'),
    base: CHORD_62,
    citation: '49 CFR 213.55(b)',
    source: ALINEMENT_HIGH,
    note: 'Outside rail of the curve; instead of (a), which is nowhere tighter.',
  },
  {
    id: 'alinement31-high-unbalance',
    quantity: 'alinement31',
    ...ABOVE_5_IN,
    ...lengths({ excepted: null, '1': null, '2': null, '3': '3/4"', '4': '3/4"', '5': '1/2"' }),
    base: CHORD_31,
    citation: '49 CFR 213.55(b)',
    source: ALINEMENT_HIGH,
    note: 'Outside rail of the curve; not applicable to classes 1 and 2.',
  },
  {
    id: 'runoff31',
    quantity: 'runoff31',
    sense: 'max',
    strict: true,
    applies: 'both',
    ...classes1to5('3 1/2"', '3"', '2"', '1 1/2"', '1"'),
    base: { kind: 'within', lengthM: feet(31), includesExact: true },
    citation: '49 CFR 213.63(a)',
    source: SURFACE,
    note: 'Its repeal was proposed on 1 July 2025 (Federal Register document 2025-12191): check whether it was in force on the day.',
  },
  {
    id: 'profile62',
    quantity: 'profile62',
    sense: 'max',
    strict: true,
    applies: 'both',
    ...classes1to5('3"', '2 3/4"', '2 1/4"', '2"', '1 1/4"'),
    base: CHORD_62,
    citation: '49 CFR 213.63(a)',
    source: SURFACE,
    note: 'On either rail.',
  },
  {
    id: 'profile62-high-unbalance',
    quantity: 'profile62',
    ...ABOVE_5_IN,
    ...classes1to5('2 1/4"', '2 1/4"', '1 3/4"', '1 1/4"', '1"'),
    base: CHORD_62,
    citation: '49 CFR 213.63(b)',
    source: SURFACE_HIGH,
    note: 'On either rail of the curve; instead of (a), which is nowhere tighter.',
  },
  {
    id: 'profile31-high-unbalance',
    quantity: 'profile31',
    ...ABOVE_5_IN,
    ...lengths({ excepted: null, '1': null, '2': null, '3': '1"', '4': '1"', '5': '1"' }),
    base: CHORD_31,
    citation: '49 CFR 213.63(b)',
    source: SURFACE_HIGH,
    note: 'On either rail of the curve; not applicable to classes 1 and 2.',
  },
  {
    id: 'crosslevel-difference10-high-unbalance',
    quantity: 'crosslevelDifference10',
    ...ABOVE_5_IN,
    ...classes1to5('2"', '2"', '1 3/4"', '1 3/4"', '1 1/2"'),
    base: { kind: 'within', lengthM: feet(10), includesExact: false },
    citation: '49 CFR 213.63(b)',
    source: SURFACE_HIGH,
    note: 'Short warp: any two points less than 10 ft apart.',
  },
  {
    id: 'crosslevel-tangent',
    quantity: 'crosslevelTangent',
    sense: 'max',
    strict: true,
    applies: 'tangent',
    ...classes1to5('3"', '2"', '1 3/4"', '1 1/4"', '1"'),
    citation: '49 CFR 213.63(a)',
    source: SURFACE,
  },
  {
    id: 'crosslevel-reverse',
    quantity: 'crosslevelReverseOnCurve',
    sense: 'max',
    strict: true,
    applies: 'curve',
    ...classes1to5('3"', '2"', '1 3/4"', '1 1/4"', '1"'),
    citation: '49 CFR 213.63(a)',
    source: SURFACE,
  },
  {
    id: 'crosslevel-difference62',
    quantity: 'crosslevelDifference62',
    sense: 'max',
    strict: true,
    applies: 'both',
    ...classes1to5('3"', '2 1/4"', '2"', '1 3/4"', '1 1/2"'),
    base: WITHIN_62,
    citation: '49 CFR 213.63(a)',
    source: SURFACE,
    note: 'Any two points less than 62 ft apart.',
  },
  {
    id: 'crosslevel-difference-high62',
    quantity: 'crosslevelDifferenceHigh62',
    sense: 'max',
    strict: true,
    applies: 'curve',
    ...classes1to5('1 1/2"', '1 1/2"', '1 1/2"', '1 1/2"', '1 1/2"'),
    base: { kind: 'within', lengthM: feet(62), includesExact: true },
    onlyWhere:
      'the elevation at a point of the curve is 6 in or more, against a point with greater elevation',
    citation: '49 CFR 213.63(a), footnote 1',
    source: SURFACE,
    note: 'The footnote says "within 62 feet", so a pair exactly 62 ft apart is compared.',
  },
  {
    id: 'spiral-variation31',
    quantity: 'spiralVariation31',
    sense: 'max',
    strict: true,
    applies: 'curve',
    ...classes1to5('2"', '1 3/4"', '1 1/4"', '1"', '3/4"'),
    base: { kind: 'within', lengthM: feet(31), includesExact: true },
    onlyWhere: 'an engineering decision before 22 June 1998 fixed the spiral for want of room',
    citation: '49 CFR 213.63(a), footnote *',
    source: SURFACE,
  },
  {
    id: 'staggered-joints',
    quantity: 'staggeredJoints',
    sense: 'max',
    strict: true,
    applies: 'both',
    ...lengths({ excepted: null, '1': null, '2': '1 1/4"', '3': '1 1/4"', '4': '1 1/4"', '5': '1 1/4"' }),
    onlyWhere: 'jointed track has joints staggered by 10 ft or more',
    citation: '49 CFR 213.63(a), footnote 2',
    source: SURFACE,
    note: 'Condemned only when all six consecutive pairs made by seven low joints exceed it: compare the smallest of the six.',
  },
  {
    id: 'elevation',
    quantity: 'elevationMax',
    sense: 'max',
    strict: true,
    applies: 'curve',
    ...classes1to5('8"', '8"', '7"', '7"', '7"'),
    citation: '49 CFR 213.57(a)',
    source: CURVES,
  },
];

const structure: readonly RuleLimit[] = [
  {
    id: 'ties-tangent',
    quantity: 'tiesPer39ft',
    sense: 'min',
    strict: true,
    applies: 'both',
    curveUpToDegrees: 2,
    ...counts({ excepted: null, '1': 5, '2': 8, '3': 8, '4': 12, '5': 12 }),
    citation: '49 CFR 213.109(b)(4)',
    source: TIES,
    note: 'Tangent track and curves of 2° or less. Sound ties as 213.109(c) or (d) defines them, effectively distributed; ties at joints are a condition of their own (213.109(e)).',
  },
  {
    id: 'ties-curve-turnout',
    quantity: 'tiesPer39ft',
    sense: 'min',
    strict: true,
    applies: 'curve',
    curveOverDegrees: 2,
    ...counts({ excepted: null, '1': 6, '2': 9, '3': 10, '4': 14, '5': 14 }),
    citation: '49 CFR 213.109(b)(4)',
    source: TIES,
    note: 'Turnouts and curves of more than 2°.',
  },
  {
    id: 'rail-end-mismatch-tread',
    quantity: 'railEndMismatchTread',
    sense: 'max',
    strict: true,
    applies: 'both',
    ...classes1to5('1/4"', '1/4"', '3/16"', '1/8"', '1/8"'),
    citation: '49 CFR 213.115',
    source: read('49 CFR 213.115, read as reprinted'),
  },
  {
    id: 'rail-end-mismatch-gauge',
    quantity: 'railEndMismatchGauge',
    sense: 'max',
    strict: true,
    applies: 'both',
    ...classes1to5('1/4"', '3/16"', '3/16"', '1/8"', '1/8"'),
    citation: '49 CFR 213.115',
    source: read('49 CFR 213.115, read as reprinted'),
  },
];

const TEN_MPH = { speedMs: mph(10), text: 'Speed over the frog not more than 10 mph.' } as const;

const HEAVY_POINT = { quantity: 'heavyPointFrog', answers: ['equipped'] } as const;

const turnout: readonly RuleLimit[] = [
  {
    id: 'guard-check',
    quantity: 'guardCheckGauge',
    sense: 'min',
    strict: true,
    applies: 'both',
    ...classes1to5(`4'6 1/8"`, `4'6 1/4"`, `4'6 3/8"`, `4'6 3/8"`, `4'6 1/2"`),
    notIf: HEAVY_POINT,
    citation: '49 CFR 213.143(a)',
    source: GUARDS,
  },
  {
    id: 'guard-check-heavy-point',
    quantity: 'guardCheckGauge',
    sense: 'min',
    strict: true,
    applies: 'both',
    ...classes1to5(`4'6 1/8"`, `4'6 1/4"`, `4'6 3/8"`, `4'6 3/8"`, `4'6 3/8"`),
    onlyIf: HEAVY_POINT,
    citation: '49 CFR 213.143(b)',
    source: GUARDS,
    note: 'Heavy-point frog so marked, with three through-gage plates, elastic fasteners and braces on both guard rails: on class 5 as little as on class 4.',
  },
  {
    id: 'guard-face',
    quantity: 'guardFaceGauge',
    sense: 'max',
    strict: true,
    applies: 'both',
    ...classes1to5(`4'5 1/4"`, `4'5 1/8"`, `4'5 1/8"`, `4'5 1/8"`, `4'5"`),
    citation: '49 CFR 213.143(a)',
    source: GUARDS,
  },
  {
    id: 'flangeway-depth',
    quantity: 'flangewayDepth',
    sense: 'min',
    strict: true,
    applies: 'both',
    ...classes1to5('1 3/8"', '1 1/2"', '1 1/2"', '1 1/2"', '1 1/2"'),
    citation: '49 CFR 213.137(a)',
    source: FROGS,
    notIf: { quantity: 'frogKind', answers: ['flangeBearing'] },
    note: 'Not for frogs designed as flange-bearing: at class 1 speeds, or in a crossing of more than 20° (213.137(d), (e)).',
  },
  {
    id: 'flangeway-width',
    quantity: 'flangewayWidth',
    sense: 'min',
    strict: true,
    applies: 'both',
    ...classes1to5('1 1/2"', '1 1/2"', '1 1/2"', '1 1/2"', '1 1/2"'),
    citation: '49 CFR 213.133(c)',
    source: read('49 CFR 213.133(c), read in a public reprint of the Code with the amendments of 2020'),
  },
  {
    id: 'frog-point',
    quantity: 'frogPointDown',
    sense: 'max',
    strict: true,
    applies: 'both',
    ...classes1to5('5/8"', '5/8"', '5/8"', '5/8"', '5/8"'),
    onlyWhere: 'the point is also chipped, broken or worn to 6 in back',
    consequence: TEN_MPH,
    citation: '49 CFR 213.137(b)',
    source: FROGS,
  },
  {
    id: 'frog-tread',
    quantity: 'frogTreadWear',
    sense: 'max',
    strict: true,
    applies: 'both',
    ...classes1to5('3/8"', '3/8"', '3/8"', '3/8"', '3/8"'),
    consequence: TEN_MPH,
    citation: '49 CFR 213.137(c)',
    source: FROGS,
  },
  {
    id: 'spring-frog-horn',
    quantity: 'springFrogHorn',
    sense: 'max',
    strict: true,
    applies: 'both',
    ...classes1to5('1/4"', '1/4"', '1/4"', '1/4"', '1/4"'),
    citation: '49 CFR 213.139(e)',
    source: read('49 CFR 213.139, read as reprinted'),
  },
  {
    id: 'self-guarded-frog',
    quantity: 'raisedGuardWear',
    sense: 'max',
    strict: true,
    applies: 'both',
    ...classes1to5('3/8"', '3/8"', '3/8"', '3/8"', '3/8"'),
    citation: '49 CFR 213.141(a)',
    source: read('49 CFR 213.141, read in a public reprint of the Code with the amendments of 2020'),
  },
];

/** What excepted track is held to besides its gauge, as far as it is counted. */
const excepted: readonly RuleLimit[] = [
  {
    id: 'excepted-placarded',
    quantity: 'placardedCars',
    sense: 'max',
    strict: true,
    applies: 'both',
    ...counts({ excepted: 5, '1': null, '2': null, '3': null, '4': null, '5': null }),
    citation: '49 CFR 213.4(e)(3)',
    source: read('49 CFR 213.4, read as reprinted'),
    note: 'Cars required to be placarded by the hazardous materials regulations (49 CFR part 172) in one freight train.',
  },
];

/** Track Safety Standards of the Federal Railroad Administration, excepted track and classes 1 to 5. */
export const us49cfr213: RuleSet = {
  id: 'us-49cfr213',
  name: '49 CFR part 213, track safety standards, excepted track and classes 1 to 5',
  choice: '49 CFR part 213 (track) and 215, 229, 230 (wheels)',
  jurisdiction: 'United States, general railroad system',
  edition:
    '49 CFR part 213 as amended through 85 FR 63388 (7 October 2020); the text in force on the day of the occurrence decides.',
  notes: [
    'Each requirement applies to one condition taken alone; a combination of conditions, none of which alone deviates, may still need action (49 CFR 213.1(a)).',
    'Where 49 CFR 213.4, 213.109, 213.133, 213.135 and 213.139 give no figure, what was found is an answer to a question, and some answers do not meet the rule.',
    'Freight trains run at 3 in of cant deficiency or less unless their equipment is qualified for more (213.57): the tables for more than 5 in hold only where the case says so.',
    'Classes 6 to 9 (subpart G) are not in this set.',
  ],
  kind: 'track',
  equipmentSet: 'us-49cfr215-229-230',
  classBy: 'designation',
  classSpeeds: { citation: '49 CFR 213.9(a)', source: read('49 CFR 213.9(a), read as reprinted') },
  classes: [
    {
      id: 'excepted',
      label: 'excepted track',
      freightSpeedMs: mph(10),
      passengerSpeedMs: null,
      designatedOnly: true,
    },
    { id: '1', label: 'class 1', freightSpeedMs: mph(10), passengerSpeedMs: mph(15) },
    { id: '2', label: 'class 2', freightSpeedMs: mph(25), passengerSpeedMs: mph(30) },
    { id: '3', label: 'class 3', freightSpeedMs: mph(40), passengerSpeedMs: mph(60) },
    { id: '4', label: 'class 4', freightSpeedMs: mph(60), passengerSpeedMs: mph(80) },
    { id: '5', label: 'class 5', freightSpeedMs: mph(80), passengerSpeedMs: mph(90) },
  ],
  limits: [...geometry, ...structure, ...turnout, ...excepted],
  conditions,
  combined: (
    [
      ['combined62', 'alinement62', 'profile62'],
      ['combined31', 'alinement31', 'profile31'],
    ] as const
  ).map(([id, alinement, profile]) => ({
    id,
    alinement,
    profile,
    factor: 3 / 4,
    unbalanceOverMm: ABOVE_5_IN.unbalanceOverMm,
    citation: '49 CFR 213.65',
    source: COMBINED,
    note: 'The section speaks of deviations measured by a track geometry measurement system; here they are read by hand.',
  })),
  conventions: [
    {
      id: 'nine-station-uniform',
      text:
        'Uniform alinement and profile at a point are taken as the mean of nine consecutive mid-ordinates centred on it ' +
        '(7 ft 9 in apart for a 31-ft chord, 15 ft 6 in for 62 ft). The rules prescribe this for class 6 and above ' +
        '(49 CFR 213.327(a)); for classes 1 to 5 they say only "uniform", and the method is adopted here.',
      source: read('49 CFR 213.327(a), read as reprinted; adopted for classes 1 to 5'),
    },
    {
      id: 'exactly-62-ft',
      text:
        'The crosslevel difference is limited for points less than 62 ft apart. A pair exactly 62 ft apart (every fourth ' +
        'station at 15 ft 6 in) is outside the rule: it is not compared with the limit.',
      source: SURFACE,
    },
    {
      id: 'curve-average',
      text:
        'Elevation and degree of curve for the speed formula are the mean of 10 points 15.5 ft apart over a 155-ft segment ' +
        'in the body of the curve, or of all points of a shorter curve.',
      source: CURVES,
    },
    {
      id: 'movement-under-load',
      text: 'Lateral and vertical movement of rail and ties that shows under load is added to what is measured without load.',
      source: { text: '49 CFR 213.13', status: 'from memory' },
    },
  ],
  curvingSpeed: {
    coefficient: 0.0007,
    qualifiedUnbalanceMm: printedMm('3"'),
    averagedOverM: feet(155),
    averagedPoints: 10,
    citation: '49 CFR 213.57(b), (c)',
    source: CURVES,
  },
};
