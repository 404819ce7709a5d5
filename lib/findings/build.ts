import type { SubjectRef } from '../case/record';
import { combine } from '../readings/uncertainty';
import type { Dimension } from '../readings/unit';
import type { Finding, LimitCheck, Method } from './finding';
import type { NonEmpty, Taken } from './reading-index';

/** What is said of a finding before it is known what came out. */
export type Heading = {
  readonly what: string;
  readonly title: string;
  readonly part: Finding['part'];
  readonly subject: SubjectRef | null;
  readonly slot?: string;
  readonly method: Method;
  readonly remarks?: readonly string[];
};

const shared = ({ slot, remarks = [], ...heading }: Heading, more: readonly string[] = []) => ({
  ...heading,
  id: [heading.what, heading.subject?.id, slot].filter((part) => part !== undefined && part !== '').join(':'),
  remarks: distinct([...remarks, ...more]),
});

export const distinct = (texts: readonly string[]): readonly string[] =>
  texts.length < 2 ? texts.filter((text) => text !== '') : [...new Set(texts)].filter((text) => text !== '');

/** A finding with a value; the remarks of what it was taken from are carried over. */
export const measured = (
  heading: Heading,
  dimension: Dimension,
  taken: Taken,
  limits: readonly LimitCheck[] = [],
): Finding => ({
  ...shared(heading, taken.remarks),
  kind: 'measured',
  value: taken.value,
  u: taken.u,
  dimension,
  readings: taken.readings,
  limits,
});

export const notMeasured = (heading: Heading, missing: readonly string[]): Finding => ({
  ...shared(heading),
  kind: 'notMeasured',
  missing,
});

export const outOfRange = (heading: Heading, taken: Taken, why: string): Finding => ({
  ...shared(heading, taken.remarks),
  kind: 'outOfRange',
  why,
  readings: taken.readings,
});

export const passFail = (
  heading: Heading,
  outcome: { pass: boolean; check: string; readings: NonEmpty<string> },
): Finding => ({ ...shared(heading), kind: 'passFail', ...outcome });

/** The readings behind several values, each once. */
export function readingsOf(first: Taken, ...others: readonly Taken[]): NonEmpty<string> {
  const [id, ...rest] = new Set([first, ...others].flatMap((taken) => taken.readings));
  return [id ?? first.readings[0], ...rest];
}

/**
 * A formula of independent values with its uncertainty to first order, each input moved up and
 * down by its own: uᵢ(y) = ½·|f(xᵢ + u) − f(xᵢ − u)|, added as root sum of squares
 * (JCGM 100:2008, 5.1.2 and 5.1.4 note 2). Exact for sums; for the rest see `draw`.
 */
export function derive(
  formula: (...values: number[]) => number,
  inputs: readonly [Taken, ...Taken[]],
): Taken {
  const [first, ...others] = inputs;
  const values = inputs.map(({ value }) => value);
  const moved = (index: number, by: number): number =>
    formula(...values.map((value, each) => (each === index ? value + by : value)));
  return {
    value: formula(...values),
    u: combine(...inputs.map(({ u }, index) => (u === 0 ? 0 : (moved(index, u) - moved(index, -u)) / 2))),
    readings: readingsOf(first, ...others),
    remarks: distinct(inputs.flatMap(({ remarks }) => remarks)),
  };
}

/** The same value under other remarks. */
export const remarked = (taken: Taken, ...remarks: readonly string[]): Taken => ({
  ...taken,
  remarks: distinct([...taken.remarks, ...remarks]),
});
