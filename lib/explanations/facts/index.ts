import type { Fact, FactId } from '../fact';
import { droppedInside } from './dropped-inside';
import { fieldSideContact } from './field-side-contact';
import { flangeCrossedHead } from './flange-crossed-head';
import { flangeShallowOrDry } from './flange-shallow-or-dry';
import { gaugeBeyondSpan } from './gauge-beyond-span';
import { pointCouldBeStruck } from './point-could-be-struck';
import { pointPicked } from './point-picked';
import { railRolledFirst } from './rail-rolled-first';
import { railsWeaklyHeld } from './rails-weakly-held';
import { sideForceHigh } from './side-force-high';
import { wheelLight } from './wheel-light';

/** Marks first, then conditions; adding a fact is a file, its id, and this line. */
export const FACTS: readonly Fact[] = [
  flangeCrossedHead,
  railRolledFirst,
  droppedInside,
  pointPicked,
  flangeShallowOrDry,
  sideForceHigh,
  wheelLight,
  fieldSideContact,
  railsWeaklyHeld,
  gaugeBeyondSpan,
  pointCouldBeStruck,
];

const byId = new Map(FACTS.map((fact) => [fact.id, fact] as const));

/** The fact of an id. */
export function factOf(id: FactId): Fact {
  const fact = byId.get(id);
  if (fact === undefined) throw new Error(`No fact is called ${id}`);
  return fact;
}
