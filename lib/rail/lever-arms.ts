import type { Method, Source } from '../findings/finding';
import type { RailSection } from './sections';

/** Where across the head the wheel bears. */
export const BEARING_PLACES = ['gaugeFace', 'gaugeCorner', 'midHead', 'fieldSide'] as const;
export type BearingPlace = (typeof BEARING_PLACES)[number];

/**
 * Where the lateral force acts: the flange on the gauge face (high rail), or tread friction at the
 * top of the head (low rail).
 */
export type LateralPlace = 'gaugeFace' | 'topOfRail';

/** Arms about the field-side corner of the base, rail upright. mm. */
export type LeverArms = {
  /** Horizontal, from the vertical contact to the corner. */
  readonly dMm: number;
  /** Height of the lateral contact above the base. */
  readonly hMm: number;
};

/** 5/8 in, at which gauge is measured and the flange is taken to bear. */
const GAUGE_POINT_MM = 15.875;
/** About the radius of a gauge corner in from the gauge face. */
const GAUGE_CORNER_INSET_MM = 12;
/** About 1 in to the field of the middle of the head, where a false flange runs. */
const FIELD_SIDE_OFFSET_MM = 25.4;

/**
 * Lever arms of a wheel on a rail about the field-side corner of its base.
 * `headLossMm` ≥ 0 is the wear of the top of the head, which lowers both lateral contacts.
 * Source: section tables; gauge point 49 CFR 213.53(a); gauge-corner and field-side places are
 * engineering judgement.
 */
export function leverArms(
  section: RailSection,
  bearing: BearingPlace,
  lateral: LateralPlace,
  headLossMm: number = 0,
): LeverArms {
  const top = section.heightMm - headLossMm;
  return {
    dMm: section.baseWidthMm / 2 + offsetToGaugeSide(section, bearing),
    hMm: lateral === 'gaugeFace' ? top - GAUGE_POINT_MM : top,
  };
}

function offsetToGaugeSide(section: RailSection, bearing: BearingPlace): number {
  switch (bearing) {
    case 'gaugeFace':
      return section.headWidthMm / 2;
    case 'gaugeCorner':
      return section.headWidthMm / 2 - GAUGE_CORNER_INSET_MM;
    case 'midHead':
      return 0;
    case 'fieldSide':
      return -FIELD_SIDE_OFFSET_MM;
  }
}

const JUDGED_PLACES: Source = {
  text: 'Gauge-corner contact 12 mm in from the gauge face; false-flange contact 1 in to the field of the middle of the head',
  status: 'engineering judgement',
};

export const leverArmsMethod: Method = {
  id: 'rail-lever-arms',
  name: 'Lever arms of a wheel about the field-side base corner',
  formula:
    'd = base/2 + offset of the vertical contact towards the gauge side (gauge face: head/2; gauge corner: head/2 − 12 mm; mid-head: 0; field side: −1 in). h′ = height − head wear − 5/8 in for a flange on the gauge face; height − head wear for tread friction.',
  validRange: 'Rail upright, base whole and bearing on its field edge; head width as new.',
  sources: [
    { text: 'AREMA Manual ch. 4 part 1 and EN 13674-1, section tables', status: 'published' },
    { text: 'Gauge point 5/8 in below the top of the rail: 49 CFR 213.53(a)', status: 'published' },
    JUDGED_PLACES,
  ],
};
