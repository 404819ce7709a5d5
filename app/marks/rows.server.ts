import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { fieldText } from '~/app/entities/table-rows';
import { readingsOf } from '~/app/readings/index.server';
import { readingText } from '~/app/readings/wording';
import { placeOf } from '~/app/subjects/place';
import { stateWords } from '~/app/subjects/state-note';
import { markKind } from '~/lib/case/kinds/ground';
import type { Entity } from '~/lib/case/record';
import { caseMarks } from '~/lib/figures/case-marks';
import { MARK_READINGS } from './columns';
import { inTrackOrder } from './order';

export type MarkRow = {
  readonly id: string;
  /** Kind of mark, with the number it carries in every drawing. */
  readonly name: string;
  readonly href: string;
  readonly isPod: boolean;
  readonly removed: { readonly reason: string } | null;
  /** Column → text; '' where nothing was read or said. */
  readonly texts: Readonly<Record<string, string>>;
};

function rowOf(loaded: LoadedCase, entity: Entity, number: number | undefined): MarkRow {
  const readings = readingsOf(loaded, { kind: 'mark', id: entity.id });
  const read = MARK_READINGS.map((quantity) => {
    const texts = readings.filter((reading) => reading.quantity === quantity).map(readingText);
    return [quantity, texts.join('; ')];
  });
  const said = Object.fromEntries(
    markKind.fields.map((field) => [field.id, fieldText(loaded.record, field, entity.fields[field.id])]),
  );
  return {
    id: entity.id,
    name: `${number === undefined ? '' : `${number} · `}${said.type ?? ''}`,
    href: placeOf(loaded.caseId, { kind: 'mark', id: entity.id }),
    isPod: entity.fields.isPod === true,
    removed: entity.removed && { reason: entity.removed.reason },
    texts: {
      ...Object.fromEntries(read),
      rail: said.rail ?? '',
      appearance: said.appearance ?? '',
      state: stateWords(entity),
    },
  };
}

/** Marks along the track in the direction of travel, those without a place after them, removed ones last. */
export const markRows = (loaded: LoadedCase): readonly MarkRow[] =>
  derived(loaded, 'mark rows', () => {
    const drawn = new Map(caseMarks(loaded.record).map((mark) => [mark.id, mark]));
    return inTrackOrder(
      loaded.record.entities.mark.map((entity) => ({
        entity,
        fromM: drawn.get(entity.id)?.fromM ?? NaN,
        number: drawn.get(entity.id)?.number,
      })),
    ).map(({ entity, number }) => rowOf(loaded, entity, number));
  });
