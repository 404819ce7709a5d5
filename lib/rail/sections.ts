import type { Source } from '../findings/finding';

/** Overall sizes of a new rail. The shape of the head is not in here. */
export type RailSection = {
  readonly id: string;
  /** As the source prints them: inches and fractions, or mm. */
  readonly printed: {
    readonly height: string;
    readonly base: string;
    readonly headWidth: string;
    readonly web: string;
    readonly unit: 'in' | 'mm';
  };
  readonly heightMm: number;
  readonly baseWidthMm: number;
  readonly headWidthMm: number;
  readonly webMm: number;
  readonly source: Source;
};

const AREMA: Source = {
  text: 'AREMA Manual for Railway Engineering, ch. 4 part 1, section tables as reprinted in rail makers’ catalogues',
  status: 'published',
};
const EN_13674: Source = {
  text: 'EN 13674-1:2011, section tables as reprinted in rail makers’ catalogues',
  status: 'published',
};

const MM_PER_32ND = 25.4 / 32;

/** Sizes in thirty-seconds of an inch, in which every North American size here is whole. */
const inches = (
  id: string,
  printed: readonly [string, string, string, string],
  sizes: readonly [number, number, number, number],
): RailSection => ({
  id,
  printed: { height: printed[0], base: printed[1], headWidth: printed[2], web: printed[3], unit: 'in' },
  heightMm: sizes[0] * MM_PER_32ND,
  baseWidthMm: sizes[1] * MM_PER_32ND,
  headWidthMm: sizes[2] * MM_PER_32ND,
  webMm: sizes[3] * MM_PER_32ND,
  source: AREMA,
});

const millimetres = (id: string, sizes: readonly [number, number, number, number]): RailSection => ({
  id,
  printed: {
    height: String(sizes[0]),
    base: String(sizes[1]),
    headWidth: String(sizes[2]),
    web: String(sizes[3]),
    unit: 'mm',
  },
  heightMm: sizes[0],
  baseWidthMm: sizes[1],
  headWidthMm: sizes[2],
  webMm: sizes[3],
  source: EN_13674,
});

export const RAIL_SECTIONS: readonly RailSection[] = [
  inches('115RE', ['6 5/8', '5 1/2', '2 23/32', '5/8'], [212, 176, 87, 20]),
  inches('119RE', ['6 13/16', '5 1/2', '2 21/32', '5/8'], [218, 176, 85, 20]),
  inches('132RE', ['7 1/8', '6', '3', '21/32'], [228, 192, 96, 21]),
  inches('133RE', ['7 1/16', '6', '3', '11/16'], [226, 192, 96, 22]),
  inches('136RE', ['7 5/16', '6', '2 15/16', '11/16'], [234, 192, 94, 22]),
  inches('141RE', ['7 7/16', '6', '3 1/16', '11/16'], [238, 192, 98, 22]),
  millimetres('60E1', [172, 150, 72, 16.5]),
  millimetres('54E1', [159, 140, 70, 16]),
];

/** The section with this name, however it is spaced or capitalised; null when it is not in the table. */
export function railSection(name: string): RailSection | null {
  const wanted = name.replace(/[\s-]/g, '').toUpperCase();
  return RAIL_SECTIONS.find((section) => section.id === wanted) ?? null;
}
