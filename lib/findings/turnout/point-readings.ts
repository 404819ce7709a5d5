import type { Entity } from '../../case/record';
import { feet } from '../../readings/quantities/build';
import { BEHIND_TIP } from '../../readings/quantities/turnout';
import type { Chip, PointSection } from '../../turnout/point-section';
import type { Context } from '../context';
import type { Taken } from '../reading-index';

const MM = 1000;

/** Gap, thickness and depth of a point at one distance behind its tip, each with its readings. */
export type SectionTaken = {
  readonly behindMm: number;
  readonly gap: Taken;
  readonly thickness: Taken;
  readonly depth: Taken;
};

/** The sections of a point that were read whole, from the tip back; a place where one of the three is missing is left out. */
export function sectionsTaken(context: Context, turnout: Entity): readonly SectionTaken[] {
  const take = (quantity: string, slot = ''): Taken | null =>
    context.read.take('turnout', turnout.id, quantity, slot);
  const section = (
    behindMm: number,
    gap: Taken | null,
    thickness: Taken | null,
    depth: Taken | null,
  ): readonly SectionTaken[] =>
    gap === null || thickness === null || depth === null ? [] : [{ behindMm, gap, thickness, depth }];
  return [
    ...section(0, take('pointGap'), take('tipThickness'), take('tipDepth')),
    ...BEHIND_TIP.flatMap(({ id, feet: behind }) =>
      section(feet(behind) * MM, take('gapBehind', id), take('thicknessBehind', id), take('depthBehind', id)),
    ),
  ];
}

export const sectionOf = ({ behindMm, gap, thickness, depth }: SectionTaken): PointSection => ({
  behindMm,
  gapMm: gap.value,
  thicknessMm: thickness.value,
  depthMm: depth.value,
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
