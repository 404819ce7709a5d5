import { PassThrough } from 'node:stream';
import { beforeAll, describe, expect, it } from 'vitest';
import type { CaseRecord } from '~/lib/case/record';
import { assess } from '~/lib/explanations/assess';
import { buildReport } from '~/lib/report/build-report';
import { pdfText } from './pdf-text';
import { traceOf, tracedRecord } from './traced-record';

async function shapesOf(record: CaseRecord): Promise<string> {
  const out = new PassThrough();
  const chunks: Buffer[] = [];
  out.on('data', (chunk: Buffer) => chunks.push(chunk));
  const { sections } = await buildReport(
    {
      record,
      assessment: assess({ record, seed: 1 }),
      recorder: null,
      photoFile: () => null,
      generatedAt: '2031-04-09T14:35:00.000Z',
      version: '0.0.1',
      logHead: 'ab12'.repeat(16),
    },
    out,
  );
  const pages = pdfText(Buffer.concat(chunks));
  const at = sections.findIndex(({ id }) => id === 'shapes');
  const [from, to] = [sections[at]!.page, sections[at + 1]!.page];
  return pages
    .slice(from - 1, to)
    .join('\n')
    .replace(/\s+/g, ' ');
}

/** Outlines are drawn again 200 times each for their uncertainty; a busy machine takes its time. */
const PATIENCE = 180_000;

describe('the shapes of wheels and rails in the report', { timeout: PATIENCE }, () => {
  let text = '';
  beforeAll(async () => {
    text = await shapesOf(tracedRecord('us'));
  }, PATIENCE);

  it('draws the first derailed wheels and the rails, with features, reference and how each was made', () => {
    for (const name of ['Left wheel, axle 1', 'Right wheel, axle 1', 'Left rail, POD', 'Right rail, POD'])
      expect(text).toContain(name);
    expect(text).toContain('Scale 1:1 as printed.');
    expect(text).toContain('Flange thickness, 3/8 in above the tread');
    expect(text).toContain('136RE rail (from memory)');
    expect(text).toContain('From a file: x in column 1, y in column 2, in mm');
    expect(text).toContain('Across the line: laser profilometer.');
    expect(text).toContain('traced 2 February 2030');
    expect(text).toContain('One outline of another wheel is in the appendix of readings');
  });

  it('shows contact centred and at each flange, and wear over the distance run', () => {
    for (const position of ['centred', 'left flange begins to bear', 'right flange begins to bear'])
      expect(text).toContain(`Contact between wheels and rails, wheelset ${position}.`);
    expect(text).toContain('Equivalent conicity at 3 mm');
    expect(text).toContain('Cant of the left rail not read: 0.5° inward, the middle of the usual range.');
    expect(text).toContain('in per 100,000 miles');
    expect(text).toContain('49 CFR 215.103');
  });

  it('says what is missing', async () => {
    const record = tracedRecord('metric');
    const said = await shapesOf({
      ...record,
      traces: record.traces.filter(({ id }) => id === 'c-right'),
    });
    expect(said).toContain('Outlines of the rails were not recorded.');
    expect(said).toContain(
      'missing: an undisturbed outline of the left wheel of the first derailed axle, an undisturbed outline of the left rail near the POD, an undisturbed outline of the right rail near the POD',
    );
    expect(said).toContain('A history of wear was not recorded');
  });

  it('says that no outline was recorded', async () => {
    expect(await shapesOf(tracedRecord('us', []))).toContain(
      'Outlines of wheels, rails and points were not recorded.',
    );
  });

  it('keeps a trace that cannot be placed, with the reason', async () => {
    const line = { xMm: Float64Array.from([0, 1, 2]), yMm: Float64Array.from([0, 0, 0]) };
    const said = await shapesOf(
      tracedRecord('us', [
        traceOf('x', { shape: 'wheel', subject: { kind: 'wheelset', id: 'wheelset-1' }, side: 'left' }, line),
      ]),
    );
    expect(said).toContain('It could not be placed: The line has 3 points.');
    expect(said).toContain('78787878');
  });
});
