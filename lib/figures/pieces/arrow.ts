import type { Ink, Shape } from '../shapes';
import { area, line, pen, type Point } from './draw';

/** A filled arrowhead with its tip at `tip`, pointing along `angle` (rad, clockwise from right). */
export function arrowHead(tip: Point, angle: number, ink: Ink, length = 7): Shape {
  const half = length * 0.32;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const corner = (side: number): Point => [
    tip[0] - length * cos - side * half * sin,
    tip[1] - length * sin + side * half * cos,
  ];
  return area([tip, corner(1), corner(-1)], ink);
}

export type ArrowStyle = {
  readonly ink?: Ink;
  readonly width?: number;
  readonly head?: number;
  readonly dash?: readonly number[];
};

/** An arrow from one point to another, with its head at the second. */
export function arrow(
  from: Point,
  to: Point,
  { ink = 'ink', width = 1.2, head = 7, dash }: ArrowStyle = {},
): Shape[] {
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const neck: Point = [to[0] - head * 0.8 * Math.cos(angle), to[1] - head * 0.8 * Math.sin(angle)];
  return [line(from, neck, pen(ink, width, dash)), arrowHead(to, angle, ink, head)];
}
