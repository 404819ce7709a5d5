import { describe, expect, it } from 'vitest';
import { readNewSaid, sentBoxes } from '~/app/traces/said.server';
import { buildRecord } from '../../findings/record-builder';

const record = buildRecord({});

function form(boxes: Readonly<Record<string, string>>): FormData {
  const sent = new FormData();
  for (const [name, text] of Object.entries({ disturbance: 'undisturbed', ...boxes })) sent.set(name, text);
  return sent;
}

describe('what is said of an outline while it is brought in', () => {
  it('of a point takes its distance behind the tip, as typed and in mm', () => {
    const { said, errors } = readNewSaid(form({ behind: ' 1 ft ' }), record, 'point');
    expect(errors).toEqual({});
    expect(said.behind).toEqual({ entered: '1 ft', mm: 304.8 });
    expect(readNewSaid(form({ behind: '0' }), record, 'point').said.behind).toEqual({ entered: '0', mm: 0 });
  });

  it('of a point without a readable distance says what to enter and keeps everything typed', () => {
    const sent = form({ behind: '12', note: 'East point', takenAt: 'never' });
    const { errors } = readNewSaid(sent, record, 'point');
    expect(errors.behind).toContain('enter the unit too');
    expect(Object.keys(errors)).toContain('takenAt');
    expect(sentBoxes(sent)).toMatchObject({ behind: '12', note: 'East point', takenAt: 'never' });
    expect(readNewSaid(form({}), record, 'point').errors.behind).toContain('0 for the tip');
  });

  it('of a wheel or rail asks for none', () => {
    for (const shape of ['wheel', 'rail'] as const) {
      const { said, errors } = readNewSaid(form({ behind: 'x' }), record, shape);
      expect([said.behind, errors]).toEqual([null, {}]);
    }
  });
});
