import { expect } from 'vitest';
import type { Figure } from '~/lib/figures/shapes';
import { documentTextWidth, pdfPrimitives } from './pdf-primitives';
import { svgPrimitives } from './svg-primitives';

/** Half a hundredth of a pixel of rounding on screen, and the printer's own. */
const ROUNDING = 0.011;

/** Fails unless screen and page draw the same primitives in the same order at the same places. */
export async function expectSamePicture(figure: Figure): Promise<void> {
  const page = await pdfPrimitives(figure);
  const screen = svgPrimitives(figure, documentTextWidth());
  expect(page.map(({ kind, points }) => `${kind} ${points.length}`)).toEqual(
    screen.map(({ kind, points }) => `${kind} ${points.length}`),
  );
  let furthest = 0;
  page.forEach(({ points }, i) =>
    points.forEach(([x, y], j) => {
      const [sx, sy] = screen[i]!.points[j]!;
      furthest = Math.max(furthest, Math.abs(x - sx), Math.abs(y - sy));
    }),
  );
  expect(furthest).toBeLessThan(ROUNDING);
}
