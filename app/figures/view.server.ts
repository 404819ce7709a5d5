import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { caseFigure } from './case-figures.server';
import type { FigureWidth } from './widths';

type Size = { readonly width: number; readonly height: number };

/** What a page needs of a drawing that it shows as a picture; the drawing itself is asked for apart. */
export type FigureRef = {
  readonly href: string;
  readonly title: string;
  readonly alt: string;
  readonly sizes: Readonly<Record<FigureWidth, Size>>;
};

/** The drawing of that name, when there is something to draw. Its address changes with the case. */
export const figureRef = (loaded: LoadedCase, name: string): FigureRef | null =>
  derived(loaded, `figure ref ${name}`, () => {
    const wide = caseFigure(loaded, name, 'wide');
    const narrow = caseFigure(loaded, name, 'narrow');
    if (!wide || !narrow) return null;
    const size = ({ width, height }: Size): Size => ({ width: Math.ceil(width), height: Math.ceil(height) });
    return {
      href: `/cases/${loaded.caseId}/figures/${name}?case=${loaded.head.slice(0, 16)}`,
      title: wide.title,
      alt: wide.description,
      sizes: { wide: size(wide), narrow: size(narrow) },
    };
  });
