import type { Figure, Shape } from '../shapes';

/** Every how-to drawing has one size, so that they sit evenly beside their words. */
export const SKETCH_WIDTH = 320;
export const SKETCH_HEIGHT = 200;

export const sketch = (title: string, description: string, shapes: readonly Shape[]): Figure => ({
  width: SKETCH_WIDTH,
  height: SKETCH_HEIGHT,
  title,
  description,
  shapes,
});
