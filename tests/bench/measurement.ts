/** One measured ratio or amount; it holds when `value` is not above `floor`, or with `atLeast` not below it. */
export type Measurement = {
  readonly name: string;
  readonly value: number;
  readonly floor: number;
  readonly atLeast?: true;
  readonly unit: string;
  /** What the value was taken from, when it is the worst of several. */
  readonly parts?: readonly string[];
};

export const holds = ({ value, floor, atLeast }: Measurement): boolean =>
  atLeast ? value >= floor : value <= floor;

/** The median, which one slow round does not move. */
export function medianMs(times: readonly number[]): number {
  const sorted = [...times].sort((a, b) => a - b);
  const middle = sorted[Math.floor(sorted.length / 2)];
  if (middle === undefined) throw new Error('Nothing was measured.');
  return middle;
}
