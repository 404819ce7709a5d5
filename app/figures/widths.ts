/** Widths a drawing is made for, in its own units: a page, and a phone. */
export const FIGURE_WIDTHS = { wide: 1120, narrow: 360 } as const;
export type FigureWidth = keyof typeof FIGURE_WIDTHS;
