import { PIN_TO_FACE_M, couplerAngleMethod, truckLateralsKn } from '../../mechanics/coupler-angle';
import { couplerForceMethod, steadyCouplerForces, type VehicleInTrain } from '../../mechanics/coupler-force';
import { couplerLateralKn, couplerSwingLateralKn } from '../../mechanics/coupler-lateral';
import { dynamicBrakeKn, tractiveEffortKn } from '../../mechanics/locomotive-force';
import {
  COUPLER_HEIGHTS_MM,
  COUPLER_SWING_RAD,
  jackknifeMethod,
  stringlineMethod,
  unloadedShare,
} from '../../mechanics/stringline';
import {
  BRAKING_RATIOS,
  SHOE_FRICTION,
  brakeForceKn,
  cylinderPressureKpa,
} from '../../mechanics/train-brake';
import { nameOfEntity } from '../../case/name-of';
import { normalDraws, uniformDraws } from '../../readings/draws';
import { probabilityAbove, quantileOf } from '../../readings/propagate';
import { unbalanceMm } from '../../track/curving-speed';
import { measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, LimitCheck, Method } from '../finding';
import { oncePerContext } from '../once-per-context';
import type { Taken } from '../reading-index';
import { curveAtPod } from '../track/curving';
import { forceText } from '../words';
import { swingsOf, type Swing } from './coupler-swing';
import { lineProfile } from './line-profile';
import { trainState, type TrainState, type UnknownTrain, type VehicleState } from './train-state';

/** Draws over what is assumed: enough for the 5th and 95th percentile to stand still. */
const DRAWS = 400;
const STANDARD_GRAVITY = 9.80665;
const N_PER_KN = 1000;

/** A quantity over all draws: mean, spread and the ends of the range. */
export type Spread = {
  readonly mean: number;
  readonly u: number;
  /** 5th and 95th percentile. */
  readonly low: number;
  readonly high: number;
  readonly draws: Float64Array;
};

function spreadOf(draws: Float64Array): Spread {
  const mean = draws.reduce((sum, each) => sum + each, 0) / draws.length;
  const square = draws.reduce((sum, each) => sum + (each - mean) ** 2, 0);
  return {
    mean,
    u: Math.sqrt(square / (draws.length - 1)),
    low: quantileOf(draws, 0.05) ?? NaN,
    high: quantileOf(draws, 0.95) ?? NaN,
    draws,
  };
}

export type CouplerForces = {
  readonly kind: 'known';
  readonly state: TrainState;
  /** Behind each vehicle but the last. */
  readonly couplers: readonly Spread[];
  /** Lateral force of the body on the leading and trailing truck of each vehicle, inward positive, kN. */
  readonly trucks: readonly (readonly [leading: Spread, trailing: Spread])[];
  /** L/V of the truck side that the worse truck of each vehicle presses on. */
  readonly ratios: readonly Spread[];
};

/** What nobody read, by the name its draws are keyed with. */
const ASSUMED = [
  'power in a notch',
  'adhesion',
  'dynamic brake',
  'rolling resistance',
  'curve resistance',
  'braking ratio',
  'shoe friction',
  'curve under the train',
] as const;
type Assumed = (typeof ASSUMED)[number];

const between = (share: number, [low, high]: readonly [number, number]): number => low + share * (high - low);

/** The train of one draw: what was read as read, what was assumed somewhere within its range. */
function trainAt(
  { vehicles, recorder, speed }: TrainState,
  share: (name: Assumed) => number,
  gradeError: number,
): readonly VehicleInTrain[] {
  const { tractiveEffortKn: recorded, brakePipeReductionKpa, brakeCylinderKpa } = recorder;
  const cylinder = cylinderPressureKpa(brakePipeReductionKpa, false);
  const pullOf = ({ rating, own }: VehicleState): number => {
    if (rating === null) return 0;
    if (own === null && Number.isFinite(recorded)) return recorded;
    const { throttle, dynamicBrakeShare } = own ?? recorder;
    if (dynamicBrakeShare > 0)
      return (
        -between(share('dynamic brake'), [0.85, 1.15]) *
        dynamicBrakeKn(rating.dynamicBrakeKn, dynamicBrakeShare, speed.value)
      );
    return throttle > 0
      ? tractiveEffortKn(
          rating,
          { notch: throttle, at: share('power in a notch') },
          speed.value,
          between(share('adhesion'), [0.25, 0.35]),
        )
      : 0;
  };
  return vehicles.map((vehicle) => {
    const { massKg, axles, grade, curvature, dragFactor, rating, own, empty } = vehicle;
    const ratio = between(share('braking ratio'), empty ? BRAKING_RATIOS.empty : BRAKING_RATIOS.loaded);
    // A locomotive's own cylinder is recorded: its brake may be released, or set, by itself.
    const pressure =
      rating !== null && own === null && Number.isFinite(brakeCylinderKpa) ? brakeCylinderKpa : cylinder;
    return {
      massKg,
      axles,
      grade: grade.value + gradeError * grade.u,
      curvaturePerM: between(share('curve under the train'), curvature),
      dragFactor,
      tractionKn: pullOf(vehicle),
      brakeKn: brakeForceKn(massKg, ratio, between(share('shoe friction'), SHOE_FRICTION), pressure),
    };
  });
}

/** Coupler forces of the train at the POD, and what they do to each truck, over all draws. */
export const couplerForces = oncePerContext((context: Context): CouplerForces | UnknownTrain => {
  const state = trainState(context);
  if (state.kind === 'unknown') return state;
  const { vehicles, speed } = state;
  const shares = new Map(
    ASSUMED.map((name) => [name, uniformDraws(`in-train force: ${name}`, context.seed, DRAWS)] as const),
  );
  const grade = normalDraws('in-train force: grade', context.seed, DRAWS);
  const rows = (count: number): Float64Array[] =>
    Array.from({ length: count }, () => new Float64Array(DRAWS));
  const couplers = rows(vehicles.length - 1);
  const leading = rows(vehicles.length);
  const trailing = rows(vehicles.length);
  const ratios = rows(vehicles.length);
  const swings = swingsOf(state, lineProfile(context));
  for (let d = 0; d < DRAWS; d += 1) {
    const share = (name: Assumed): number => shares.get(name)?.[d] ?? 0.5;
    const train = trainAt(state, share, grade[d] ?? 0);
    const { couplersKn } = steadyCouplerForces(train, speed.value, {
      rolling: between(share('rolling resistance'), [0.8, 1.3]),
      curve: between(share('curve resistance'), [0.6, 1.25]),
    });
    couplersKn.forEach((force, i) => (couplers[i]![d] = force));
    vehicles.forEach((vehicle, i) => {
      const [lead, trail] = lateralsOf(state, swings[i]!, share('curve under the train'), couplersKn, i);
      leading[i]![d] = lead;
      trailing[i]![d] = trail;
      const side = (vehicle.massKg * STANDARD_GRAVITY) / N_PER_KN / 4;
      ratios[i]![d] = Math.max(Math.abs(lead), Math.abs(trail)) / side;
    });
  }
  return {
    kind: 'known',
    state,
    couplers: couplers.map(spreadOf),
    trucks: leading.map((each, i) => [spreadOf(each), spreadOf(trailing[i]!)] as const),
    ratios: ratios.map(spreadOf),
  };
});

/** Inward force on both trucks of a vehicle: from the coupler angles where its shape is known, else F·S/(2R). */
function lateralsOf(
  { vehicles }: TrainState,
  swing: Swing,
  share: number,
  couplersKn: Float64Array,
  i: number,
): readonly [number, number] {
  const vehicle = vehicles[i]!;
  const front = couplersKn[i - 1] ?? 0;
  const rear = couplersKn[i] ?? 0;
  if (!(vehicle.truckCentresM > 0)) {
    const curve = between(share, vehicle.curvature);
    const mean = couplerLateralKn((front + rear) / 2, vehicle.lengthM, curve);
    return [mean, mean];
  }
  return truckLateralsKn(
    vehicle,
    { forceKn: front, angleRad: between(share, swing.front) },
    { forceKn: rear, angleRad: between(share, swing.rear) },
  );
}

const rangeText = ({ low, high }: Spread, text: (value: number) => string): string =>
  `5th to 95th percentile of what was assumed: ${text(low)} to ${text(high)}.`;
const ratioText = (value: number): string => value.toFixed(2).replace('-', '−');

const ASSUMPTIONS = 'Steady state: slack at rest, handling unchanged; run-in and run-out are not in it.';

/** Said once, and not with every force of the same train. */
const AS_AHEAD = 'Assumed as said with the coupler force ahead of the first derailed vehicle.';

const TITLES = {
  ahead: 'Coupler force ahead of the first derailed vehicle, steady, draft positive',
  behind: 'Coupler force behind the first derailed vehicle, steady, draft positive',
  draft: 'Greatest coupler force in the train, steady, draft positive',
  buff: 'Least coupler force in the train, steady, buff negative',
  lateral: 'Lateral force on a truck of the first derailed vehicle from its couplers, inward positive',
  ratio: 'L/V of a truck side of the first derailed vehicle from its couplers',
  worst: 'Greatest L/V of a truck side in the train from coupler forces',
  stringline: 'Stringline screen: share of load lifted off the outer rail at the first derailed vehicle',
  jackknife: 'Jackknife screen: L/V of a truck side of the first derailed vehicle, couplers at their stops',
} as const;

const head = (what: string, title: string, method: Method, remarks: readonly string[] = []): Heading => ({
  part: 'train',
  what,
  title,
  method,
  subject: null,
  remarks,
});

/** Steady coupler forces at the POD, and what they do to the first derailed vehicle and to the worst one. */
export function couplerForceFindings(context: Context): readonly Finding[] {
  if (context.vehicles.size < 2) return [];
  const forces = couplerForces(context);
  if (forces.kind === 'unknown') {
    return [
      notMeasured(head('couplerForceAhead', TITLES.ahead, couplerForceMethod), forces.missing),
      notMeasured(head('couplerLateral', TITLES.lateral, couplerAngleMethod), forces.missing),
    ];
  }
  const { state, couplers, ratios } = forces;
  const taken = ({ mean, u }: Spread): Taken => ({
    value: mean,
    u,
    readings: state.readings,
    remarks: [AS_AHEAD],
  });
  const named = (i: number): string => nameOfEntity(context.record, 'vehicle', state.vehicles[i]!.entity);
  const most = (pick: (spread: Spread) => number, of: readonly Spread[]): number =>
    of.reduce((best, each, i) => (pick(each) > pick(of[best]!) ? i : best), 0);
  const draft = most(({ mean }) => mean, couplers);
  const buff = most(({ mean }) => -mean, couplers);
  const worst = most(({ mean }) => mean, ratios);
  const inTrain = (what: string, title: string, i: number): Finding =>
    measured(
      head(what, title, couplerForceMethod, [`Behind ${named(i)}.`, rangeText(couplers[i]!, forceText)]),
      'force',
      taken(couplers[i]!),
    );
  return [
    ...atFirst(context, forces, taken),
    inTrain('couplerDraftMost', TITLES.draft, draft),
    inTrain('couplerBuffMost', TITLES.buff, buff),
    measured(
      head('couplerRatioMost', TITLES.worst, couplerAngleMethod, [
        `At ${named(worst)}.`,
        rangeText(ratios[worst]!, ratioText),
      ]),
      'ratio',
      taken(ratios[worst]!),
      [truckSideLimit(ratios[worst]!)],
    ),
    ...ratios.map((ratio, i) =>
      measured(
        {
          ...head(
            'couplerRatioOf',
            `L/V of a truck side from coupler forces, ${named(i)}`,
            couplerAngleMethod,
            [rangeText(ratio, ratioText)],
          ),
          subject: { kind: 'vehicle', id: state.vehicles[i]!.entity.id },
        },
        'ratio',
        taken(ratio),
        [truckSideLimit(ratio)],
      ),
    ),
  ];
}

const TRUCK_SIDE_LIMIT = 0.6;

const truckSideLimit = ({ mean, draws }: Spread): LimitCheck => ({
  name: 'truck-side L/V of vehicle qualification, for orientation',
  citation: '49 CFR 213.333',
  sense: 'max',
  limit: TRUCK_SIDE_LIMIT,
  exceeded: mean > TRUCK_SIDE_LIMIT,
  probabilityExceeds: probabilityAbove(draws, TRUCK_SIDE_LIMIT),
  source: { text: '49 CFR 213.333, table of vehicle/track interaction safety limits', status: 'from memory' },
});

function atFirst(
  context: Context,
  forces: CouplerForces,
  taken: (spread: Spread) => Taken,
): readonly Finding[] {
  const { state, couplers, trucks, ratios } = forces;
  const { first } = state;
  if (first === null) {
    return [
      notMeasured(head('couplerForceAhead', TITLES.ahead, couplerForceMethod), [
        'which vehicle was the first to derail',
      ]),
    ];
  }
  const ahead = couplers[first - 1];
  const behind = couplers[first];
  const [lead, trail] = trucks[first]!;
  const worse = Math.abs(lead.mean) >= Math.abs(trail.mean) ? lead : trail;
  return [
    ...(ahead === undefined
      ? []
      : [
          measured(
            head('couplerForceAhead', TITLES.ahead, couplerForceMethod, [
              rangeText(ahead, forceText),
              ASSUMPTIONS,
            ]),
            'force',
            { ...taken(ahead), remarks: state.remarks },
          ),
        ]),
    ...(behind === undefined
      ? []
      : [
          measured(
            head('couplerForceBehind', TITLES.behind, couplerForceMethod, [
              rangeText(behind, forceText),
              ASSUMPTIONS,
            ]),
            'force',
            taken(behind),
          ),
        ]),
    measured(
      head('couplerLateral', TITLES.lateral, couplerAngleMethod, [
        `The ${worse === lead ? 'leading' : 'trailing'} truck, which has the larger one.`,
        rangeText(worse, forceText),
      ]),
      'force',
      taken(worse),
    ),
    measured(
      head('couplerLateralRatio', TITLES.ratio, couplerAngleMethod, [
        'Against the static load of one side of the truck.',
        rangeText(ratios[first]!, ratioText),
      ]),
      'ratio',
      taken(ratios[first]!),
      [truckSideLimit(ratios[first]!)],
    ),
    stringline(context, forces, first, taken),
    ...jackknife(context, forces, first, taken),
  ];
}

const GRAVITY_CENTRE_MM = [1524, 2489] as const;

const LIFTS: Pick<LimitCheck, 'name' | 'citation' | 'source'> = {
  name: 'the wheels of the outer rail lift',
  citation: 'Moments about the inner rail',
  source: { text: 'Moments about the inner rail', status: 'published' },
};

function stringline(
  context: Context,
  { state, trucks }: CouplerForces,
  first: number,
  taken: (spread: Spread) => Taken,
): Finding {
  const about = head('stringline', TITLES.stringline, stringlineMethod);
  const { curvature, elevation, speed } = curveAtPod(context);
  if (context.alignment === 'tangent' || curvature === null || elevation === null || speed === null)
    return notMeasured(about, ['curvature, elevation and speed at the POD, on a curve']);
  const vehicle = state.vehicles[first]!;
  const weightKn = (vehicle.massKg * STANDARD_GRAVITY) / N_PER_KN;
  const read = context.read.take('vehicle', vehicle.entity.id, 'gravityCentreHeight');
  const [lead, trail] = trucks[first]!;
  const heights = uniformDraws('assumed height of the coupler', context.seed, DRAWS);
  const centres = uniformDraws('assumed height of the centre of gravity', context.seed, DRAWS);
  const lean = -unbalanceMm(curvature.value, speed.value, elevation.value);
  const share = spreadOf(
    lead.draws.map((each, d) =>
      unloadedShare(
        each + trail.draws[d]!,
        between(heights[d]!, COUPLER_HEIGHTS_MM),
        lean,
        read?.value ?? between(centres[d]!, GRAVITY_CENTRE_MM),
        weightKn,
      ),
    ),
  );
  return measured(
    {
      ...about,
      remarks: [
        rangeText(share, ratioText),
        'Negative: it is the inner rail that loses load.',
        read === null ? 'Height of the centre of gravity not measured: 60 to 98 in taken.' : '',
      ].filter(Boolean),
    },
    'ratio',
    taken(share),
    [
      {
        ...LIFTS,
        sense: 'max',
        limit: 1,
        exceeded: share.mean > 1,
        probabilityExceeds: probabilityAbove(share.draws, 1),
      },
    ],
  );
}

function jackknife(
  context: Context,
  { state, couplers }: CouplerForces,
  first: number,
  taken: (spread: Spread) => Taken,
): readonly Finding[] {
  const about = head('jackknife', TITLES.jackknife, jackknifeMethod);
  const vehicle = state.vehicles[first]!;
  if (!(vehicle.truckCentresM > 0))
    return [notMeasured(about, ['truck centres of the first derailed vehicle'])];
  const sides = [couplers[first - 1], couplers[first]].flatMap((each) => each ?? []);
  if (sides.length === 0) return [];
  const side = (vehicle.massKg * STANDARD_GRAVITY) / N_PER_KN / 4;
  const swings = uniformDraws('assumed coupler swing', context.seed, DRAWS);
  const pins = vehicle.lengthM - 2 * PIN_TO_FACE_M;
  const ratio = spreadOf(
    swings.map((swing, d) => {
      const force = Math.min(0, ...sides.map(({ draws }) => draws[d]!));
      return (
        couplerSwingLateralKn(force, between(swing, COUPLER_SWING_RAD), pins, vehicle.truckCentresM) / side
      );
    }),
  );
  return [
    measured(
      {
        ...about,
        remarks: [
          rangeText(ratio, ratioText),
          'Zero where both couplers are in draft. Couplers found jammed hard over speak for it.',
        ],
      },
      'ratio',
      taken(ratio),
      [truckSideLimit(ratio)],
    ),
  ];
}
