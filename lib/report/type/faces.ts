import { createRequire } from 'node:module';

/** The faces of the report's letters. Drawings have their own two, whose widths lib/figures knows. */
export const FACES = {
  body: 'DejaVuSansCondensed.ttf',
  bold: 'DejaVuSansCondensed-Bold.ttf',
  italic: 'DejaVuSansCondensed-Oblique.ttf',
  mono: 'DejaVuSansMono.ttf',
  figure: 'DejaVuSans.ttf',
  figureBold: 'DejaVuSans-Bold.ttf',
} as const;
export type Face = keyof typeof FACES;

const { resolve } = createRequire(import.meta.url);

export const pathOfFace = (face: Face): string => resolve(`dejavu-fonts-ttf/ttf/${FACES[face]}`);

/** Width of letters on one line, points. */
export type Measure = (text: string, face: Face, size: number) => number;
