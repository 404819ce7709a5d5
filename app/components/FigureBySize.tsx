import { FIGURE_WIDTHS } from '~/app/figures/widths';
import type { Figure } from '~/lib/figures/shapes';
import { FigureView } from './FigureView';

type Props = { readonly draw: (width: number) => Figure; readonly caption?: string };

/** A drawing on the page itself, once for a desk and once for a phone; the style sheet shows the one that fits. */
export function FigureBySize({ draw, caption }: Props) {
  return (
    <>
      <div className="only-wide">
        <FigureView figure={draw(FIGURE_WIDTHS.wide)} caption={caption} />
      </div>
      <div className="only-narrow">
        <FigureView figure={draw(FIGURE_WIDTHS.narrow)} caption={caption} />
      </div>
    </>
  );
}
