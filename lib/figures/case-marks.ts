import { standing } from '../case/current';
import { markKind } from '../case/kinds/ground';
import type { CaseRecord } from '../case/record';
import { standingValues } from './standing-values';

/** A mark of the case as drawn: numbered in the order of the record. m from the POD; mm from the gauge face. */
export type CaseMark = {
  readonly id: string;
  readonly number: number;
  readonly type: string;
  readonly label: string;
  readonly rail: 'left' | 'right';
  readonly isPod: boolean;
  readonly appearance: string;
  /** NaN where it was not read. */
  readonly fromM: number;
  readonly toM: number;
  readonly offsetFromMm: number;
  readonly offsetToMm: number;
};

const typeField = markKind.fields.find((field) => field.id === 'type');
const TYPE_LABELS: ReadonlyMap<string, string> = new Map(
  typeField?.type === 'choice' ? typeField.choices.map(({ id, label }) => [id, label] as const) : [],
);

/** The case's marks that stand, with the numbers they carry in every drawing. */
export function caseMarks(record: CaseRecord): readonly CaseMark[] {
  const read = standingValues(record);
  return standing(record, 'mark').map((mark, i) => {
    const value = (quantity: string): number => read(mark.id, quantity)?.value ?? NaN;
    const type = String(mark.fields.type ?? 'other');
    return {
      id: mark.id,
      number: i + 1,
      type,
      label: TYPE_LABELS.get(type) ?? 'Other',
      rail: mark.fields.rail === 'right' ? 'right' : 'left',
      isPod: mark.fields.isPod === true,
      appearance: String(mark.fields.appearance ?? 'notSaid'),
      fromM: value('markStart'),
      toM: value('markEnd'),
      offsetFromMm: value('markOffsetStart'),
      offsetToMm: value('markOffsetEnd'),
    };
  });
}

/** The system of units the case is worked in. */
export const systemOf = (record: CaseRecord): 'us' | 'metric' =>
  record.fields.units === 'metric' ? 'metric' : 'us';
