import { standing } from '../case/current';
import { readRailWhere } from '../case/rail-where';
import type { Entity } from '../case/record';
import { remarked } from './build';
import type { Context } from './context';
import { oncePerContext } from './once-per-context';
import type { Side } from './pod-sides';
import type { Taken } from './reading-index';
import { along } from './words';

const stationPlaces = oncePerContext(
  ({ stations }: Context) =>
    // Of two stations with one name the first stands.
    new Map([...stations].reverse().map(({ name, positionM }) => [name, positionM] as const)),
);

const stationNames = oncePerContext((context: Context) => new Set(stationPlaces(context).keys()));

/** Distance from the POD (m) of a rail's place as written; null where the words give none. */
export function railPlaceM(context: Context, where: string): number | null {
  const read = readRailWhere(where, stationNames(context));
  if (read === null) return null;
  return read.kind === 'distance' ? read.m : (stationPlaces(context).get(read.name) ?? null);
}

export type PlacedRail = { readonly entity: Entity; readonly placeM: number | null };

/** Standing rail records of one side, or of both when the side is not known, nearest the POD first. */
export function railsNearPod(context: Context, side: Side | null): readonly PlacedRail[] {
  return standing(context.record, 'rail')
    .filter(({ fields }) => side === null || fields.rail === side)
    .map((entity) => ({ entity, placeM: railPlaceM(context, String(entity.fields.where ?? '')) }))
    .sort(
      (a, b) =>
        Math.abs(a.placeM ?? Infinity) - Math.abs(b.placeM ?? Infinity) || a.entity.order - b.entity.order,
    );
}

/** A reading of the rail nearest the POD that has it undisturbed, saying where that was. */
export function railReading(
  context: Context,
  side: Side | null,
  quantity: string,
): { readonly taken: Taken; readonly rail: PlacedRail } | null {
  for (const rail of railsNearPod(context, side)) {
    const taken = context.read.take('rail', rail.entity.id, quantity);
    if (taken !== null) return { taken: remarked(taken, placeRemark(rail)), rail };
  }
  return null;
}

export function placeRemark({ entity, placeM }: PlacedRail): string {
  const rail = entity.fields.rail === 'left' ? 'left' : 'right';
  return placeM === null
    ? `Read on the ${rail} rail at “${String(entity.fields.where ?? '')}”, whose distance from the POD is not given.`
    : `Read on the ${rail} rail ${along(placeM)} from the POD.`;
}
