import { axleSumLimit, axleSumMethod } from '../../mechanics/axle-sum';
import { climbLimit, climbLimitMethod } from '../../mechanics/climb-limit';
import { measured, notMeasured, remarked, type Heading } from '../build';
import { climbContact } from '../contact/climb-contact';
import type { Context } from '../context';
import { draw } from '../draw';
import type { Finding, Method } from '../finding';
import { keyInputsOf } from '../key-inputs';
import type { Taken } from '../reading-index';
import { degreesText } from '../words';
import { takenFrom } from './from-key-input';

const DRY_FRICTION = 0.5;

export const dryClimbLimitMethod: Method = {
  ...climbLimitMethod,
  id: 'climb-limit-dry',
  name: 'Single-wheel climb limit if μ were 0.5',
  sources: [
    ...climbLimitMethod.sources,
    { text: 'μ = 0.5 for dry steel, as 49 CFR 213.333 has it', status: 'from memory' },
  ],
};

const FRICTION = 'friction of the gauge face near the POD';

/** L/V at which the flanging wheel can climb its rail: as measured, if the rail were dry, and summed over the axle. */
export function climbLimitFindings(context: Context): readonly Finding[] {
  const inputs = keyInputsOf(context);
  const flange = takenFrom(inputs.flangeAngle);
  const face = takenFrom(inputs.gaugeFaceAngle);
  const friction = takenFrom(inputs.gaugeFaceFriction);
  const top = takenFrom(inputs.topOfRailFriction);
  const heading = (what: string, title: string, method: Method): Heading => ({
    part: 'mechanics',
    what,
    title,
    method,
    subject: null,
  });
  const plain = heading('climbLimit', 'Climb limit of the flanging wheel, L/V', climbLimitMethod);
  const dry = heading(
    'climbLimitAtDryFriction',
    'Climb limit if µ were 0.5 (dry steel), L/V',
    dryClimbLimitMethod,
  );
  const axle = heading('axleSumLimit', 'Axle-sum climb limit, sum of L/V', axleSumMethod);
  if (flange === null) {
    const missing = ['flange angle of the flanging wheel of the first derailed axle'];
    const frictions = friction === null ? [FRICTION] : [];
    return [
      notMeasured(plain, [...missing, ...frictions]),
      notMeasured(dry, missing),
      notMeasured(axle, [...missing, ...frictions, ...topMissing(top)]),
    ];
  }
  const contact = angleOf(context, flange, face);
  const angles: readonly [Taken, ...Taken[]] = contact.inputs;
  const count = angles.length;
  const angleIn = (values: ArrayLike<number>): number =>
    count === 2 ? Math.min(values[0] ?? NaN, values[1] ?? NaN) : (values[0] ?? NaN);
  const say = (taken: Taken): Taken => remarked(taken, contact.remark);
  return [
    friction === null
      ? notMeasured(plain, [FRICTION])
      : measured(
          plain,
          'ratio',
          say(
            draw((v) => climbLimit(angleIn(v), v[count] ?? NaN), [...angles, friction], context.seed).taken,
          ),
        ),
    measured(
      dry,
      'ratio',
      remarked(
        say(draw((v) => climbLimit(angleIn(v), DRY_FRICTION), angles, context.seed).taken),
        'Conditional: what the limit would be on a dry gauge face. It is not a measurement of the friction.',
      ),
    ),
    friction === null || top === null
      ? notMeasured(axle, [...(friction === null ? [FRICTION] : []), ...topMissing(top)])
      : measured(
          axle,
          'ratio',
          say(
            draw(
              (v) => axleSumLimit(angleIn(v), v[count] ?? NaN, v[count + 1] ?? NaN),
              [...angles, friction, top],
              context.seed,
            ).taken,
          ),
        ),
  ];
}

const topMissing = (top: Taken | null): readonly string[] =>
  top === null ? ['friction of the top of the other rail near the POD'] : [];

/** The contact angle of the outlines, unless a flange read apart from them is shallower still. */
function angleOf(context: Context, flange: Taken, face: Taken | null): ReturnType<typeof contactOf> {
  const traced = climbContact(context);
  if (traced.kind === 'missing') return contactOf(flange, face);
  const { taken, wheel } = traced;
  // Angles of one outline err together: drawn apart, the smaller of the two would come out too small.
  const same = flange.readings.includes(wheel.trace.id);
  const angle = same ? taken.value : Math.min(flange.value, taken.value);
  return {
    inputs: same ? [taken] : [flange, taken],
    remark:
      angle < taken.value
        ? `Contact angle ${degreesText(angle)}: the flange as read, shallower than the contact of the outlines of wheel and rail.`
        : `Contact angle ${degreesText(angle)}, of the outlines of wheel and rail on each other.`,
  };
}

/** The shallower of flange and gauge face governs where they touch. */
function contactOf(
  flange: Taken,
  face: Taken | null,
): { readonly inputs: readonly [Taken, ...Taken[]]; readonly remark: string } {
  if (face === null) {
    return {
      inputs: [flange],
      remark:
        'Contact angle taken as the flange angle: the gauge face was not measured, and one worn flatter would lower the limit.',
    };
  }
  const governs = face.value < flange.value ? 'gauge face' : 'flange';
  return {
    inputs: [flange, face],
    remark: `Contact angle ${degreesText(Math.min(flange.value, face.value))}: the ${governs} is the shallower of the two.`,
  };
}
