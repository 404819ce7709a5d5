import { formatMeasure } from '../readings/format';

/** Lengths in remarks are given both ways: a finding does not know who will read it. */
export const along = (metres: number): string =>
  `${formatMeasure(metres, { dimension: 'alongTrack', unit: 'ft' })} (${formatMeasure(metres, { dimension: 'alongTrack', unit: 'm' })})`;

export const across = (mm: number): string =>
  `${formatMeasure(mm, { dimension: 'crossLength', unit: 'in' })} (${formatMeasure(mm, { dimension: 'crossLength', unit: 'mm' })})`;

export const curvatureText = (perM: number): string =>
  `${formatMeasure(perM, { dimension: 'curvature', unit: '°curve' })} (${formatMeasure(perM, { dimension: 'curvature', unit: 'm radius' })})`;

export const forceText = (kn: number): string =>
  `${formatMeasure(kn, { dimension: 'force', unit: 'kip' })} (${formatMeasure(kn, { dimension: 'force', unit: 'kN' })})`;

export const massText = (kg: number): string =>
  `${formatMeasure(kg, { dimension: 'mass', unit: 'ton' })} (${formatMeasure(kg, { dimension: 'mass', unit: 't' })})`;

export const degreesText = (rad: number): string => formatMeasure(rad, { dimension: 'angle', unit: '°' });

export const percent = (share: number): string =>
  share > 0 && share < 0.01 ? 'less than 1 %' : `${Math.round(share * 100)} %`;

const MONTHS = 'January February March April May June July August September October November December'.split(
  ' ',
);

/** "7 May 2026" from a local date and time of the site, "2026-05-07T14:19". */
export function dayText(local: string): string {
  const parts = /^(\d{4})-(\d{2})-(\d{2})/.exec(local);
  if (parts === null) return local;
  const [, year, month, day] = parts;
  return `${Number(day)} ${MONTHS[Number(month) - 1] ?? month} ${year}`;
}
