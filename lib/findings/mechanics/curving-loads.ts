import { climbLimit } from '../../mechanics/climb-limit';
import {
  carInCurve,
  CENTRE_PLATE_FRICTION,
  CENTRE_PLATE_RADIUS_M,
  outerWheelKn,
  SLIDING_FROM_PER_M,
  type CarInCurve,
} from '../../mechanics/car-in-curve';
import { frictionCentreMethod, TRUCK_WHEELS, truckSteering } from '../../mechanics/friction-centre';
import {
  onPlateKn,
  PLATE_EDGE_MM,
  SPRING_GROUP_KN_PER_MM,
  warpUnloadingKn,
  warpUnloadingMethod,
} from '../../mechanics/warp-unloading';
import { staticWheelLoadKn } from '../../mechanics/wheel-load';
import { normalDraws, uniformDraws } from '../../readings/draws';
import { quantileOf } from '../../readings/propagate';
import { WARP_BASE_M } from '../../track/warp';
import { distinct, measured, notMeasured, readingsOf, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, LimitCheck } from '../finding';
import type { KeyInput } from '../key-input';
import { keyInputsOf } from '../key-inputs';
import type { NonEmpty, Taken } from '../reading-index';
import { couplerForces } from '../train/coupler-forces';
import { forceText, percent } from '../words';
import { dropInFindings } from './drop-in';
import { allOf, takenFrom } from './from-key-input';
import { rolloverFindings } from './rollover';

const DRAWS = 1_000;

/** Ranges nobody reads; engineering judgement, and stated with the method. */
const TRUCK_CENTRES_M = [9, 18] as const;
const LADING_OFFSET_MM = [-51, 51] as const;

const NAMES = {
  leadingOuter: 'leading outer wheel',
  leadingInner: 'leading inner wheel',
  trailingOuter: 'trailing outer wheel',
  trailingInner: 'trailing inner wheel',
} as const;

type Column = { readonly of: (d: number) => number; readonly taken: Taken | null };

const assumedColumn = (context: Context, key: string, [low, high]: readonly [number, number]): Column => {
  const draws = uniformDraws(`assumed ${key}`, context.seed, DRAWS);
  return { of: (d) => low + draws[d]! * (high - low), taken: null };
};

const readColumn = (context: Context, taken: Taken): Column => {
  const draws = normalDraws(taken.readings.join('+'), context.seed, DRAWS);
  return { of: (d) => taken.value + taken.u * draws[d]!, taken };
};

/** As read, else anywhere in its declared range. */
function inputColumn(context: Context, input: KeyInput): Column {
  const taken = takenFrom(input);
  return taken === null
    ? assumedColumn(context, input.id, [input.reference.low, input.reference.high])
    : readColumn(context, taken);
}

const orAssumed = (
  context: Context,
  taken: Taken | null,
  key: string,
  range: readonly [number, number],
): Column => (taken === null ? assumedColumn(context, key, range) : readColumn(context, taken));

function summary(draws: Float64Array): { readonly value: number; readonly u: number } {
  const value = draws.reduce((sum, each) => sum + each, 0) / draws.length;
  const squares = draws.reduce((sum, each) => sum + (each - value) ** 2, 0);
  return { value, u: Math.sqrt(squares / (draws.length - 1)) };
}

/** For ratios, whose draws lie far to one side where the load is small. */
const middleOf = (draws: Float64Array): { readonly value: number; readonly u: number } => ({
  value: quantileOf(draws, 0.5) ?? NaN,
  u: ((quantileOf(draws, 0.84) ?? NaN) - (quantileOf(draws, 0.16) ?? NaN)) / 2,
});

const head = (what: string, title: string, remarks: readonly string[] = [], slot?: string): Heading => ({
  part: 'mechanics',
  what,
  title,
  method: frictionCentreMethod,
  subject: null,
  remarks,
  ...(slot === undefined ? {} : { slot }),
});

const RATIO_TITLE = 'L/V of the leading outer wheel of the first derailed truck in the curve';

/**
 * Forces of the first derailed truck on its rails in the curve: lateral and vertical of every wheel,
 * and their ratios held against the climb limit and the rollover limits of the same case.
 */
export function curvingLoadFindings(context: Context): readonly Finding[] {
  if (context.alignment === 'tangent') return [];
  const inputs = keyInputsOf(context);
  const needed = allOf({
    curvature: [takenFrom(inputs.curvature), 'curvature at the POD'],
    elevation: [takenFrom(inputs.elevation), 'crosslevel at undisturbed stations near the POD'],
    speed: [takenFrom(inputs.speed), 'speed at the POD'],
    weight: [takenFrom(inputs.grossWeight), 'gross weight of the first derailed vehicle'],
    axles: [takenFrom(inputs.axleCount), 'number of axles of the first derailed vehicle'],
  });
  if ('missing' in needed) return [notMeasured(head('curvingWheelRatio', RATIO_TITLE), needed.missing)];
  const { curvature, elevation, speed, weight, axles } = needed.all;
  if (axles.value !== 4)
    return [
      notMeasured(head('curvingWheelRatio', RATIO_TITLE), [
        'a first derailed vehicle on two two-axle trucks',
      ]),
    ];
  return loadsFrom(context, { curvature, elevation, speed, weight, axles });
}

type Measured = Readonly<Record<'curvature' | 'elevation' | 'speed' | 'weight' | 'axles', Taken>>;

function loadsFrom(context: Context, read: Measured): readonly Finding[] {
  const inputs = keyInputsOf(context);
  const vehicleId = context.first.vehicle?.entity.id ?? '';
  const ofVehicle = (quantity: string): Taken | null => context.read.take('vehicle', vehicleId, quantity);
  const columns = {
    curvature: readColumn(context, read.curvature),
    elevation: readColumn(context, read.elevation),
    speed: readColumn(context, read.speed),
    weight: readColumn(context, read.weight),
    friction: inputColumn(context, inputs.topOfRailFriction),
    clearance: inputColumn(context, inputs.sideBearingClearance),
    warp: inputColumn(context, inputs.warp62),
    spacing: inputColumn(context, inputs.axleSpacing),
    centre: inputColumn(context, inputs.gravityCentreHeight),
    offset: orAssumed(context, ofVehicle('ladingOffset'), 'place of the lading', LADING_OFFSET_MM),
    centres: orAssumed(context, ofVehicle('truckCentres'), 'truck centres', TRUCK_CENTRES_M),
    share: assumedColumn(context, 'share of the worst twist under the vehicle', [0, 1]),
    spring: assumedColumn(context, 'spring group', SPRING_GROUP_KN_PER_MM),
    plateEdge: assumedColumn(context, 'edge of the centre plate', PLATE_EDGE_MM),
    plate: assumedColumn(context, 'centre-plate friction', CENTRE_PLATE_FRICTION),
    plateRadius: assumedColumn(context, 'centre-plate radius', CENTRE_PLATE_RADIUS_M),
    sliding: assumedColumn(context, 'curve of full sliding', SLIDING_FROM_PER_M),
  };
  const outerIsRight = context.sides.outer === 'right' ? 1 : context.sides.outer === 'left' ? -1 : 0;
  const inward = couplerInward(context);
  const laterals = TRUCK_WHEELS.map(() => new Float64Array(DRAWS));
  const verticals = TRUCK_WHEELS.map(() => new Float64Array(DRAWS));
  const attack = new Float64Array(DRAWS);
  const lifted = new Float64Array(DRAWS);
  let nearlyOff = 0;
  for (let d = 0; d < DRAWS; d += 1) {
    const wheelKn = staticWheelLoadKn(columns.weight.of(d), read.axles.value);
    const offset = columns.offset.taken === null ? columns.offset.of(d) : outerIsRight * columns.offset.of(d);
    const twist = columns.warp.of(d) * columns.share.of(d) * Math.min(1, columns.centres.of(d) / WARP_BASE_M);
    lifted[d] = warpUnloadingKn({
      warpMm: twist,
      clearanceMm: columns.clearance.of(d),
      springKnPerMm: columns.spring.of(d),
      plateKn: onPlateKn(wheelKn),
      plateEdgeMm: columns.plateEdge.of(d),
    });
    const car: CarInCurve = {
      curvaturePerM: columns.curvature.of(d),
      elevationMm: columns.elevation.of(d),
      speedMs: columns.speed.of(d),
      wheelKn,
      friction: columns.friction.of(d),
      slidingFromPerM: columns.sliding.of(d),
      wheelbaseM: columns.spacing.of(d),
      gravityCentreMm: columns.centre.of(d),
      offsetMm: offset,
      liftedKn: lifted[d]!,
      inwardKn: inward?.draws(d) ?? 0,
      plateFriction: columns.plate.of(d),
      plateRadiusM: columns.plateRadius.of(d),
    };
    if (outerWheelKn(car) < NEARLY_NOTHING * wheelKn) nearlyOff += 1;
    const truck = carInCurve(car);
    const { lateralsKn, centreM } = truckSteering(truck);
    lateralsKn.forEach((each, i) => (laterals[i]![d] = each));
    truck.verticalsKn.forEach((each, i) => (verticals[i]![d] = each));
    attack[d] = centreM * Math.abs(car.curvaturePerM);
  }
  const taken = Object.values(columns).flatMap((column) => column.taken ?? []);
  const [one = read.curvature, ...others] = taken;
  const readings: NonEmpty<string> = readingsOf(one, ...others, ...(inward === null ? [] : [inward.taken]));
  const ofTwist = [read.axles, columns.warp.taken, columns.clearance.taken, columns.centres.taken].flatMap(
    (each) => each ?? [],
  );
  const remarks = distinct([
    'Quasi-static estimate: short peaks can be much higher.',
    columns.warp.taken === null
      ? 'Warp before the POD not measured: drawn from its reference range.'
      : 'Of the worst twist before the POD, anywhere from none to the part that truck centres of 62 ft would see in full is taken to lift the outer wheels of the truck, the less favourable way round.',
    nearlyOff === 0
      ? ''
      : `In ${percent(nearlyOff / DRAWS)} of the draws the leading outer wheel carries less than a tenth of its static load.`,
    columns.friction.taken === null
      ? 'Friction of the top of the low rail not measured: drawn from its reference range, and taken for every wheel.'
      : 'Friction read on the top of the low rail is taken for every wheel.',
    columns.clearance.taken === null
      ? 'Side-bearing clearance not measured: drawn from its reference range.'
      : '',
    columns.offset.taken === null ? 'Lading taken to lie within 2 in of the middle.' : '',
    columns.centre.taken === null ? 'Height of the centre of gravity not measured: 60 to 98 in taken.' : '',
    inward === null
      ? 'Coupler forces are not known and not in it.'
      : 'Steady coupler forces at the POD are in it; slack action is not.',
    ...taken.flatMap((each) => each.remarks),
  ]);
  const bare = (draws: Float64Array): Taken => ({ ...summary(draws), readings, remarks: [] });
  const skewed = (draws: Float64Array, said: readonly string[] = []): Taken => ({
    ...middleOf(draws),
    readings,
    remarks: [...said, 'Median of the draws; its uncertainty is half the span of their middle 68 %.'],
  });
  const ratio = laterals[0]!.map((each, d) => each / verticals[0]![d]!);
  const side = (a: number, b: number): Float64Array =>
    laterals[a]!.map((each, d) => (each + laterals[b]![d]!) / (verticals[a]![d]! + verticals[b]![d]!));
  const [outer, inner] = [side(0, 2), side(1, 3)];
  const spreading = laterals[0]!.map((each, d) => Math.min(each, laterals[1]![d]!));
  return [
    measured(
      head('curvingWheelRatio', RATIO_TITLE),
      'ratio',
      skewed(ratio, remarks),
      climbChecks(context, ratio),
    ),
    measured(
      head('curvingOuterSide', 'L/V of the outer side of the first derailed truck in the curve'),
      'ratio',
      skewed(outer),
      rolloverChecks(context, 'rolloverFlangingRail', outer),
    ),
    measured(
      head('curvingInnerSide', 'L/V of the inner side of the first derailed truck in the curve'),
      'ratio',
      skewed(inner),
      rolloverChecks(context, 'rolloverOtherRail', inner),
    ),
    measured(
      head('gaugeSpreading', 'Force spreading the gauge under the leading axle in the curve', [
        'The smaller of the lateral forces on the two rails, both towards the field: what the fasteners of each must hold besides the net force.',
      ]),
      'force',
      bare(spreading),
    ),
    ...gaugeHold(context, spreading, readings),
    measured(
      {
        ...head(
          'curvingLifted',
          'Load that twisted track takes off each outer wheel of the first derailed truck',
          [
            `5th to 95th percentile of the draws: ${forceText(quantileOf(lifted, 0.05) ?? NaN)} to ${forceText(quantileOf(lifted, 0.95) ?? NaN)}. In the vertical loads in the curve.`,
          ],
        ),
        method: warpUnloadingMethod,
      },
      'force',
      { ...summary(lifted), readings: readingsOf(read.weight, ...ofTwist), remarks: [] },
    ),
    measured(
      head('curvingAttack', 'Angle of attack of the leading axle in the curve', [
        'Of a square truck guided by the outer rail alone; a lozenged truck has more.',
      ]),
      'angle',
      bare(attack),
    ),
    ...TRUCK_WHEELS.flatMap((wheel, i) => [
      measured(
        head(
          'curvingLateral',
          `Lateral force in the curve, ${NAMES[wheel]}, towards the field positive`,
          [],
          wheel,
        ),
        'force',
        bare(laterals[i]!),
      ),
      measured(
        head('curvingVertical', `Vertical load in the curve, ${NAMES[wheel]}`, [], wheel),
        'force',
        bare(verticals[i]!),
      ),
    ]),
  ];
}

/** A ratio over less than this share of the static load says little: how often it happens is told. */
const NEARLY_NOTHING = 0.1;

/** Inward force of the couplers on the first derailed truck over the draws; null when it is not known. */
function couplerInward(context: Context) {
  if (context.vehicles.size < 2) return null;
  const forces = couplerForces(context);
  if (forces.kind === 'unknown' || forces.state.first === null) return null;
  const [lead, trail] = forces.trucks[forces.state.first]!;
  const spread = context.first.truck?.entity.fields.end === 'trailing' ? trail : lead;
  const taken: Taken = { value: spread.mean, u: spread.u, readings: forces.state.readings, remarks: [] };
  return { draws: (d: number): number => spread.draws[d % spread.draws.length]!, taken };
}

/**
 * How far the spreading force moves the rails hangs on what holds them, which nothing here measures:
 * so it is turned round, into what each rail must hold lest the standing drop-in margin is used up.
 */
function gaugeHold(
  context: Context,
  spreading: Float64Array,
  readings: NonEmpty<string>,
): readonly Finding[] {
  const margin = dropInFindings(context).find(({ what }) => what === 'dropInMarginStanding');
  if (margin?.kind !== 'measured' || margin.value <= 0) return [];
  const errors = normalDraws('margin with the track standing', context.seed, spreading.length);
  const needed = spreading.map(
    (force, d) =>
      Math.max(0, force) / (Math.max(SMALLEST_MARGIN_MM, margin.value + margin.u * errors[d]!) / 2),
  );
  const all: NonEmpty<string> = [readings[0], ...new Set([...readings.slice(1), ...margin.readings])];
  return [
    measured(
      head('gaugeHold', 'Stiffness that must hold each rail, lest the gauge spreads to drop-in', [
        'Force for each length that a rail gives: spreading force over half the drop-in margin with the track standing. Compare it with a gauge-restraint measurement, or with the force and the movement of a test at the place; the margin under load is found from observed movement.',
      ]),
      'stiffness',
      {
        ...middleOf(needed),
        readings: all,
        remarks: ['Median of the draws; its uncertainty is half the span of their middle 68 %.'],
      },
    ),
  ];
}

/** Keeps a margin drawn near nothing from making a force without end. */
const SMALLEST_MARGIN_MM = 1;

function climbChecks(context: Context, ratio: Float64Array): readonly LimitCheck[] {
  const inputs = keyInputsOf(context);
  const flange = takenFrom(inputs.flangeAngle);
  const face = takenFrom(inputs.gaugeFaceAngle);
  const friction = takenFrom(inputs.gaugeFaceFriction);
  if (flange === null || friction === null) return [];
  const angles = [flange, ...(face === null ? [] : [face])];
  const columns = angles.map((each) => readColumn(context, each));
  const mu = readColumn(context, friction);
  const limitAt = (d: number): number =>
    climbLimit(Math.min(...columns.map(({ of }) => of(d))), Math.max(0, mu.of(d)));
  const limit = climbLimit(Math.min(...angles.map(({ value }) => value)), friction.value);
  return [
    {
      name: 'single-wheel climb limit of this wheel on this rail',
      citation: 'Nadal, 1896',
      sense: 'max',
      limit,
      exceeded: middleOf(ratio).value > limit,
      probabilityExceeds: ratio.filter((each, d) => each > limitAt(d)).length / ratio.length,
      source: { text: 'Nadal, 1896', status: 'published' },
    },
  ];
}

function rolloverChecks(context: Context, what: string, ratio: Float64Array): readonly LimitCheck[] {
  const limit = rolloverFindings(context).find((finding) => finding.what === what);
  if (limit?.kind !== 'measured') return [];
  const draws = normalDraws(`limit ${what}`, context.seed, ratio.length);
  return [
    {
      name: 'rollover limit of this rail, fasteners holding nothing',
      citation: 'Moments about the base corner',
      sense: 'max',
      limit: limit.value,
      exceeded: middleOf(ratio).value > limit.value,
      probabilityExceeds:
        ratio.filter((each, d) => each > limit.value + limit.u * draws[d]!).length / ratio.length,
      source: { text: 'Statics: moments about the field-side base corner', status: 'published' },
    },
  ];
}
