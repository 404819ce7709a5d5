import type { CaseRecord } from '../../case/record';
import { AXLE_SPACING_M } from '../../mechanics/car-in-curve';
import { quantityOf } from '../../readings/quantities';
import type { Dimension } from '../../readings/unit';
import { remarked } from '../build';
import { buildContext, type Context, type FindingOptions } from '../context';
import { KEY_INPUTS, type KeyInput, type KeyInputId, type KeyInputs } from '../key-input';
import { climbContact } from '../contact/climb-contact';
import { fieldSideRide, RIDE_REFERENCE } from '../contact/inner-ride';
import { oncePerContext } from '../once-per-context';
import { otherSide, type Side } from '../pod-sides';
import { railReading } from '../rail-place';
import type { Taken } from '../reading-index';
import { curveAtPod } from '../track/curving';
import { defectiveTiesAtPod, gaugeAtPod, warpBeforePod } from './track';
import { pointReading, tipOfPoint } from './turnout';
import { farWheel, flangingWheel, leastBackToBack, leastSideBearing } from './wheel';

type Entry = {
  readonly taken: Taken | null;
  readonly dimension: Dimension;
  readonly reference: KeyInput['reference'];
  readonly errsWith?: KeyInputId;
};

const INCH = 25.4;

/** An input read as one quantity of the catalogue, whose reference range it takes. */
function as(quantityId: string, taken: Taken | null): Entry {
  const quantity = quantityOf(quantityId);
  if (quantity.kind !== 'measure') throw new Error(`${quantityId} is not measured`);
  return { taken, dimension: quantity.dimension, reference: quantity.reference };
}

const firstVehicle = (context: Context, quantity: string): Taken | null => {
  const { vehicle } = context.first;
  return vehicle === null ? null : context.read.take('vehicle', vehicle.entity.id, quantity);
};

/**
 * The quantities on which the mechanisms turn, from the readings nearest the POD and the first
 * derailed wheelset, each with the range it is drawn from when nobody measured it.
 */
export const keyInputsOf = oncePerContext((context: Context): KeyInputs => {
  const { outer, inner, flanging } = context.sides;
  const gauge = gaugeAtPod(context);
  const curve = curveAtPod(context);
  const onRail = (quantity: string, side: Side | null): Taken | null =>
    railReading(context, side, quantity)?.taken ?? null;
  const movement = as('lateralMovement', gauge.movement);
  const near = outer ?? flanging;
  const far = inner ?? (flanging === null ? null : otherSide(flanging));
  const flangeAngle = flangingWheel(context, 'flangeAngle', 'least');
  const tip = tipOfPoint(context);
  const hollow = farWheel(context, 'treadHollow', 'most');
  const entries: Readonly<Record<KeyInputId, Entry>> = {
    flangeAngle: as('flangeAngle', flangeAngle),
    climbLength: as('climbLength', flangingWheel(context, 'climbLength', 'least')),
    flangeThickness: as('flangeThickness', flangingWheel(context, 'flangeThickness', 'least')),
    flangeHeight: as('flangeHeight', flangingWheel(context, 'flangeHeight', 'most')),
    backToBackMin: as('backToBack', leastBackToBack(context)),
    rimWidth: as('rimWidth', farWheel(context, 'rimWidth', 'least')),
    treadHollow: as('treadHollow', hollow),
    fieldSideRide: {
      taken: fieldSideRide(context, hollow),
      dimension: 'ratio',
      reference: RIDE_REFERENCE,
    },
    gaugeFaceAngle: facing(context, flangeAngle, onRail('gaugeFaceAngle', near)),
    gaugeFaceFriction: as('gaugeFaceFriction', onRail('gaugeFaceFriction', near)),
    topOfRailFriction: as('topOfRailFriction', onRail('topOfRailFriction', far)),
    gaugeStanding: as('gauge', gauge.standing),
    lateralMovement: {
      ...movement,
      reference: {
        low: 2 * movement.reference.low,
        high: 2 * movement.reference.high,
        source: `both rails together, each: ${movement.reference.source}`,
      },
    },
    warp62: {
      taken: warpBeforePod(context),
      dimension: 'crossLength',
      reference: {
        low: 0,
        high: 1.5 * INCH,
        source: 'from even track to the limit of class 5, 49 CFR 213.63(a); engineering judgement',
      },
    },
    curvature: as('designCurvature', curve.curvature),
    elevation: as('designElevation', curve.elevation),
    speed: as('speedAtPod', curve.speed),
    grossWeight: as('grossWeight', firstVehicle(context, 'grossWeight')),
    axleCount: {
      taken: firstVehicle(context, 'axleCount'),
      dimension: 'count',
      reference: {
        low: 4,
        high: 4,
        source: 'ordinary freight car on two trucks; common practice, no source',
      },
    },
    axleSpacing: {
      ...as('axleSpacing', firstVehicle(context, 'axleSpacing')),
      reference: {
        low: AXLE_SPACING_M[0],
        high: AXLE_SPACING_M[1],
        source: 'two-axle freight trucks, 5 ft 6 in to 6 ft; engineering judgement',
      },
    },
    gravityCentreHeight: as('gravityCentreHeight', firstVehicle(context, 'gravityCentreHeight')),
    railCantOuter: as('railCant', near === null ? null : onRail('railCant', near)),
    railCantInner: as('railCant', far === null ? null : onRail('railCant', far)),
    defectiveTies: {
      taken: defectiveTiesAtPod(context),
      dimension: 'count',
      reference: {
        low: 0,
        high: 10,
        source: 'of about 24 ties in 39 ft, sound to poor; engineering judgement',
      },
    },
    sideBearingClearance: as('sideBearingClearance', leastSideBearing(context)),
    pointGap: as('pointGap', pointReading(context, 'pointGap')),
    tipThickness: as('tipThickness', tip.thickness),
    tipDepth: as('tipDepth', pointReading(context, 'tipDepth')),
    chipLength: as('chipLength', pointReading(context, 'chipLength')),
    chipDepth: as('chipDepth', pointReading(context, 'chipDepth')),
    pointSideSlope: as('pointFaceAngle', tip.slope),
  };
  return Object.fromEntries(KEY_INPUTS.map((id) => [id, toKeyInput(id, entries[id])])) as KeyInputs;
});

/** The angle the rail offers: that of contact where wheel and rail were traced, else that of its face. */
function facing(context: Context, flange: Taken | null, face: Taken | null): Entry {
  const contact = climbContact(context);
  if (contact.kind === 'missing') return as('gaugeFaceAngle', face);
  const { taken, wheel } = contact;
  const said = remarked(taken, 'Contact angle of this wheel on this rail, in place of the gauge-face angle.');
  return {
    ...as('gaugeFaceAngle', said),
    ...(flange?.readings.includes(wheel.trace.id) === true ? { errsWith: 'flangeAngle' } : {}),
  };
}

/** As `keyInputsOf`, for a record not yet indexed. */
export const keyInputs = (record: CaseRecord, options: FindingOptions): KeyInputs =>
  keyInputsOf(buildContext(record, options));

function toKeyInput(id: KeyInputId, { taken, dimension, reference, errsWith }: Entry): KeyInput {
  return {
    id,
    dimension,
    reference,
    measured:
      taken === null
        ? null
        : {
            value: taken.value,
            u: taken.u,
            readings: taken.readings,
            remark: taken.remarks.join(' '),
            errsWith,
          },
  };
}
