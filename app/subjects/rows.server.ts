import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { fieldText } from '~/app/entities/table-rows';
import { readingsOf } from '~/app/readings/index.server';
import { KINDS } from '~/lib/case/kinds';
import { nameOfEntity } from '~/lib/case/name-of';
import type { Entity } from '~/lib/case/record';
import type { SubjectKind } from '~/lib/readings/quantity';
import { placeOf } from './place';
import { stateWords } from './state-note';

export type SubjectRow = {
  readonly id: string;
  readonly name: string;
  readonly href: string;
  readonly removed: { readonly reason: string } | null;
  /** Its readings feed no finding: the derailment disturbed it, or it was repaired since. */
  readonly leftOut: boolean;
  readonly cells: Readonly<Record<string, string>>;
};

type Kind = Exclude<SubjectKind, 'case'>;

function rowOf(loaded: LoadedCase, kind: Kind, entity: Entity, columns: readonly string[]): SubjectRow {
  const subject = { kind, id: entity.id };
  const fields = KINDS[kind].fields.filter(({ id }) => columns.includes(id));
  const readings = readingsOf(loaded, subject).length;
  return {
    id: entity.id,
    name: nameOfEntity(loaded.record, kind, entity),
    href: placeOf(loaded.caseId, subject),
    removed: entity.removed && { reason: entity.removed.reason },
    leftOut: entity.fields.disturbance === 'disturbed' || entity.fields.disturbance === 'repaired',
    cells: {
      ...Object.fromEntries(
        fields.map((field) => [field.id, fieldText(loaded.record, field, entity.fields[field.id])]),
      ),
      state: stateWords(entity),
      readings: readings === 0 ? 'none yet' : String(readings),
    },
  };
}

/** The things of a kind as rows of a list, in `order`; removed ones last. */
export const subjectRows = (
  loaded: LoadedCase,
  kind: Kind,
  columns: readonly { readonly id: string }[],
  order: (a: Entity, b: Entity) => number = () => 0,
): readonly SubjectRow[] =>
  derived(loaded, `rows of ${kind}`, () =>
    [...loaded.record.entities[kind]]
      .sort((a, b) => Number(a.removed !== null) - Number(b.removed !== null) || order(a, b))
      .map((entity) =>
        rowOf(
          loaded,
          kind,
          entity,
          columns.map(({ id }) => id),
        ),
      ),
  );
