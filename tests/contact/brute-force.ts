import type { Outline } from '~/lib/outline/outline';

/**
 * Contact by trying everything, to hold the quick search against: outlines cut into pieces of `cutMm`,
 * the roll found by halving, and at every roll every point of both wheels held over its rail. Shares
 * nothing with the search but the frames of the outlines.
 */
export type BruteSide = { readonly wheel: Outline; readonly rail: Outline; readonly cantRad: number };
export type BruteInput = {
  readonly left: BruteSide;
  readonly right: BruteSide;
  readonly backToBackMm: number;
  readonly gaugeMm: number;
  readonly gaugeBelowTopMm: number;
  readonly rollingRadiusMm: number;
  readonly cutMm: number;
};

type Ready = {
  readonly u: number[];
  readonly v: number[];
  /** Rail heights at x = from + i·cell. */
  readonly from: number;
  readonly cell: number;
  readonly heights: Float64Array;
};

export type BruteState = {
  readonly heightMm: number;
  readonly rollRad: number;
  readonly left: BruteContact;
  readonly right: BruteContact;
  readonly radiusDifferenceMm: number;
};

export type BruteContact = {
  readonly wheelXMm: number;
  readonly radiusMm: number;
  readonly railHeightMm: number;
  /** Distance along x between the outermost places that lie within 0.001 mm of touching. */
  readonly spreadMm: number;
};

function cut({ xMm, yMm }: Outline, cutMm: number): { u: number[]; v: number[] } {
  const u: number[] = [];
  const v: number[] = [];
  for (let i = 0; i + 1 < xMm.length; i += 1) {
    const [x0, y0, x1, y1] = [xMm[i]!, yMm[i]!, xMm[i + 1]!, yMm[i + 1]!];
    const pieces = Math.max(1, Math.ceil(Math.sqrt((x1 - x0) ** 2 + (y1 - y0) ** 2) / cutMm));
    for (let j = 0; j < pieces; j += 1) {
      u.push(x0 + ((x1 - x0) * j) / pieces);
      v.push(y0 + ((y1 - y0) * j) / pieces);
    }
  }
  u.push(xMm[xMm.length - 1]!);
  v.push(yMm[yMm.length - 1]!);
  return { u, v };
}

function ready(side: BruteSide, input: BruteInput): Ready {
  const wheel = cut(side.wheel, input.cutMm);
  const rail = cut(side.rail, input.cutMm);
  const x = rail.u.map((a, i) => a * Math.cos(side.cantRad) - rail.v[i]! * Math.sin(side.cantRad));
  const y = rail.u.map((a, i) => a * Math.sin(side.cantRad) + rail.v[i]! * Math.cos(side.cantRad));
  let top = -Infinity;
  for (const one of y) top = Math.max(top, one);
  let face = Infinity;
  for (let i = 0; i + 1 < x.length; i += 1) {
    const [a, b] = [y[i]! - top + input.gaugeBelowTopMm, y[i + 1]! - top + input.gaugeBelowTopMm];
    if (a < 0 !== b < 0) face = Math.min(face, x[i]! + ((x[i + 1]! - x[i]!) * a) / (a - b));
  }
  const move = input.gaugeMm / 2 - face;
  const cell = input.cutMm / 2;
  const from = x.reduce((a, b) => Math.min(a, b), Infinity) + move;
  const to = x.reduce((a, b) => Math.max(a, b), -Infinity) + move;
  const heights = new Float64Array(Math.floor((to - from) / cell) + 1).fill(-Infinity);
  for (let i = 0; i + 1 < x.length; i += 1) {
    const [xa, xb] = [x[i]! + move, x[i + 1]! + move];
    const first = Math.max(0, Math.ceil((Math.min(xa, xb) - from) / cell));
    const last = Math.min(heights.length - 1, Math.floor((Math.max(xa, xb) - from) / cell));
    for (let k = first; k <= last; k += 1) {
      const share = xa === xb ? 0 : (from + k * cell - xa) / (xb - xa);
      heights[k] = Math.max(heights[k]!, y[i]! - top + (y[i + 1]! - y[i]!) * share);
    }
  }
  return { u: wheel.u.map((a) => a + input.backToBackMm / 2), v: wheel.v, from, cell, heights };
}

/** Height at which point `i` touches; −∞ when it is not over the rail. */
function touches(side: Ready, i: number, shift: number, roll: number): number {
  const x = side.u[i]!;
  const y = -side.v[i]!;
  const at = (x * Math.cos(roll) - y * Math.sin(roll) + shift - side.from) / side.cell;
  const k = Math.floor(at);
  if (k < 0 || k + 1 >= side.heights.length) return -Infinity;
  const height = side.heights[k]! * (1 - (at - k)) + side.heights[k + 1]! * (at - k);
  return height - (x * Math.sin(roll) + y * Math.cos(roll));
}

function stand(side: Ready, shift: number, roll: number): { height: number; point: number } {
  let height = -Infinity;
  let point = -1;
  for (let i = 0; i < side.u.length; i += 1) {
    const z = touches(side, i, shift, roll);
    if (z > height) [height, point] = [z, i];
  }
  return { height, point };
}

const NEARLY_MM = 0.001;

export function bruteForce(input: BruteInput): {
  readonly at: (shiftMm: number) => BruteState;
  /** Open height under the right wheel at `wheelXMm` from its flange back, in a state. */
  readonly openUnder: (
    side: 'left' | 'right',
    state: BruteState,
    shiftMm: number,
    wheelXMm: number,
  ) => number;
} {
  const left = ready(input.left, input);
  const right = ready(input.right, input);
  const contact = (side: Ready, shift: number, roll: number): BruteContact => {
    const { height, point } = stand(side, shift, roll);
    let [low, high] = [Infinity, -Infinity];
    for (let i = 0; i < side.u.length; i += 1) {
      if (touches(side, i, shift, roll) < height - NEARLY_MM) continue;
      low = Math.min(low, side.u[i]!);
      high = Math.max(high, side.u[i]!);
    }
    const [x, y] = [side.u[point]!, -side.v[point]!];
    return {
      wheelXMm: x - input.backToBackMm / 2,
      radiusMm: input.rollingRadiusMm + side.v[point]!,
      railHeightMm: height + x * Math.sin(roll) + y * Math.cos(roll),
      spreadMm: high - low,
    };
  };
  return {
    at: (shiftMm) => {
      let [low, high] = [-0.05, 0.05];
      let heightMm = 0;
      // 0.1 rad halved 33 times: 1e-11 rad, 1e-8 mm at the wheel.
      for (let step = 0; step < 33; step += 1) {
        const roll = (low + high) / 2;
        const l = stand(left, -shiftMm, -roll).height;
        const r = stand(right, shiftMm, roll).height;
        if (r > l) low = roll;
        else high = roll;
        heightMm = (l + r) / 2;
      }
      const rollRad = (low + high) / 2;
      const l = contact(left, -shiftMm, -rollRad);
      const r = contact(right, shiftMm, rollRad);
      return { heightMm, rollRad, left: l, right: r, radiusDifferenceMm: r.radiusMm - l.radiusMm };
    },
    openUnder: (side, state, shiftMm, wheelXMm) => {
      const own = side === 'right' ? right : left;
      const [shift, roll] = side === 'right' ? [shiftMm, state.rollRad] : [-shiftMm, -state.rollRad];
      let nearest = 0;
      const at = wheelXMm + input.backToBackMm / 2;
      for (let i = 0; i < own.u.length; i += 1) {
        if (Math.abs(own.u[i]! - at) < Math.abs(own.u[nearest]! - at)) nearest = i;
      }
      return state.heightMm - touches(own, nearest, shift, roll);
    },
  };
}
