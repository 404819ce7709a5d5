/** The value in the middle of them by size, the upper one of two; 0 of none. */
export const middleOf = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

export const lowestOf = (values: readonly number[]): number =>
  values.reduce((a, b) => Math.min(a, b), Infinity);
export const highestOf = (values: readonly number[]): number =>
  values.reduce((a, b) => Math.max(a, b), -Infinity);

/** From the lowest to the highest; −Infinity of none. */
export const spanOf = (values: readonly number[]): number => highestOf(values) - lowestOf(values);

/** Two digits in a sentence; the value itself is not rounded. */
export const twoDigits = (value: number): string => String(Number(value.toPrecision(2)));
