import { contactSetup } from '~/lib/contact/setup';
import { contactSweep, shiftsBetween } from '~/lib/contact/sweep';
import { resampled } from '~/lib/outline/resample';
import { lengthMm } from '~/lib/outline/arc';
import { outlineOf, type Outline } from '~/lib/outline/outline';
import { referenceShape } from '~/lib/shapes';
import { outlineOfShape } from '~/lib/shapes/shape';
import { bruteForce } from '~/tests/contact/brute-force';
import type { Measurement } from './measurement';

const POINTS = 500;
const ROUNDS = 30;
const SHIFTS = shiftsBetween(-10, 10, 0.1);
/** As fine as it has to be to place a contact within 0.01 mm. */
const CUT_MM = 0.02;

function withPoints(id: string): Outline {
  const shape = referenceShape(id);
  if (shape === null) throw new Error(`There is no shape ${id}.`);
  const fine = outlineOfShape(shape, 0.1, 'running');
  const { xMm, yMm } = resampled(fine, lengthMm(fine) / (POINTS - 1));
  return outlineOf(xMm, yMm);
}

/** Two new wheels on two new rails, from the outlines to every state of the sweep; the best of the rounds. */
export function contact(): readonly Measurement[] {
  const wheel = withPoints('s1002');
  const rail = withPoints('60e1');
  const common = { backToBackMm: 1360, gaugeMm: 1435, gaugeBelowTopMm: 14, rollingRadiusMm: 460 };
  const cantRad = 1 / 40;
  let sweepMs = Infinity;
  for (let round = 0; round < ROUNDS; round += 1) {
    const start = performance.now();
    const setup = contactSetup({
      left: { wheel, rail },
      right: { wheel, rail },
      cantLeftRad: cantRad,
      cantRightRad: cantRad,
      ...common,
    });
    if (!setup.ok) throw new Error(setup.message);
    const { states } = contactSweep(setup.value, SHIFTS);
    if (states.length !== SHIFTS.length) throw new Error('The sweep is not whole.');
    sweepMs = Math.min(sweepMs, performance.now() - start);
  }
  const start = performance.now();
  const side = { wheel, rail, cantRad };
  const brute = bruteForce({ left: side, right: side, ...common, cutMm: CUT_MM });
  for (const shiftMm of SHIFTS) brute.at(shiftMm);
  const bruteMs = performance.now() - start;
  return [
    {
      name: 'contact-sweep',
      value: sweepMs,
      floor: 50,
      unit: `ms for ${SHIFTS.length} shifts, two wheels and two rails of ${POINTS} points`,
    },
    {
      name: 'contact-vs-brute-force',
      value: bruteMs / sweepMs,
      floor: 20,
      atLeast: true,
      unit: `times faster than trying everything every ${CUT_MM} mm`,
    },
  ];
}
