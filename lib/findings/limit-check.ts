import { normalUpperTail } from '../rules/normal';
import type { LimitCheck } from './finding';

/**
 * Holds a value against a limit that stands in no rule set: the limit itself is allowed. Value, u
 * and limit in one unit; the probability is that of a normal distribution N(value, u).
 * Source: JCGM 106:2012, clause 7 (clause from memory).
 */
export function limitCheck({
  value,
  u,
  ...about
}: Omit<LimitCheck, 'exceeded' | 'probabilityExceeds'> & {
  readonly value: number;
  readonly u: number;
}): LimitCheck {
  const beyond = about.sense === 'max' ? value - about.limit : about.limit - value;
  const exceeded = beyond > 0;
  return { ...about, exceeded, probabilityExceeds: u > 0 ? normalUpperTail(-beyond / u) : exceeded ? 1 : 0 };
}
