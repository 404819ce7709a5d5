import type { FlangeAtRail } from '../../turnout/flange-at-rail';
import { pointFit, type PointFit } from '../../turnout/point-fit';
import type { Taken } from '../reading-index';
import { across } from '../words';
import type { ChipTaken, SectionTaken } from './point-readings';

/** A place on a point that a flange can strike or ride: inputs in the order the fit takes them. */
export type PlaceOnPoint = {
  readonly id: 'tip' | 'chipFloor' | 'chipEnd';
  readonly behindMm: number;
  readonly inputs: readonly Taken[];
  /** Fit for drawn values, the inputs of the place beginning at `from`. */
  readonly fit: (flange: FlangeAtRail, values: ArrayLike<number>, from: number, faceRad: number) => PointFit;
  readonly remarks: readonly string[];
};

/** Gap, thickness and depth somewhere behind the tip, as a mean of the sections read before and after it. */
type Between = { readonly inputs: readonly Taken[]; readonly share: number; readonly remark: string };

function sectionNear(sections: readonly SectionTaken[], behindMm: number): Between | null {
  const inputs = ({ gap, thickness, depth }: SectionTaken) => [gap, thickness, depth];
  const exact = sections.find((section) => section.behindMm === behindMm);
  if (exact !== undefined) return { inputs: inputs(exact), share: 0, remark: '' };
  const after = sections.find((section) => section.behindMm > behindMm);
  const before = sections.filter((section) => section.behindMm < behindMm).at(-1);
  if (before === undefined) return null;
  if (after === undefined) {
    return {
      inputs: inputs(before),
      share: 0,
      remark: `The point was not read farther back: it is taken there as ${across(before.behindMm)} behind the tip.`,
    };
  }
  return {
    inputs: [...inputs(before), ...inputs(after)],
    share: (behindMm - before.behindMm) / (after.behindMm - before.behindMm),
    remark: '',
  };
}

function placeAt(
  id: PlaceOnPoint['id'],
  behindMm: number,
  sections: readonly SectionTaken[],
  lowered: Taken | null,
  remarks: readonly string[],
): PlaceOnPoint | null {
  const near = sectionNear(sections, behindMm);
  if (near === null) return null;
  const { inputs, share, remark } = near;
  return {
    id,
    behindMm,
    inputs: lowered === null ? inputs : [...inputs, lowered],
    fit: (flange, values, from, faceRad) => {
      const at = (i: number): number => {
        const before = values[from + i] ?? NaN;
        return share === 0 ? before : before + ((values[from + 3 + i] ?? NaN) - before) * share;
      };
      const below = lowered === null ? 0 : Math.max(0, values[from + inputs.length] ?? 0);
      return pointFit(flange, { gapMm: at(0), thicknessMm: at(1), depthMm: at(2) + below }, faceRad);
    },
    remarks: [...remarks, remark],
  };
}

/**
 * The tip, the floor of a chip and the edge where the chip ends. A chip whose length was not read has a
 * floor and no end. `sections` from the tip back.
 */
export function placesOnPoint(
  sections: readonly SectionTaken[],
  chip: ChipTaken | null,
): readonly PlaceOnPoint[] {
  const tipIsChipped = chip !== null && chip.chip.fromMm === 0;
  const floor =
    chip &&
    placeAt('chipFloor', chip.chip.fromMm, sections, chip.depth, [
      chip.from === null ? 'The chip is taken to begin at the tip.' : '',
      chip.length === null ? 'How far behind the tip the chip ends was not read.' : '',
    ]);
  const end =
    chip?.length &&
    placeAt('chipEnd', chip.chip.fromMm + chip.chip.lengthMm, sections, null, [
      `Full height is met again ${across(chip.chip.fromMm + chip.chip.lengthMm)} behind the tip.`,
    ]);
  const tip = placeAt('tip', 0, sections, null, [
    tipIsChipped ? 'The tip as it would be without the chip that begins there.' : '',
  ]);
  return [tip, floor, end].flatMap((place) => place ?? []);
}
