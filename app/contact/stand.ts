import { flangeClearance, type FlangeClearance } from '~/lib/contact/clearance';
import { equivalentConicity, NOMINAL_AMPLITUDE_MM } from '~/lib/contact/conicity';
import { flangeContactAngle, type FlangeContactAngle } from '~/lib/contact/flange-angle';
import { likelySweep, loadedPart, type LoadedPart } from '~/lib/contact/loaded-part';
import { contactSetup, type ContactSetup } from '~/lib/contact/setup';
import { contactSweep, shiftsBetween, type ContactSweep } from '~/lib/contact/sweep';
import { outlineOf } from '~/lib/outline/outline';
import { ok, refuse, type Result } from '~/lib/readings/result';
import type { SentContact } from './view.server';

type Sides<T> = { readonly left: T; readonly right: T };

/** A wheelset on its rails with everything that is shown of it. */
export type Stood = {
  readonly setup: ContactSetup;
  readonly sweep: ContactSweep;
  readonly clearance: Result<FlangeClearance>;
  readonly conicity: Result<number>;
  readonly flangeAngle: Sides<Result<FlangeContactAngle>>;
  readonly loaded: Sides<Result<LoadedPart>>;
  /** Shifts between which the wheelset can be moved on the screen, mm. */
  readonly fromMm: number;
  readonly toMm: number;
};

const STEP_MM = 0.25;
/** How far beyond flange contact the wheelset can be moved, so that a flange is seen climbing. */
const BEYOND_MM = 8;
const WITHOUT_CLEARANCE_MM = 10;

/** Stands the wheelset on its rails; says what does not fit. */
export function stand({ left, right, ...rest }: SentContact): Result<Stood> {
  const side = ({ wheel, rail }: SentContact['left']) => ({
    wheel: outlineOf(wheel.xMm, wheel.yMm),
    rail: outlineOf(rail.xMm, rail.yMm),
  });
  const setup = contactSetup({ ...rest, left: side(left), right: side(right) });
  if (!setup.ok) return setup;
  const clearance = flangeClearance(setup.value);
  const fromMm = -Math.ceil((clearance.ok ? clearance.value.leftMm : WITHOUT_CLEARANCE_MM) + BEYOND_MM);
  const toMm = Math.ceil((clearance.ok ? clearance.value.rightMm : WITHOUT_CLEARANCE_MM) + BEYOND_MM);
  const shifts = shiftsBetween(fromMm, toMm, STEP_MM);
  const sweep = contactSweep(setup.value, shifts);
  if (sweep.states.length === 0)
    return refuse(sweep.refused[0]?.message ?? 'The wheelset does not stand on these rails at any shift.');
  const likely = likelySweep(setup.value);
  const of = (which: 'left' | 'right') => (likely.ok ? loadedPart(likely.value, which) : likely);
  return ok({
    setup: setup.value,
    sweep,
    clearance,
    // A wheelset of unlike wheels swings about a place off the middle, so the sweep is a wide one.
    conicity: equivalentConicity(
      contactSweep(setup.value, shifts, { roll: 'neglected' }),
      NOMINAL_AMPLITUDE_MM,
    ),
    flangeAngle: {
      left: flangeContactAngle(setup.value, 'left'),
      right: flangeContactAngle(setup.value, 'right'),
    },
    loaded: { left: of('left'), right: of('right') },
    fromMm: sweep.states[0]?.shiftMm ?? fromMm,
    toMm: sweep.states.at(-1)?.shiftMm ?? toMm,
  });
}
