import type { DraftView } from '~/app/components/traces/Draft';
import { outlinePlain, type DrawnOutline } from '~/lib/figures/outline-plain';
import { toSvg } from '~/lib/figures/svg';
import type { TracedShape } from '~/lib/case/trace';
import type { Outline } from '~/lib/outline/outline';
import type { Result } from '~/lib/readings/result';
import type { UnitSystem } from '~/lib/readings/unit';

const DRAFT_WIDTH = 520;

/** A line as it came, before it is kept, so that a wrong unit, column or side shows. */
function draftSvg(outline: Outline, shape: TracedShape, system: UnitSystem): string {
  const lines: readonly DrawnOutline[] = [{ outline, as: 'trace', label: 'as it came' }];
  return toSvg(
    outlinePlain(
      {
        title: `The ${shape} as it came`,
        description: `A line of ${outline.xMm.length} points, ${sizeText(outline)}, in its own frame.`,
        lines,
        axes: false,
        system,
      },
      { width: DRAFT_WIDTH },
    ),
  );
}

const span = (values: Float64Array): number => {
  let least = Infinity;
  let most = -Infinity;
  for (const value of values) {
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return values.length === 0 ? 0 : most - least;
};

/** "145.2 mm wide and 28.1 mm high". */
const sizeText = ({ xMm, yMm }: Outline): string =>
  `${span(xMm).toFixed(1)} mm wide and ${span(yMm).toFixed(1)} mm high`;

/** What a screen shows of a line that waits to be kept. */
export const draftView = (outline: Result<Outline>, shape: TracedShape, system: UnitSystem): DraftView =>
  outline.ok
    ? {
        ok: true,
        svg: draftSvg(outline.value, shape, system),
        points: outline.value.xMm.length,
        size: sizeText(outline.value),
      }
    : outline;
