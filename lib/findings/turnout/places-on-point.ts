import type { FlangeAtRail } from '../../turnout/flange-at-rail';
import { pointFit, type PointFit } from '../../turnout/point-fit';
import { lowered, sectionBetween, type PointSection } from '../../turnout/point-section';
import type { Taken } from '../reading-index';
import { across } from '../words';
import { sectionDrawn, type ChipTaken, type SectionTaken } from './point-readings';

/** A place on a point where a flange passes: inputs in the order the fit takes them. */
export type PlaceOnPoint = {
  readonly id: 'tip' | 'chipFloor' | 'chipEnd' | 'behind';
  readonly behindMm: number;
  readonly inputs: readonly Taken[];
  /** The point there for drawn values, the inputs of the place beginning at `from`. */
  readonly section: (values: ArrayLike<number>, from: number) => PointSection;
  /** Fit for drawn values, the inputs of the place beginning at `from`. */
  readonly fit: (flange: FlangeAtRail, values: ArrayLike<number>, from: number, faceRad: number) => PointFit;
  readonly remarks: readonly string[];
};

/** The point somewhere behind its tip: as a section was read there, or between those before and after it. */
type Near = {
  readonly inputs: readonly Taken[];
  readonly section: PlaceOnPoint['section'];
  readonly remark: string;
};

function sectionNear(sections: readonly SectionTaken[], behindMm: number): Near | null {
  const inputs = ({ gap, thickness, depth }: SectionTaken) => [gap, thickness, depth];
  const as = (section: SectionTaken, remark: string): Near => ({
    inputs: inputs(section),
    section: (values, from) => ({ ...sectionDrawn(section, values, from), behindMm }),
    remark,
  });
  const exact = sections.find((section) => section.behindMm === behindMm);
  if (exact !== undefined) return as(exact, '');
  const after = sections.find((section) => section.behindMm > behindMm);
  const before = sections.filter((section) => section.behindMm < behindMm).at(-1);
  if (before === undefined) return null;
  if (after === undefined) {
    return as(
      before,
      `The point was not read farther back: it is taken there as ${across(before.behindMm)} behind the tip.`,
    );
  }
  return {
    inputs: [...inputs(before), ...inputs(after)],
    section: (values, from) =>
      sectionBetween(sectionDrawn(before, values, from), sectionDrawn(after, values, from + 3), behindMm),
    remark: '',
  };
}

function placeAt(
  id: PlaceOnPoint['id'],
  behindMm: number,
  sections: readonly SectionTaken[],
  floor: Taken | null,
  remarks: readonly string[],
): PlaceOnPoint | null {
  const near = sectionNear(sections, behindMm);
  if (near === null) return null;
  const { inputs, remark } = near;
  const section: PlaceOnPoint['section'] =
    floor === null
      ? near.section
      : (values, from) => lowered(near.section(values, from), Math.max(0, values[from + inputs.length] ?? 0));
  return {
    id,
    behindMm,
    inputs: floor === null ? inputs : [...inputs, floor],
    section,
    fit: (flange, values, from, faceRad) => pointFit(flange, section(values, from), faceRad),
    remarks: [...remarks, remark],
  };
}

type Places = {
  /** The tip, the floor of a chip and the edge where the chip ends. */
  readonly places: readonly PlaceOnPoint[];
  /** Where the point was read behind the tip. */
  readonly behind: readonly PlaceOnPoint[];
};

/**
 * Where a flange is held against a point. A chip whose length was not read has a floor and no end.
 * `sections` from the tip back.
 */
export function placesOnPoint(sections: readonly SectionTaken[], chip: ChipTaken | null): Places {
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
  return {
    places: [tip, floor, end].flatMap((place) => place ?? []),
    behind: sections.flatMap(({ behindMm }) => {
      if (behindMm === 0) return [];
      const inChip =
        chip !== null && behindMm >= chip.chip.fromMm && behindMm < chip.chip.fromMm + chip.chip.lengthMm;
      return (
        placeAt('behind', behindMm, sections, inChip ? chip.depth : null, [
          inChip ? 'The place lies within the chip.' : '',
        ]) ?? []
      );
    }),
  };
}
