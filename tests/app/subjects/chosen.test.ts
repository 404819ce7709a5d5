import { describe, expect, it } from 'vitest';
import { chosenOf } from '~/app/subjects/chosen';
import { placeOf } from '~/app/subjects/place';
import { stateNote, stateWords } from '~/app/subjects/state-note';
import type { Entity } from '~/lib/case/record';

const things = [
  { id: 'a', removed: { at: '', reason: 'twice' } },
  { id: 'b', removed: null },
  { id: 'c', removed: null },
];

describe('the thing a screen shows in full', () => {
  it('is the one named, also when it was removed', () => {
    expect(chosenOf(things, 'c')?.id).toBe('c');
    expect(chosenOf(things, 'a')?.id).toBe('a');
  });

  it('is the first that stands when none is named, or one that is not there', () => {
    expect(chosenOf(things, null)?.id).toBe('b');
    expect(chosenOf(things, 'z')?.id).toBe('b');
    expect(chosenOf([], null)).toBeNull();
  });

  it('has an address', () => {
    expect(placeOf('k', { kind: 'wheelset', id: 'w' })).toBe('/cases/k/wheels?wheelset=w');
    expect(placeOf('k', { kind: 'station', id: 's' })).toBe('/cases/k/records/station/s');
    expect(placeOf('k', { kind: 'case', id: 'k' })).toBe('/cases/k/scene');
  });
});

describe('what is said of its state', () => {
  const thing = (fields: Entity['fields']): Entity => ({
    id: 'x',
    order: 0,
    fields,
    removed: null,
    createdAt: '',
  });

  it.each(['disturbed', 'repaired'])('%s: says that it feeds no finding', (disturbance) => {
    expect(stateNote('wheelset', thing({ disturbance }))).toContain('not used in findings');
    expect(stateWords(thing({ disturbance }))).toContain('not used in findings');
  });

  it('says nothing of what is undisturbed, and something of what nobody said', () => {
    expect(stateNote('rail', thing({ disturbance: 'undisturbed' }))).toBeNull();
    expect(stateNote('rail', thing({ disturbance: null }))).toContain('Not said');
  });

  it('judges a defect by its metal, as the findings do', () => {
    expect(stateNote('wheelDefect', thing({ appearance: 'fresh' }))).toContain('not used in findings');
    expect(stateNote('wheelDefect', thing({ appearance: 'old' }))).toBeNull();
  });
});
