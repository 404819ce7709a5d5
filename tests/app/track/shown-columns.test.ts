import { describe, expect, it } from 'vitest';
import { SHEET_COLUMNS } from '~/app/track/columns';
import { askedColumns, filledColumns, moreColumns, shownColumns } from '~/app/track/shown-columns';

const ids = (indices: readonly number[]): readonly string[] =>
  indices.map((index) => SHEET_COLUMNS[index]?.id ?? '?');
const row = (filled: Readonly<Record<string, string>>) => ({
  cells: SHEET_COLUMNS.map(({ id }) => filled[id] ?? ''),
});
const NONE = filledColumns([]);

describe('columns of the open sheet', () => {
  it('are the usual ones while nothing more was read', () => {
    expect(ids(shownColumns(NONE, []))).toEqual([
      'name',
      'stationPosition',
      'gauge',
      'crosslevel',
      'midOrdinate62',
      'disturbance',
      'joint',
      'note',
    ]);
  });

  it('come with readings, both sides together, and when asked for', () => {
    const filled = filledColumns([row({ name: '0' }), row({ 'profile62.left': '1/4' })]);
    const shown = ids(shownColumns(filled, ['stationCant']));
    for (const id of ['profile62.left', 'profile62.right', 'stationCant.left', 'stationCant.right'])
      expect(shown).toContain(id);
    expect(shown).not.toContain('profile31.left');
    // In the order of the sheet, whatever the order they were asked for.
    expect(shown).toEqual(SHEET_COLUMNS.map(({ id }) => id).filter((id) => shown.includes(id)));
  });

  it('can all be had: what is not shown is offered', () => {
    const offered = moreColumns(NONE, []).flatMap(({ quantities }) => quantities.map(({ id }) => id));
    expect(ids(shownColumns(NONE, offered))).toEqual(SHEET_COLUMNS.map(({ id }) => id));
    expect(offered).toContain('jointTies');
    const filled = filledColumns([row({ soundTies: '9' })]);
    const still = moreColumns(filled, ['tiePlates']).flatMap(({ quantities }) => quantities);
    expect(still.some(({ id }) => id === 'soundTies')).toBe(false);
    expect(still.find(({ id }) => id === 'tiePlates')?.asked).toBe(true);
  });

  it('are taken from an address only when the sheet has them', () => {
    expect(askedColumns(['gauge', 'nothing', 'tiePlates', 'tiePlates'])).toEqual(['gauge', 'tiePlates']);
  });
});
