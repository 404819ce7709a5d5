import { fromCanonical } from '~/lib/readings/convert';
import { parseMeasure } from '~/lib/readings/parse';
import type { Measure } from '~/lib/readings/quantity';
import { quantityOf } from '~/lib/readings/quantities';
import { ok, refuse, type Result } from '~/lib/readings/result';
import type { UnitSystem } from '~/lib/readings/unit';

/** A station as far as laying out needs it; `positionM` is null when its distance was not read. */
export type Placed = { readonly name: string; readonly positionM: number | null };

export type LaidOut = {
  readonly name: string;
  /** Distance from the POD as it is recorded. */
  readonly entered: string;
  readonly unit: string;
  readonly value: number;
};

export const SIDES = ['before', 'past'] as const;
export type Side = (typeof SIDES)[number];

export const USUAL_SPACING: Readonly<Record<UnitSystem, string>> = { us: `15' 6"`, metric: '5 m' };
const MOST = 200;

function position(): Measure {
  const quantity = quantityOf('stationPosition');
  if (quantity.kind !== 'measure') throw new Error('A distance is a measure.');
  return quantity;
}

const wholeNumber = (name: string): number | null =>
  /^[-−+]?\d{1,6}$/.test(name) ? Number(name.replace('−', '-')) : null;

/**
 * Names and distances of `count` further stations at even spacing, going on from the furthest one
 * on that side of the POD; station 0 at the POD comes first when there is none at it. Names count
 * on from the highest number on that side, negative before the POD.
 */
export function layOut(
  stations: readonly Placed[],
  asked: { readonly count: string; readonly spacing: string; readonly side: Side },
  system: UnitSystem,
): Result<readonly LaidOut[]> {
  if (!/^\d{1,3}$/.test(asked.count.trim()) || Number(asked.count) < 1 || Number(asked.count) > MOST)
    return refuse(`Enter how many stations, from 1 to ${MOST}.`);
  const quantity = position();
  const spacing = parseMeasure(asked.spacing, quantity, system);
  if (!spacing.ok) return spacing;
  if (!(spacing.value.value > 0)) return refuse('Enter a spacing above zero; choose the side beside it.');

  const sign = asked.side === 'before' ? -1 : 1;
  const unit = quantity.bareUnit[system];
  const reach = Math.max(0, ...stations.map(({ positionM }) => (positionM ?? 0) * sign));
  const counted = Math.max(0, ...stations.map(({ name }) => (wholeNumber(name) ?? 0) * sign));
  const [low, high] = quantity.possible;
  const at = (name: number, value: number): LaidOut => ({
    name: String(name),
    entered: String(Number(fromCanonical(value, unit, quantity.dimension).toFixed(3))),
    unit,
    value,
  });
  const hasZero = stations.some(({ name, positionM }) => positionM === 0 || wholeNumber(name) === 0);
  const laid = Array.from({ length: Number(asked.count) }, (_, index) =>
    at(sign * (counted + index + 1), sign * (reach + (index + 1) * spacing.value.value)),
  );
  const furthest = laid.at(-1)?.value ?? 0;
  if (furthest < low || furthest > high)
    return refuse('That goes further from the POD than stations can be. Enter fewer or closer ones.');
  return ok(hasZero ? laid : [at(0, 0), ...laid]);
}
