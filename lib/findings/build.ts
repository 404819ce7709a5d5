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

const NONE: readonly string[] = [];

function idOf({ what, subject, slot }: Heading): string {
  const of = subject === null ? what : `${what}:${subject.id}`;
  return slot ? `${of}:${slot}` : of;
}

/** Remarks of a finding and of what it was taken from, each once. */
export const joined = (some: readonly string[], more: readonly string[]): readonly string[] => {
  if (some.length === 0) return distinct(more);
  return distinct(more.length === 0 ? some : [...some, ...more]);
};

/** Each text once, in the order given; empty ones left away. */
export const distinct = (texts: readonly string[]): readonly string[] => {
  if (texts.length === 0) return NONE;
  if (texts.length === 1 && texts[0] !== '') return texts;
  return [...new Set(texts)].filter((text) => text !== '');
};

/*
 * The four shapes are written out, not spread from a shared one: a sheet of thousands of stations
 * makes tens of thousands of findings, and spreading took most of their time.
 */

/** A finding with a value; the remarks of what it was taken from are carried over. */
export const measured = (
  heading: Heading,
  dimension: Dimension,
  taken: Taken,
  limits: readonly LimitCheck[] = NO_LIMITS,
): Finding => ({
  id: idOf(heading),
  what: heading.what,
  title: heading.title,
  part: heading.part,
  subject: heading.subject,
  method: heading.method,
  remarks: joined(heading.remarks ?? NONE, taken.remarks),
  kind: 'measured',
  value: taken.value,
  u: taken.u,
  dimension,
  readings: taken.readings,
  limits,
});

const NO_LIMITS: readonly LimitCheck[] = [];

export const notMeasured = (heading: Heading, missing: readonly string[]): Finding => ({
  id: idOf(heading),
  what: heading.what,
  title: heading.title,
  part: heading.part,
  subject: heading.subject,
  method: heading.method,
  remarks: joined(heading.remarks ?? NONE, NONE),
  kind: 'notMeasured',
  missing,
});

export const outOfRange = (heading: Heading, taken: Taken, why: string): Finding => ({
  id: idOf(heading),
  what: heading.what,
  title: heading.title,
  part: heading.part,
  subject: heading.subject,
  method: heading.method,
  remarks: joined(heading.remarks ?? NONE, taken.remarks),
  kind: 'outOfRange',
  why,
  readings: taken.readings,
});

export const passFail = (
  heading: Heading,
  outcome: { pass: boolean; check: string; readings: NonEmpty<string> },
): Finding => ({
  id: idOf(heading),
  what: heading.what,
  title: heading.title,
  part: heading.part,
  subject: heading.subject,
  method: heading.method,
  remarks: joined(heading.remarks ?? NONE, NONE),
  kind: 'passFail',
  pass: outcome.pass,
  check: outcome.check,
  readings: outcome.readings,
});

/** The readings behind several values, each once. */
export function readingsOf(first: Taken, ...others: readonly Taken[]): NonEmpty<string> {
  if (others.length === 0) return first.readings;
  const [other] = others;
  if (others.length === 1 && other?.readings.length === 1 && first.readings.length === 1) {
    const [[a], [b]] = [first.readings, other.readings];
    return a === b ? first.readings : [a, b];
  }
  const all = new Set(first.readings);
  for (const { readings } of others) for (const reading of readings) all.add(reading);
  const [id = first.readings[0], ...rest] = all;
  return [id, ...rest];
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
  const value = formula(...values);
  const parts = inputs.map((input, index) => {
    if (input.u === 0) return 0;
    values[index] = input.value + input.u;
    const above = formula(...values);
    values[index] = input.value - input.u;
    const below = formula(...values);
    values[index] = input.value;
    return (above - below) / 2;
  });
  return {
    value,
    u: combine(...parts),
    readings: readingsOf(first, ...others),
    remarks: inputs.every(({ remarks }) => remarks.length === 0)
      ? NONE
      : distinct(inputs.flatMap(({ remarks }) => remarks)),
  };
}

/** b − a, with u² = u(a)² + u(b)²: as `derive`, for a sheet whose stations are compared by the thousand. */
export const difference = (a: Taken, b: Taken): Taken => ({
  value: b.value - a.value,
  u: Math.sqrt(a.u * a.u + b.u * b.u),
  readings: readingsOf(a, b),
  remarks: joined(a.remarks, b.remarks),
});

/** The same value under other remarks. */
export const remarked = (taken: Taken, ...remarks: readonly string[]): Taken => ({
  ...taken,
  remarks: distinct([...taken.remarks, ...remarks]),
});
