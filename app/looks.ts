/** How the pages are coloured: as the device asks, or fixed for this browser. */
export const LOOKS = ['auto', 'light', 'night'] as const;
export type Look = (typeof LOOKS)[number];

export const LOOK_LABELS: Readonly<Record<Look, string>> = {
  auto: 'Auto',
  light: 'Day',
  night: 'Night',
};
