import type { Shape } from '../shapes';

/** The same shape, moved by dx to the right and dy down. */
export function moved(shape: Shape, dx: number, dy: number): Shape {
  switch (shape.type) {
    case 'line':
      return { ...shape, x1: shape.x1 + dx, x2: shape.x2 + dx, y1: shape.y1 + dy, y2: shape.y2 + dy };
    case 'polyline':
      return { ...shape, points: shape.points.map((value, i) => value + (i % 2 === 0 ? dx : dy)) };
    case 'circle':
      return { ...shape, cx: shape.cx + dx, cy: shape.cy + dy };
    case 'rect':
    case 'text':
      return { ...shape, x: shape.x + dx, y: shape.y + dy };
    case 'group':
      return { ...shape, shapes: shape.shapes.map((each) => moved(each, dx, dy)) };
  }
}
