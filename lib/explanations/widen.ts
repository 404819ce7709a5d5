import { uniformDraws } from '../readings/draws';
import type { ExplanationId } from './explanation';
import type { Tables } from './judgement-table';
import type { JudgementValues } from './judgements';
import { weigh, type States } from './weigh';

export const WIDENED_DRAWS = 400;

/** Each judgement's odds are moved by a factor between one half and two. */
const MOST = 2;

/** Moves the odds of a probability by a factor; it stays strictly between 0 and 1. */
export function moveOdds(probability: number, factor: number): number {
  const odds = (probability / (1 - probability)) * factor;
  return odds / (1 + odds);
}

export type Widened = {
  readonly draws: number;
  /** Of each explanation against the background, decibans, draw by draw. */
  readonly totals: Readonly<Record<ExplanationId, Float64Array>>;
};

/**
 * Weighs again with every judgement moved at once, each by its own factor, its logarithm uniform
 * between −log 2 and log 2 and keyed by its path: one more judgement changes no other's draws.
 */
export function widen(tables: Tables, states: States, values: JudgementValues, seed: number): Widened {
  const factors = [...values].map(([path, value]) => ({
    path,
    value,
    draws: uniformDraws(`judgement/${path}`, seed, WIDENED_DRAWS),
  }));
  const totals = Object.fromEntries(
    tables.explanations.map(({ id }) => [id, new Float64Array(WIDENED_DRAWS)] as const),
  ) as Record<ExplanationId, Float64Array>;
  const moved = new Map(values);
  for (let i = 0; i < WIDENED_DRAWS; i += 1) {
    for (const { path, value, draws } of factors) {
      moved.set(path, moveOdds(value, MOST ** (2 * (draws[i] ?? 0.5) - 1)));
    }
    const { total } = weigh(tables, states, moved);
    for (const { id } of tables.explanations) totals[id][i] = total[id];
  }
  return { draws: WIDENED_DRAWS, totals };
}

/** Decibans of one explanation over another, draw by draw, sorted. */
export function leadDraws(widened: Widened, first: ExplanationId, second: ExplanationId): Float64Array {
  const b = widened.totals[second];
  return widened.totals[first].map((value, i) => value - (b[i] ?? 0)).sort();
}

/** Share of the draws in which an explanation is ahead of every other. */
export function staysAhead(widened: Widened, leader: ExplanationId): number {
  const others = Object.entries(widened.totals).filter(([id]) => id !== leader);
  let ahead = 0;
  for (const [i, own] of widened.totals[leader].entries()) {
    if (others.every(([, draws]) => own > (draws[i] ?? 0))) ahead += 1;
  }
  return ahead / widened.draws;
}

/** Percentile of sorted draws, the lower of two neighbours. */
export const percentile = (sorted: Float64Array, p: number): number =>
  sorted[Math.floor(p * (sorted.length - 1))] ?? NaN;
