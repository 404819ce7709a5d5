import { contactSetup, type ContactInput, type ContactSetup } from '~/lib/contact/setup';
import { contactAt, type ContactOptions, type ContactState } from '~/lib/contact/state';
import { outlineOf, type Outline } from '~/lib/outline/outline';
import { referenceShape } from '~/lib/shapes';
import { outlineOfShape } from '~/lib/shapes/shape';

export function shapeOutline(id: string, stepMm: number): Outline {
  const shape = referenceShape(id);
  if (shape === null) throw new Error(`There is no shape ${id}.`);
  return outlineOfShape(shape, stepMm, 'running');
}

/** A wheelset with the same wheel and rail on both sides, standard gauge at 14 mm, back-to-back 1360 mm. */
export function pair(wheel: Outline, rail: Outline, changes: Partial<ContactInput> = {}): ContactInput {
  return {
    left: { wheel, rail },
    right: { wheel, rail },
    backToBackMm: 1360,
    gaugeMm: 1435,
    gaugeBelowTopMm: 14,
    cantLeftRad: 0,
    cantRightRad: 0,
    rollingRadiusMm: 460,
    ...changes,
  };
}

export function standing(input: ContactInput): ContactSetup {
  const setup = contactSetup(input);
  if (!setup.ok) throw new Error(setup.message);
  return setup.value;
}

export function stateAt(setup: ContactSetup, shiftMm: number, options?: ContactOptions): ContactState {
  const state = contactAt(setup, shiftMm, options);
  if (!state.ok) throw new Error(state.message);
  return state.value;
}

/** A line through y(x) from one x to another. */
export function lineOf(fromMm: number, toMm: number, stepMm: number, y: (x: number) => number): Outline {
  const n = Math.round((toMm - fromMm) / stepMm);
  const xs = Array.from({ length: n + 1 }, (_, i) => fromMm + ((toMm - fromMm) * i) / n);
  return outlineOf(xs, xs.map(y));
}

/** A cone without a flange, its radius smaller towards the field side by `slope`. */
export const cone = (slope: number): Outline => lineOf(5, 135, 0.25, (x) => -slope * (x - 70));
