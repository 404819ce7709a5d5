import { outlineOf, type Outline } from '../outline/outline';
import { railPointInSide, type ContactSetup, type Side } from './setup';
import { type ContactState } from './state';

/** The outlines as given, where they stand: x to the right, y up, origin midway between the rails at their top. */
export type PlacedOutlines = {
  readonly left: { readonly wheel: Outline; readonly rail: Outline };
  readonly right: { readonly wheel: Outline; readonly rail: Outline };
};

/** Wheels and rails of a state, to be drawn, in mm; `ContactPoint.at` lies in the same frame. */
export const placedOutlines = (setup: ContactSetup, state: ContactState): PlacedOutlines => ({
  left: placedSide(setup, state, 'left'),
  right: placedSide(setup, state, 'right'),
});

function placedSide(setup: ContactSetup, state: ContactState, side: Side) {
  const { input, railPlacing, rollingRadiusMm } = setup[side];
  const outward = side === 'right' ? 1 : -1;
  const rollRad = outward * state.rollRad;
  const [cos, sin] = [Math.cos(rollRad), Math.sin(rollRad)];
  const wheel = mapped(input.wheel, (u, v) => {
    const x = setup.backToBackMm / 2 + u;
    const y = setup.rollingRadiusMm - rollingRadiusMm - v;
    return [state.shiftMm + outward * (x * cos - y * sin), state.heightMm + x * sin + y * cos];
  });
  const rail = mapped(input.rail, (x, y) => {
    const point = railPointInSide({ xMm: x, yMm: y }, railPlacing);
    return [outward * point.xMm, point.yMm];
  });
  return { wheel, rail };
}

function mapped({ xMm, yMm }: Outline, to: (xMm: number, yMm: number) => readonly [number, number]): Outline {
  const moved = outlineOf(new Float64Array(xMm.length), new Float64Array(xMm.length));
  for (let i = 0; i < xMm.length; i += 1) {
    const [x, y] = to(xMm[i]!, yMm[i]!);
    moved.xMm[i] = x;
    moved.yMm[i] = y;
  }
  return moved;
}
