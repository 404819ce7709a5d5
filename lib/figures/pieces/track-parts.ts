import type { Shape } from '../shapes';
import { place, type Placing } from './curve';
import { area, box, line, pen, type Point } from './draw';

/** A wooden tie seen from its side across the track, with a little grain. */
export function tieSide(x: number, y: number, width: number, height: number): Shape[] {
  return [
    box(x, y, width, height, { fill: 'shade', fillOpacity: 0.55, stroke: pen('faint', 1) }),
    line([x + width * 0.06, y + height * 0.45], [x + width * 0.4, y + height * 0.4], pen('faint', 0.6)),
    line([x + width * 0.5, y + height * 0.7], [x + width * 0.93, y + height * 0.66], pen('faint', 0.6)),
  ];
}

/** A tie seen from above; a defective one is crossed through. */
export function tieAbove(x: number, y: number, width: number, length: number, defective = false): Shape[] {
  return [
    box(x, y, width, length, { fill: 'shade', fillOpacity: 0.6, stroke: pen('faint', 0.9) }),
    ...(defective
      ? [
          line([x, y], [x + width, y + length], pen('warn', 1.4)),
          line([x + width, y], [x, y + length], pen('warn', 1.4)),
        ]
      : []),
  ];
}

/** Tie plate under a rail, mm, y down from its top between the shoulders; x from the middle of the rail. */
const PLATE: readonly Point[] = [
  [-165, 8],
  [-82, 2],
  [-82, -7],
  [-78, -7],
  [-78, 0],
  [78, 0],
  [78, -7],
  [82, -7],
  [82, 2],
  [165, 8],
  [165, 20],
  [-165, 20],
];

export const plateShape = (placing: Placing): Shape => area(place(PLATE, placing), 'paper', pen('ink', 1));

/** A cut spike, mm: head towards negative x over the rail base, shank down; origin at the shank under the head. */
const SPIKE: readonly Point[] = [
  [-24, -4],
  [-20, -15],
  [-4, -20],
  [11, -15],
  [11, -4],
  [8, 0],
  [8, 110],
  [0, 128],
  [-8, 110],
  [-8, 0],
];

export const spikeShape = (placing: Placing): Shape => area(place(SPIKE, placing), 'faint', pen('ink', 1));

/** Ballast level: a line with short slanting strokes below it, as on a section through earth. */
export function groundLine(x1: number, x2: number, y: number): Shape[] {
  const shapes: Shape[] = [line([x1, y], [x2, y], pen('faint', 1))];
  for (let x = x1 + 6; x < x2; x += 12) shapes.push(line([x, y], [x - 5, y + 6], pen('faint', 0.7)));
  return shapes;
}
