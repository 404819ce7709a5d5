import type { Outline } from '../outline/outline';
import { outlineOfShape, type ReferenceShape } from './shape';

const drawn = new Map<ReferenceShape, Outline>();

/** The whole of a shape as one outline, the same object every time: what is made ready from it is kept with it. */
export function wholeOutline(shape: ReferenceShape): Outline {
  const known = drawn.get(shape);
  if (known !== undefined) return known;
  const outline = outlineOfShape(shape);
  drawn.set(shape, outline);
  return outline;
}
