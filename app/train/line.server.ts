import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { readingsOf } from '~/app/readings/index.server';
import { readingText } from '~/app/readings/wording';
import { choiceLabel } from '~/lib/case/choice-label';
import { lineStretchKind } from '~/lib/case/kinds/line-stretch';
import type { Entity } from '~/lib/case/record';

/** A row of the line's profile as entered, each value with the reading it is. */
export type LineRowView = {
  readonly id: string;
  readonly name: string;
  readonly hand: string;
  readonly cells: Readonly<Record<LineQuantity, { readonly id: string; readonly text: string } | null>>;
  readonly note: string;
  readonly removed: { readonly reason: string } | null;
};

const QUANTITIES = ['lineFrom', 'lineTo', 'lineGrade', 'lineCurvature'] as const;
export type LineQuantity = (typeof QUANTITIES)[number];

function rowOf(loaded: LoadedCase, entity: Entity): LineRowView & { readonly fromM: number } {
  const readings = readingsOf(loaded, { kind: 'lineStretch', id: entity.id });
  const latest = (quantity: string) =>
    readings.filter((reading) => reading.quantity === quantity && !reading.withdrawn).at(-1);
  const { name, hand, note } = entity.fields;
  return {
    id: entity.id,
    name: String(name ?? ''),
    hand: choiceLabel(lineStretchKind.fields, 'hand', hand) ?? '',
    cells: Object.fromEntries(
      QUANTITIES.map((quantity) => {
        const reading = latest(quantity);
        return [quantity, reading ? { id: reading.id, text: readingText(reading) } : null];
      }),
    ) as LineRowView['cells'],
    note: String(note ?? ''),
    removed: entity.removed && { reason: entity.removed.reason },
    fromM: latest('lineFrom')?.value ?? Infinity,
  };
}

/** The line's profile in the order of distance, removed rows last. */
export const lineRows = (loaded: LoadedCase): readonly LineRowView[] =>
  derived(loaded, 'rows of the line', () =>
    loaded.record.entities.lineStretch
      .map((entity) => rowOf(loaded, entity))
      .sort((a, b) => Number(a.removed !== null) - Number(b.removed !== null) || a.fromM - b.fromM),
  );
