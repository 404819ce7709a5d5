import { harmonicRollMethod, resonantSpeedMs, ROLL_FREQUENCIES_HZ } from '../../mechanics/harmonic-roll';
import {
  overturningMethod,
  overturningShare,
  overturningUnbalanceMm,
  ROLL_FACTORS,
} from '../../mechanics/overturning';
import {
  BALLAST_HOLDS_KN_PER_M,
  curvePushKnPerM,
  railAreaMm2,
  railCompressionKn,
  trackBuckleMethod,
} from '../../mechanics/track-buckle';
import type { Input } from '../../readings/propagate';
import { probabilityAbove, probabilityBelow } from '../../readings/propagate';
import { standardUncertaintyFromHalfWidth } from '../../readings/uncertainty';
import { maximumCurvingSpeedMs, unbalanceMm } from '../../track/curving-speed';
import { measured, notMeasured, outOfRange, type Heading } from '../build';
import type { Context } from '../context';
import { draw } from '../draw';
import type { Finding, LimitCheck, Method } from '../finding';
import { railsNearPod } from '../rail-place';
import { curveAtPod } from '../track/curving';
import { percent } from '../words';
import { allOf } from './from-key-input';

const head = (what: string, title: string, method: Method, remarks: readonly string[] = []): Heading => ({
  part: 'mechanics',
  what,
  title,
  method,
  subject: null,
  remarks,
});

/** An input nobody read, somewhere in its range. */
const within = (key: string, [low, high]: readonly [number, number]): Input => ({
  key: `assumed ${key}`,
  value: (low + high) / 2,
  u: standardUncertaintyFromHalfWidth((high - low) / 2),
});

const GRAVITY_CENTRE = within('height of the centre of gravity', [1524, 2489]);
const ROLL = within('roll on the springs', ROLL_FACTORS);
const NO_CENTRE = 'Height of the centre of gravity not measured: 60 to 98 in taken.';

/** Screens that let overspeed, harmonic roll and buckling be kept or set aside with a reason. */
export const screenFindings = (context: Context): readonly Finding[] => [
  ...overspeed(context),
  harmonic(context),
  ...buckle(context),
];

const TURNS_OVER: LimitCheck['source'] = { text: 'Moments about the outer rail', status: 'published' };

function overspeed(context: Context): readonly Finding[] {
  if (context.alignment === 'tangent') return [];
  const at = curveAtPod(context);
  const share = head(
    'overturningShare',
    'Overspeed screen: share of load off the inner rail',
    overturningMethod,
    ['Negative: the train was slower than balance and it is the outer rail that lost load.', NO_CENTRE],
  );
  const speed = head(
    'overturningSpeed',
    'Overspeed screen: speed at which the car would turn over',
    overturningMethod,
    [NO_CENTRE],
  );
  const needed = allOf({
    curvature: [at.curvature, 'curvature at the POD'],
    speed: [at.speed, 'speed at the POD'],
    elevation: [at.elevation, 'crosslevel at undisturbed stations near the POD'],
  });
  if ('missing' in needed) return [notMeasured(share, needed.missing), notMeasured(speed, needed.missing)];
  const { curvature, elevation, speed: ran } = needed.all;
  const lost = draw(
    (v) => overturningShare(unbalanceMm(v[0]!, v[1]!, v[2]!), v[3]!, Math.max(1, v[4]!)),
    [curvature, ran, elevation],
    context.seed,
    [GRAVITY_CENTRE, ROLL],
  );
  const over = draw(
    (v) => maximumCurvingSpeedMs(v[0]!, v[1]!, overturningUnbalanceMm(v[2]!, Math.max(1, v[3]!))),
    [curvature, elevation],
    context.seed,
    [GRAVITY_CENTRE, ROLL],
  );
  return [
    measured(share, 'ratio', lost.taken, [
      {
        name: 'the inner rail carries nothing',
        citation: TURNS_OVER.text,
        sense: 'max',
        limit: 1,
        exceeded: lost.taken.value > 1,
        probabilityExceeds: probabilityAbove(lost.draws, 1),
        source: TURNS_OVER,
      },
    ]),
    Number.isFinite(over.taken.value) && Number.isFinite(over.taken.u)
      ? measured(speed, 'speed', over.taken)
      : outOfRange(
          speed,
          over.taken,
          'On a curve as flat as this one may be, no speed would turn the car over.',
        ),
  ];
}

/** Rocking builds up within about a quarter of resonance; common practice, no source. */
const NEAR_RESONANCE = [0.75, 1.25] as const;

function harmonic(context: Context): Finding {
  const title = 'Harmonic roll screen: speed over the resonant speed of 39-ft staggered joints';
  const speed = context.speedAtPod;
  if (speed === null)
    return notMeasured(head('harmonicRollSpeed', title, harmonicRollMethod), ['speed at the POD']);
  const { taken, draws } = draw((v) => v[0]! / resonantSpeedMs(v[1]!), [speed], context.seed, [
    within('roll frequency', ROLL_FREQUENCIES_HZ),
  ]);
  const near = 1 - probabilityBelow(draws, NEAR_RESONANCE[0]) - probabilityAbove(draws, NEAR_RESONANCE[1]);
  return measured(
    head('harmonicRollSpeed', title, harmonicRollMethod, [
      `Within a quarter of resonance: ${percent(near)} of what was assumed. It speaks for rocking only with several low staggered joints in a row.`,
    ]),
    'ratio',
    taken,
  );
}

/** Records of the neutral temperature are off by some degrees; engineering judgement. */
const RECORDS_ERROR: Input = { key: 'error of the neutral temperature in records', value: 0, u: 5 };

function buckle(context: Context): readonly Finding[] {
  const { read, record } = context;
  const about = head(
    'railCompression',
    'Buckle screen: compression of both rails from heat',
    trackBuckleMethod,
  );
  const named = railsNearPod(context, null)
    .map(({ entity }) => String(entity.fields.section ?? ''))
    .find((section) => Number.isFinite(railAreaMm2(section)));
  const needed = allOf({
    rail: [read.take('case', record.id, 'railTemperature'), 'rail temperature'],
    neutral: [
      read.take('case', record.id, 'railNeutralTemperature'),
      'rail neutral temperature, from records',
    ],
  });
  const missing = [
    ...('missing' in needed ? needed.missing : []),
    ...(named === undefined ? ['section of a rail near the POD, one of those in the table'] : []),
  ];
  if ('missing' in needed || named === undefined) return [notMeasured(about, missing)];
  const { rail, neutral } = needed.all;
  const area = railAreaMm2(named);
  const force = draw((v) => railCompressionKn(area, v[0]! - v[1]! - v[2]!), [rail, neutral], context.seed, [
    RECORDS_ERROR,
  ]);
  const heat: LimitCheck = {
    name: 'above this the rails push; at or below it heat moved nothing',
    citation: 'Hooke’s law',
    sense: 'max',
    limit: 0,
    exceeded: force.taken.value > 0,
    probabilityExceeds: probabilityAbove(force.draws, 0),
    source: { text: 'Hooke’s law', status: 'published' },
  };
  const compression = measured(
    {
      ...about,
      remarks: [
        `Section ${named}. Negative: the rails pull.`,
        'Neutral temperature from records taken as good to 5 °C (9 °F), one standard uncertainty.',
      ],
    },
    'force',
    force.taken,
    [heat],
  );
  const { curvature } = curveAtPod(context);
  if (context.alignment === 'tangent' || curvature === null) return [compression];
  const push = draw(
    (v) => curvePushKnPerM(railCompressionKn(area, v[0]! - v[1]! - v[3]!), v[2]!),
    [rail, neutral, curvature],
    context.seed,
    [RECORDS_ERROR],
  );
  const [weak, strong] = BALLAST_HOLDS_KN_PER_M;
  return [
    compression,
    measured(
      head(
        'buckleCurvePush',
        'Buckle screen: outward push of hot rails on each metre of the curve',
        trackBuckleMethod,
        ['Ballast lately disturbed holds the lower figure, well consolidated the higher one.'],
      ),
      'force',
      push.taken,
      [weak, strong].map((limit) => ({
        name: limit === weak ? 'what disturbed ballast holds' : 'what consolidated ballast holds',
        citation: 'lateral resistance for each metre of track',
        sense: 'max' as const,
        limit,
        exceeded: push.taken.value > limit,
        probabilityExceeds: probabilityAbove(push.draws, limit),
        source: { text: 'Lateral resistance of ballast', status: 'from memory' as const },
      })),
    ),
  ];
}
