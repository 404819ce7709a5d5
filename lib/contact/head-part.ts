import { type Method } from '../findings/finding';

/** Part of the rail head a wheel bears on, from the track centre outward. */
export type HeadPart = 'gaugeFace' | 'gaugeCorner' | 'crown' | 'fieldSide';

export const HEAD_PARTS: readonly HeadPart[] = ['gaugeFace', 'gaugeCorner', 'crown', 'fieldSide'];

/** Borders as shares of half the head's width from the axis of the section, field side positive. */
const FACE_TO_CORNER = -0.95;
const CORNER_TO_CROWN = -0.5;
const CROWN_TO_FIELD = 0.5;

/**
 * Part of the head at `railXMm` from the axis of the section (field side positive), `halfHeadMm` half the
 * width of the head: gauge face beyond −0.95 of it, gauge corner to −0.5, crown to 0.5, field side beyond.
 */
export function headPart(railXMm: number, halfHeadMm: number): HeadPart {
  const share = railXMm / halfHeadMm;
  if (share < FACE_TO_CORNER) return 'gaugeFace';
  if (share < CORNER_TO_CROWN) return 'gaugeCorner';
  return share <= CROWN_TO_FIELD ? 'crown' : 'fieldSide';
}

export const headPartMethod: Method = {
  id: 'head-part',
  name: 'Part of the rail head that is loaded',
  formula:
    'x/b, x: contact from the axis of the section, field side positive; b: half the width of the head at the depth of the gauge. Gauge face below −0.95, gauge corner to −0.5, crown to 0.5, field side above.',
  validRange: 'Rail outlines registered on the axis of their section.',
  sources: [
    {
      text: 'The borders: −0.95 is where a new head becomes steeper than about 60°; the crown is taken as the middle half',
      status: 'engineering judgement',
    },
  ],
};
