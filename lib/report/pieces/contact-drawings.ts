import { clearanceMethod, flangeClearance } from '../../contact/clearance';
import { conicityMethod, equivalentConicity } from '../../contact/conicity';
import { headPartMethod } from '../../contact/head-part';
import { contactSetup, type ContactSetup, type Side } from '../../contact/setup';
import { contactAt } from '../../contact/state';
import { contactSweep, shiftsBetween } from '../../contact/sweep';
import { contactCurves } from '../../figures/contact-curves';
import { contactPicture } from '../../figures/contact-picture';
import { tracedRail, tracedWheel, wanting } from '../../findings/contact/traced-shape';
import { gaugeBelowTopMm, usual, USUAL_RADIUS_MM } from '../../findings/contact/usual';
import type { Method } from '../../findings/finding';
import { keyInputsOf } from '../../findings/key-inputs';
import { railReading } from '../../findings/rail-place';
import { formatMeasure } from '../../readings/format';
import { ok, refuse, type Result } from '../../readings/result';
import { faint } from '../type/inline';
import type { Report } from '../report';
import type { Writer } from '../writer';

export const CONTACT_METHODS: readonly Method[] = [clearanceMethod, conicityMethod, headPartMethod];

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

const SIDES = ['left', 'right'] as const;

/**
 * The outlines that the findings stand on each other, with the gauge and back-to-back they take; says
 * what is missing.
 */
function standOf({ context, findings, system }: Report): Result<Stand> {
  const inputs = keyInputsOf(context);
  const [back, gauge] = [inputs.backToBackMin.measured, inputs.gaugeStanding.measured];
  const [leftWheel, rightWheel] = [tracedWheel(context, 'left'), tracedWheel(context, 'right')];
  const [leftRail, rightRail] = [tracedRail(context, 'left'), tracedRail(context, 'right')];
  if (
    leftWheel === null ||
    rightWheel === null ||
    leftRail === null ||
    rightRail === null ||
    back === null ||
    gauge === null
  ) {
    const missing = [
      ...(leftWheel === null ? [wanting('left', 'wheel')] : []),
      ...(leftRail === null ? [wanting('left', 'rail')] : []),
      ...(rightWheel === null ? [wanting('right', 'wheel')] : []),
      ...(rightRail === null ? [wanting('right', 'rail')] : []),
      ...(back === null ? ['back-to-back of the wheelset'] : []),
      ...(gauge === null ? ['gauge at the POD'] : []),
    ];
    return refuse(`Contact between wheels and rails was not computed; missing: ${missing.join(', ')}.`);
  }
  const read = {
    left: railReading(context, 'left', 'railCant')?.taken.value ?? null,
    right: railReading(context, 'right', 'railCant')?.taken.value ?? null,
  };
  const cantRad = (side: Side): number => read[side] ?? usual('railCant').value;
  const diameters = findings.flatMap((finding) =>
    finding.what === 'wheelDiameter' &&
    finding.kind === 'measured' &&
    finding.subject?.id === context.first.wheelset?.entity.id
      ? [finding.value]
      : [],
  );
  const setup = contactSetup({
    left: { wheel: leftWheel.outline, rail: leftRail.outline },
    right: { wheel: rightWheel.outline, rail: rightRail.outline },
    backToBackMm: back.value,
    gaugeMm: gauge.value,
    gaugeBelowTopMm: gaugeBelowTopMm(context),
    cantLeftRad: cantRad('left'),
    cantRightRad: cantRad('right'),
    rollingRadiusMm:
      diameters.length === 0
        ? USUAL_RADIUS_MM
        : diameters.reduce((sum, each) => sum + each, 0) / diameters.length / 2,
  });
  if (!setup.ok) return setup;
  const size = (mm: number): string =>
    formatMeasure(mm, { dimension: 'crossLength', system, form: 'decimal' });
  const degrees = (rad: number): string => `${(rad * IN_DEGREES).toFixed(1).replace('-', '−')}°`;
  return ok({
    setup: setup.value,
    on: [
      `Back-to-back ${size(back.value)}, standing gauge ${size(gauge.value)}.`,
      ...SIDES.map((side) =>
        read[side] === null
          ? `Cant of the ${side} rail not read: ${degrees(cantRad(side))} inward, the middle of the usual range.`
          : `Cant of the ${side} rail ${degrees(cantRad(side))} inward.`,
      ),
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
