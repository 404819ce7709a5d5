import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import type { Figure } from '~/lib/figures/shapes';
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

const sizeOf = ({ width, height }: Size): Size => ({ width: Math.ceil(width), height: Math.ceil(height) });

/** Where a drawing is asked for. Its address changes with the case. */
export const refTo = (
  { caseId, head }: Pick<LoadedCase, 'caseId' | 'head'>,
  name: string,
  { wide, narrow }: Readonly<Record<FigureWidth, Figure>>,
): FigureRef => ({
  href: `/cases/${caseId}/figures/${name}?case=${head.slice(0, 16)}`,
  title: wide.title,
  alt: wide.description,
  sizes: { wide: sizeOf(wide), narrow: sizeOf(narrow) },
});

/** The drawing of that name, when there is something to draw. */
export const figureRef = (loaded: LoadedCase, name: string): FigureRef | null =>
  derived(loaded, `figure ref ${name}`, () => {
    const wide = caseFigure(loaded, name, 'wide');
    const narrow = caseFigure(loaded, name, 'narrow');
    return wide && narrow && refTo(loaded, name, { wide, narrow });
  });
