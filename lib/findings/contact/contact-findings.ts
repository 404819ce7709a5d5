import { clearanceMethod } from '../../contact/clearance';
import { conicityMethod, NOMINAL_AMPLITUDE_MM } from '../../contact/conicity';
import { flangeContactAngleMethod } from '../../contact/flange-angle';
import { headPartMethod } from '../../contact/head-part';
import { contactMethod } from '../../contact/state';
import { measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, Method } from '../finding';
import type { Taken } from '../reading-index';
import { climbContact } from './climb-contact';
import { standOf, type Stand } from './stand';

const SIDES = ['left', 'right'] as const;
/** Which positions are likely is itself judged. */
const U_LIKELY_SHARE = 0.05;

const heading = (what: string, title: string, method: Method, slot?: string): Heading => ({
  part: 'mechanics',
  what,
  title,
  method,
  subject: null,
  slot,
});

/** How wheel and rail as traced meet: contact angle of a climbing flange, clearance, conicity, and where the heads are loaded. */
export const contactFindings = (context: Context): readonly Finding[] => [
  contactAngle(context),
  ...standFindings(context),
];

function contactAngle(context: Context): Finding {
  const about = heading(
    'climbContactAngle',
    'Contact angle the flanging wheel has to pass to climb',
    flangeContactAngleMethod,
  );
  const found = climbContact(context);
  return found.kind === 'missing' ? notMeasured(about, found.missing) : measured(about, 'angle', found.taken);
}

function standFindings(context: Context): readonly Finding[] {
  const stand = standOf(context);
  const clearance = heading('flangeClearance', 'Flange clearance, both sides together', clearanceMethod);
  if (stand.kind === 'missing') return [notMeasured(clearance, stand.missing)];
  const { standing } = stand;
  const taken = (value: number, u: number, ...remarks: readonly string[]): Taken => ({
    value,
    u,
    readings: stand.readings,
    remarks: [...stand.remarks, ...remarks],
  });
  const flangeNoise = Math.hypot(
    ...SIDES.map((side) => stand.noise(side, 'wheel', 'flangeThicknessNa')),
    ...SIDES.map((side) => stand.noise(side, 'rail', 'gaugeFaceLoss')),
  );
  const whole = stand.of(({ leftMm, rightMm }) => leftMm + rightMm, flangeNoise);
  return [
    measured(clearance, 'crossLength', taken(whole.value, whole.u)),
    ...radiusDifference(context, stand, taken),
    conicity(stand, taken),
    ...SIDES.map((side) => {
      const share = stand.of((each) => each[side].fieldSide, U_LIKELY_SHARE);
      return measured(
        heading(
          'fieldSideShare',
          `Share of the likely positions at which the ${side} rail is loaded on its field side`,
          headPartMethod,
          side,
        ),
        'ratio',
        taken(
          share.value,
          share.u,
          `Places of contact from ${standing[side].twoPoint > 0 ? 'one- and two-point' : 'one-point'} contact between the middle of the track and the flanging rail.`,
        ),
      );
    }),
  ];
}

type Standing = Extract<Stand, { kind: 'stands' }>;
type Take = (value: number, u: number, ...remarks: readonly string[]) => Taken;

/** Rolling radius of the flanging wheel less that of its mate, at flange contact. */
function radiusDifference({ sides }: Context, stand: Standing, taken: Take): readonly Finding[] {
  const { flanging } = sides;
  if (flanging === null) return [];
  const difference = stand.of(
    ({ radiusLeftMm, radiusRightMm }) => (flanging === 'right' ? radiusRightMm : radiusLeftMm),
    Math.hypot(...SIDES.map((side) => stand.noise(side, 'wheel', 'flangeHeight'))),
  );
  return [
    measured(
      heading(
        'radiusDifferenceAtFlange',
        'Rolling radius of the flanging wheel less that of its mate, at flange contact',
        contactMethod,
      ),
      'crossLength',
      taken(
        difference.value,
        difference.u,
        'The larger it is, the better the axle can steer; wheels of equal diameter are assumed.',
      ),
    ),
  ];
}

function conicity(stand: Standing, taken: Take): Finding {
  const about = heading(
    'equivalentConicity',
    `Equivalent conicity at ${NOMINAL_AMPLITUDE_MM} mm`,
    conicityMethod,
  );
  if (stand.standing.conicity === null) return notMeasured(about, [stand.standing.whyNoConicity]);
  const slopes = Math.hypot(...SIDES.map((side) => stand.noise(side, 'wheel', 'treadSlope'))) / 2;
  const { value, u } = stand.of(({ conicity: each }) => each ?? stand.standing.conicity ?? 0, slopes);
  return measured(
    about,
    'ratio',
    taken(value, u, 'Uncertainty from the slopes of both treads, gauge and cant.'),
  );
}
