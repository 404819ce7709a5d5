import {
  climbDistance,
  CLIMB_DISTANCE_RANGE,
  climbDistanceM,
  climbDistanceMethod,
} from '../../mechanics/climb-distance';
import { toCanonical } from '../../readings/convert';
import { derive, measured, notMeasured, outOfRange, remarked, type Heading } from '../build';
import type { Context } from '../context';
import { draw } from '../draw';
import type { Finding } from '../finding';
import { keyInputsOf } from '../key-inputs';
import { along, percent } from '../words';
import { allOf, takenFrom } from './from-key-input';

/** Nobody reads an angle of attack on the ground. 5 mrad: the report's own worked value; engineering judgement. */
const ATTACK_RAD = toCanonical(5, 'mrad', 'angle');

/** Up to this share of draws beyond the table the result is still given, with the share. Engineering judgement. */
const TOLERATED_SHARE = 0.05;

/** Distance over which the flanging wheel must stay above its limit to climb, where the equation is tabulated. */
export function climbDistanceFindings(context: Context): readonly Finding[] {
  const inputs = keyInputsOf(context);
  const heading: Heading = {
    part: 'mechanics',
    method: climbDistanceMethod,
    what: 'climbDistance',
    title: 'Climb distance at an angle of attack of 5 mrad',
    subject: null,
    remarks: [
      'The angle of attack was not measured: 5 mrad is assumed (range of the table: ' +
        `${CLIMB_DISTANCE_RANGE.angleOfAttackMrad.join(' to ')} mrad). A larger one shortens the distance.`,
    ],
  };
  const needed = allOf({
    angle: [takenFrom(inputs.flangeAngle), 'flange angle of the flanging wheel of the first derailed axle'],
    length: [takenFrom(inputs.climbLength), 'flange length of the flanging wheel of the first derailed axle'],
  });
  if ('missing' in needed) return [notMeasured(heading, needed.missing)];
  const { angle, length } = needed.all;
  const formula = (a: number, len: number): number => climbDistanceM(a, len, ATTACK_RAD);
  const drawn = draw((v) => formula(v[0] ?? NaN, v[1] ?? NaN), [angle, length], context.seed);
  const asTaken = climbDistance(angle.value, length.value, ATTACK_RAD);
  if (asTaken.kind === 'outOfRange') return [outOfRange(heading, drawn.taken, asTaken.why)];
  if (drawn.outOfRange === 0) return [measured(heading, 'alongTrack', drawn.taken)];
  const share = `${percent(drawn.outOfRange)} of the draws lie beyond the range the equation is tabulated for`;
  const toFirstOrder = derive(formula, [angle, length]);
  if (drawn.outOfRange <= TOLERATED_SHARE && Number.isFinite(toFirstOrder.u)) {
    return [measured(heading, 'alongTrack', remarked(toFirstOrder, `${share}; uncertainty to first order.`))];
  }
  return [
    outOfRange(
      heading,
      drawn.taken,
      `At the readings as taken the distance would be ${along(asTaken.distanceM)}, but ${share}: no value is given. Measure flange angle and length more closely.`,
    ),
  ];
}
