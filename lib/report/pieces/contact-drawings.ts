import { clearanceMethod, flangeClearance } from '../../contact/clearance';
import { conicityMethod, equivalentConicity } from '../../contact/conicity';
import { headPartMethod } from '../../contact/head-part';
import {
  contactSetup,
  GAUGE_BELOW_TOP_EN_MM,
  GAUGE_BELOW_TOP_US_MM,
  type ContactSetup,
} from '../../contact/setup';
import { contactAt } from '../../contact/state';
import { contactSweep, shiftsBetween } from '../../contact/sweep';
import { contactCurves } from '../../figures/contact-curves';
import { contactPicture } from '../../figures/contact-picture';
import type { Method } from '../../findings/finding';
import { keyInputsOf } from '../../findings/key-inputs';
import { formatMeasure } from '../../readings/format';
import { ok, refuse, type Result } from '../../readings/result';
import { tracedOutline } from '../../shapes/traced-outline';
import { faint } from '../type/inline';
import type { Report } from '../report';
import type { Writer } from '../writer';
import { latest, tracedRails, tracedWheels, type TracedThing } from './traced-shapes';

export const CONTACT_METHODS: readonly Method[] = [clearanceMethod, conicityMethod, headPartMethod];

/** Taken where no diameter of the wheelset was found; it changes the roll angles by less than their last digit. */
const USUAL_RADIUS_MM = 18 * 25.4;
const REACH_MM = 10;
/** A clearance is found to 0.0001 mm: a hair beyond it the flange bears. */
const BEARS_MM = 0.01;
/** How far beyond flange contact the curves go. */
const BEYOND_MM = 3;
const STEP_MM = 0.1;
const IN_DEGREES = 180 / Math.PI;

type Stand = {
  readonly setup: ContactSetup;
  /** What it stands on: values read and values taken for granted, a sentence each. */
  readonly on: readonly string[];
};

const onSide = (things: readonly TracedThing[], side: 'left' | 'right'): TracedThing | undefined =>
  things.find((each) => each.side === side);

/** The first derailed wheelset as traced on the rails as traced; says what is missing. */
function standOf({ context, findings, system, record }: Report): Result<Stand> {
  const [wheels, rails] = [tracedWheels(context), tracedRails(context)];
  const inputs = keyInputsOf(context);
  const [back, gauge] = [inputs.backToBackMin.measured, inputs.gaugeStanding.measured];
  const missing = [
    ...(['left', 'right'] as const).flatMap((side) => [
      ...(onSide(wheels, side) === undefined ? [`a trace of the ${side} wheel`] : []),
      ...(onSide(rails, side) === undefined ? [`a trace of the ${side} rail`] : []),
    ]),
    ...(back === null ? ['back-to-back of the wheelset'] : []),
    ...(gauge === null ? ['gauge at the POD'] : []),
  ];
  if (missing.length > 0 || back === null || gauge === null) {
    return refuse(`Contact between wheels and rails was not computed; missing: ${missing.join(', ')}.`);
  }
  const { outer } = context.sides;
  const cant = (side: 'left' | 'right'): number | null =>
    outer === null
      ? null
      : (inputs[outer === side ? 'railCantOuter' : 'railCantInner'].measured?.value ?? null);
  const diameters = findings.flatMap((finding) =>
    finding.what === 'wheelDiameter' &&
    finding.kind === 'measured' &&
    finding.subject?.id === context.first.wheelset?.entity.id
      ? [finding.value]
      : [],
  );
  const radius =
    diameters.length === 0
      ? USUAL_RADIUS_MM
      : diameters.reduce((sum, each) => sum + each, 0) / diameters.length / 2;
  const outlineOn = (things: readonly TracedThing[], side: 'left' | 'right') => {
    const found = onSide(things, side);
    return found === undefined
      ? refuse(`The ${side} side was not traced.`)
      : tracedOutline(record, latest(found));
  };
  const lines = [
    outlineOn(wheels, 'left'),
    outlineOn(rails, 'left'),
    outlineOn(wheels, 'right'),
    outlineOn(rails, 'right'),
  ] as const;
  const [leftWheel, leftRail, rightWheel, rightRail] = lines;
  if (!leftWheel.ok) return leftWheel;
  if (!leftRail.ok) return leftRail;
  if (!rightWheel.ok) return rightWheel;
  if (!rightRail.ok) return rightRail;
  const setup = contactSetup({
    left: { wheel: leftWheel.value, rail: leftRail.value },
    right: { wheel: rightWheel.value, rail: rightRail.value },
    backToBackMm: back.value,
    gaugeMm: gauge.value,
    gaugeBelowTopMm: system === 'us' ? GAUGE_BELOW_TOP_US_MM : GAUGE_BELOW_TOP_EN_MM,
    cantLeftRad: cant('left') ?? 0,
    cantRightRad: cant('right') ?? 0,
    rollingRadiusMm: radius,
  });
  if (!setup.ok) return setup;
  const size = (mm: number): string =>
    formatMeasure(mm, { dimension: 'crossLength', system, form: 'decimal' });
  return ok({
    setup: setup.value,
    on: [
      `Back-to-back ${size(back.value)}, standing gauge ${size(gauge.value)}.`,
      ...(['left', 'right'] as const).map((side) => {
        const read = cant(side);
        return read === null
          ? `Cant of the ${side} rail not read: drawn upright.`
          : `Cant of the ${side} rail ${(read * IN_DEGREES).toFixed(1).replace('-', '−')}° inward.`;
      }),
      ...(diameters.length === 0 ? ['Wheel diameter not found: 36 in taken.'] : []),
    ],
  });
}

/** Where wheels and rails touch: centred and with each flange at its rail; and the curves over the shift. */
export function contactDrawings(report: Report, writer: Writer): void {
  const stand = standOf(report);
  if (!stand.ok) return writer.text([faint(stand.message)]);
  const { setup, on } = stand.value;
  const { system } = report;
  const width = Math.floor(writer.width() / 0.75);
  const clearance = flangeClearance(setup);
  writer.text(
    `The first derailed wheelset as traced, standing square on the rails as traced, rigid and without load. ${on.join(' ')}`,
    { leadsTo: true },
  );
  const positions = [
    { shiftMm: 0, position: 'centred' },
    ...(clearance.ok
      ? [
          { shiftMm: -clearance.value.leftMm - BEARS_MM, position: 'left flange begins to bear' },
          { shiftMm: clearance.value.rightMm + BEARS_MM, position: 'right flange begins to bear' },
        ]
      : []),
  ];
  for (const { shiftMm, position } of positions) {
    const state = contactAt(setup, shiftMm);
    if (state.ok) {
      writer.figure(
        contactPicture({ setup, state: state.value, system, position }, { width }),
        `Contact between wheels and rails, wheelset ${position}.`,
      );
    } else writer.text([faint(`Wheelset ${position}: ${state.message}`)]);
  }
  const reach = clearance.ok
    ? Math.max(REACH_MM, Math.ceil(Math.max(clearance.value.leftMm, clearance.value.rightMm) + BEYOND_MM))
    : REACH_MM;
  const shifts = shiftsBetween(-reach, reach, STEP_MM);
  const sweep = contactSweep(setup, shifts);
  if (sweep.states.length < 2) return;
  writer.figure(
    contactCurves(
      {
        system,
        sweep,
        clearance: clearance.ok ? clearance.value : null,
        conicity: equivalentConicity(contactSweep(setup, shifts, { roll: 'neglected' })),
      },
      { width },
    ),
    'Rolling-radius difference and contact angles over the lateral shift of the wheelset.',
  );
  if (!clearance.ok) writer.text([faint(clearance.message)]);
}
