import type { Entity } from '~/lib/case/record';

type Placed = {
  readonly entity: Pick<Entity, 'removed'>;
  /** Where the mark starts, m from the POD; NaN when nobody read it. */
  readonly fromM: number;
};

const rank = ({ entity, fromM }: Placed): number =>
  entity.removed !== null ? 2 : Number.isFinite(fromM) ? 0 : 1;

/** As a wheel meets them: by where they start; then those without a place, then removed ones. */
export const inTrackOrder = <T extends Placed>(marks: readonly T[]): readonly T[] =>
  [...marks].sort((a, b) => rank(a) - rank(b) || (rank(a) === 0 ? a.fromM - b.fromM : 0));
