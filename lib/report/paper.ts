import type { UnitSystem } from '../readings/unit';

/** Page sizes in points: letter where work is in inches, A4 elsewhere. */
const SHEETS: Readonly<Record<UnitSystem, readonly [number, number]>> = {
  us: [612, 792],
  metric: [595.28, 841.89],
};

export type Orientation = 'portrait' | 'landscape';

export type Paper = {
  readonly width: number;
  readonly height: number;
  /** The area text and figures stand in. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
};

const SIDE = { portrait: 62, landscape: 46 } as const;
const TOP = 78;
const FOOT = 66;

export function paperFor(system: UnitSystem, orientation: Orientation): Paper {
  const [short, long] = SHEETS[system];
  const [width, height] = orientation === 'portrait' ? [short, long] : [long, short];
  const side = SIDE[orientation];
  return { width, height, left: side, right: width - side, top: TOP, bottom: height - FOOT };
}
