import { quantityOf } from '~/lib/readings/quantities';

export const MARK_READINGS = ['markStart', 'markEnd', 'markOffsetStart', 'markOffsetEnd'] as const;

/** Columns of the table of marks. */
export const MARK_COLUMNS = [
  { id: 'rail', label: 'Rail' },
  { id: 'appearance', label: 'Fresh or old' },
  ...MARK_READINGS.map((id) => ({ id, label: quantityOf(id).short, number: true })),
  { id: 'state', label: 'State when read' },
];
