import { describe, expect, it } from 'vitest';
import type { LoadedCase } from '~/app/case.server';
import { inTrackOrder } from '~/app/marks/order';
import { podQuestions } from '~/app/marks/questions.server';
import { buildRecord, type EntitySpec } from '~/tests/findings/record-builder';

const at = (id: string, fromM: number, removed = false) => ({
  id,
  fromM,
  entity: { removed: removed ? { at: '', reason: '' } : null },
});

describe('marks along the track', () => {
  it('stand as a wheel meets them, then those without a place, removed ones last', () => {
    const marks = [at('gone', -9, true), at('unread', NaN), at('late', 4), at('early', -36), at('pod', 0)];
    expect(inTrackOrder(marks).map(({ id }) => id)).toEqual(['early', 'pod', 'late', 'unread', 'gone']);
  });
});

const questions = (mark: readonly EntitySpec[]) =>
  podQuestions({ record: buildRecord({ mark }), caseId: 'k' } as unknown as LoadedCase);
const pod = (id: string, more = {}) => ({ id, fields: { description: id, isPod: true, ...more } });

describe('questions about the POD', () => {
  it('asks nothing while there is no mark', () => expect(questions([])).toEqual([]));

  it('asks which mark is the first', () => {
    const [question] = questions([{ id: 'm', fields: { description: 'Nick' } }]);
    expect(question?.text).toContain('No mark is said to be the first');
    expect(question?.links).toEqual([
      { text: 'Nick', href: `/cases/k/records/mark/m?back=${encodeURIComponent('/cases/k/marks')}` },
    ]);
  });

  it('asks when more than one is, and leads to each', () => {
    const [question] = questions([pod('a', { walkedBackFt: '200 ft' }), pod('b', { walkedBackFt: '0' })]);
    expect(question?.text).toContain('2 marks are said to be the first');
    expect(question?.links.map(({ text }) => text)).toEqual(['a', 'b']);
  });

  it('asks how far back both rails were searched until somebody says', () => {
    expect(questions([pod('a')])[0]?.text).toContain('How far back');
    expect(questions([pod('a', { walkedBackFt: '200 ft, both rails' })])).toEqual([]);
  });

  it('forgets removed marks', () => {
    expect(questions([{ ...pod('a'), removed: { at: '', reason: 'twice' } }])).toEqual([]);
  });
});
