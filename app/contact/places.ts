/** The four outlines that stand together, each named as in an address. */
export const PLACES = [
  { id: 'leftWheel', shape: 'wheel', side: 'left', label: 'Left wheel' },
  { id: 'rightWheel', shape: 'wheel', side: 'right', label: 'Right wheel' },
  { id: 'leftRail', shape: 'rail', side: 'left', label: 'Left rail' },
  { id: 'rightRail', shape: 'rail', side: 'right', label: 'Right rail' },
] as const;
export type Place = (typeof PLACES)[number];
export type PlaceId = Place['id'];

/** What else has to be known of them. */
export const MEASURES = [
  { id: 'backToBack', label: 'Back-to-back' },
  { id: 'gauge', label: 'Gauge' },
  { id: 'diameter', label: 'Wheel diameter at the tread' },
  { id: 'cantLeft', label: 'Cant of the left rail, inward positive' },
  { id: 'cantRight', label: 'Cant of the right rail, inward positive' },
] as const;
export type MeasureId = (typeof MEASURES)[number]['id'];
