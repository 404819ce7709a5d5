import { across } from '../findings/words';

/** "0.62, between 0.55 and 0.71 in eight of ten draws", in the unit of the margin. */
export function marginText([low, middle, high]: readonly [number, number, number], unit: string): string {
  const text = (value: number): string => valueText(value, unit);
  return text(low) === text(high)
    ? text(middle)
    : `${text(middle)}, between ${text(low)} and ${text(high)} in eight of ten draws`;
}

function valueText(value: number, unit: string): string {
  switch (unit) {
    case 'mm':
      return across(value);
    case 'kN':
      return `${Math.round(value)} kN`;
    case 'ties':
      return `${Math.round(value)}`;
    default:
      return value.toFixed(2);
  }
}
