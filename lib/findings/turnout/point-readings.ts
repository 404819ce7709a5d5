import type { Entity } from '../../case/record';
import { feet } from '../../readings/quantities/build';
import { BEHIND_TIP } from '../../readings/quantities/turnout';
import { type Chip, type PointSection } from '../../turnout/point-section';
import type { PointSide } from '../../turnout/point-side';
import { derive } from '../build';
import type { Context } from '../context';
import type { Taken } from '../reading-index';
import { belowChip, outlinesOfPoint, type OutlineOfPoint } from './outlines-of-point';

const MM = 1000;

/** An outline this near to a place that is read belongs to it, 1 in. Engineering judgement. */
const SAME_PLACE_MM = 25.4;

/** Gap, thickness and depth of a point at one distance behind its tip, each with its readings. */
export type SectionTaken = {
  readonly behindMm: number;
  readonly gap: Taken;
  /** Of the outline where there is one; drawn, it moves the traced side as a whole. */
  readonly thickness: Taken;
  readonly depth: Taken;
  /** Gauge side as the outline shows it; undefined where none was traced. */
  readonly side: PointSide | undefined;
};

/** Where a point can be read: gap, thickness and depth, each null when it was not. */
export type PlaceRead = {
  readonly behindMm: number;
  readonly gap: Taken | null;
  readonly thickness: Taken | null;
  readonly depth: Taken | null;
};

/** What was read of a point at its tip and at every foot behind it. */
export function placesRead(context: Context, turnout: Entity): readonly PlaceRead[] {
  const take = (quantity: string, slot = ''): Taken | null =>
    context.read.take('turnout', turnout.id, quantity, slot);
  return [
    { behindMm: 0, gap: take('pointGap'), thickness: take('tipThickness'), depth: take('tipDepth') },
    ...BEHIND_TIP.map(({ id, feet: behind }) => ({
      behindMm: feet(behind) * MM,
      gap: take('gapBehind', id),
      thickness: take('thicknessBehind', id),
      depth: take('depthBehind', id),
    })),
  ];
}

export type PointRead = {
  readonly sections: readonly SectionTaken[];
  /** Outlines that stand in one of the sections. */
  readonly placed: readonly { readonly outline: OutlineOfPoint; readonly section: SectionTaken }[];
  /** Outlines without gap or depth at their distance: they judge nothing. */
  readonly unplaced: readonly OutlineOfPoint[];
};

/**
 * The sections of a point from the tip back. One was read whole, or its gap and depth place an outline of it;
 * an outline between two places takes gap and depth straight between the readings there. A place where one
 * of the three is missing is left out.
 */
export function pointRead(context: Context, turnout: Entity): PointRead {
  const outlines = outlinesOfPoint(context, turnout);
  const places = placesRead(context, turnout);
  const nearest = ({ behindMm }: { readonly behindMm: number }): OutlineOfPoint | undefined =>
    [...outlines]
      .filter((outline) => Math.abs(outline.behindMm - behindMm) <= SAME_PLACE_MM)
      .sort((a, b) => Math.abs(a.behindMm - behindMm) - Math.abs(b.behindMm - behindMm))[0];
  const at = new Map(places.map((place) => [place.behindMm, nearest(place)] as const));
  const used = new Set(at.values());
  const chip = chipTaken(context, turnout)?.chip ?? null;
  const all = [
    ...places.map((place) => ({ place, outline: at.get(place.behindMm) })),
    ...outlines
      .filter((outline) => !used.has(outline))
      .map((outline) => ({ place: placeBetween(places, outline.behindMm), outline })),
  ].flatMap(({ place, outline }) => {
    const section = place && sectionOfPlace(place, outline, chip);
    return section ? [{ section, outline }] : [];
  });
  const sections = all.map(({ section }) => section).sort((a, b) => a.behindMm - b.behindMm);
  const placed = all.flatMap(({ section, outline }) => (outline === undefined ? [] : [{ outline, section }]));
  return {
    sections,
    placed,
    unplaced: outlines.filter((outline) => !placed.some((each) => each.outline === outline)),
  };
}

export const sectionsTaken = (context: Context, turnout: Entity): readonly SectionTaken[] =>
  pointRead(context, turnout).sections;

function sectionOfPlace(
  { behindMm, gap, thickness, depth }: PlaceRead,
  outline: OutlineOfPoint | undefined,
  chip: Chip | null,
): SectionTaken | null {
  const wide = outline?.thickness ?? thickness;
  return gap === null || depth === null || wide === null
    ? null
    : { behindMm, gap, thickness: wide, depth, side: outline && belowChip(outline, chip) };
}

/** Gap and depth straight between the places read before and after; null where one side is missing. */
function placeBetween(places: readonly PlaceRead[], behindMm: number): PlaceRead | null {
  const read = places.flatMap(({ behindMm: place, gap, depth }) =>
    gap === null || depth === null ? [] : [{ behindMm: place, gap, depth }],
  );
  const before = read.filter((place) => place.behindMm < behindMm).at(-1);
  const after = read.find((place) => place.behindMm > behindMm);
  if (before === undefined || after === undefined) return null;
  const share = (behindMm - before.behindMm) / (after.behindMm - before.behindMm);
  const between = (from: Taken, to: Taken): Taken =>
    derive((a = NaN, b = NaN) => a + (b - a) * share, [from, to]);
  return {
    behindMm,
    gap: between(before.gap, after.gap),
    thickness: null,
    depth: between(before.depth, after.depth),
  };
}

export const sectionOf = ({ behindMm, gap, thickness, depth, side }: SectionTaken): PointSection => ({
  behindMm,
  gapMm: gap.value,
  thicknessMm: thickness.value,
  depthMm: depth.value,
  ...(side === undefined ? {} : { side }),
});

/** Values drawn for gap, thickness and depth of a section, as they follow each other from `from` on. */
export const sectionDrawn = (
  { behindMm, side }: SectionTaken,
  values: ArrayLike<number>,
  from: number,
): PointSection => ({
  behindMm,
  gapMm: values[from] ?? NaN,
  thicknessMm: values[from + 1] ?? NaN,
  depthMm: values[from + 2] ?? NaN,
  ...(side === undefined ? {} : { side }),
});

/** A chip as read; where it begins is the tip when that was not read. Null without one, or without its depth. */
export type ChipTaken = {
  readonly chip: Chip;
  readonly depth: Taken;
  readonly length: Taken | null;
  readonly from: Taken | null;
};

export function chipTaken(context: Context, turnout: Entity): ChipTaken | null {
  const take = (quantity: string): Taken | null => context.read.take('turnout', turnout.id, quantity);
  const depth = take('chipDepth');
  if (depth === null || !(depth.value > 0)) return null;
  const [length, from] = [take('chipLength'), take('chipFrom')];
  return {
    chip: { fromMm: from?.value ?? 0, lengthMm: length?.value ?? 0, depthMm: depth.value },
    depth,
    length,
    from,
  };
}
