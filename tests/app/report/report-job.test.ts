import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { database, loadCase } from '~/app/case.server';
import { files } from '~/app/files.server';
import { reportParts } from '~/app/report/parts.server';
import { saveWords } from '~/app/report/save-words.server';
import { writeReport } from '~/app/work/report-job.server';
import type { Actor } from '~/db/actor';
import { createCase } from '~/db/cases';
import { addEntity } from '~/db/entities';
import { takePhotoIn } from '~/db/photo-intake';
import { assess } from '~/lib/explanations/assess';
import { pdfText } from '../../report/pdf-text';

const actor: Actor = { personId: null, name: 'Test' };
const FIELDS = { number: 'J-1', title: 'Job', units: 'us', ruleSet: 'us-49cfr213' };

const words = (given: Readonly<Record<string, string>>): FormData => {
  const form = new FormData();
  for (const [name, value] of Object.entries(given)) form.set(name, value);
  return form;
};

describe('the report of a stored case', { timeout: 30_000 }, () => {
  const before = process.env.FLANGEMARK_DATA;
  let folder = '';
  let caseId = '';
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'flangemark-job-'));
    process.env.FLANGEMARK_DATA = folder;
    caseId = createCase(database(), FIELDS, actor);
    const bytes = await sharp({ create: { width: 40, height: 30, channels: 3, background: '#446688' } })
      .jpeg()
      .toBuffer();
    const about = { caption: 'A photo of the job', subject: null, personId: null };
    const file = { fileName: 'a.jpg', bytes };
    const taken = await takePhotoIn(database(), files(), caseId, file, about, actor, new Set());
    expect(taken.ok).toBe(true);
  });
  afterAll(() => {
    database().$client.close();
    if (before === undefined) delete process.env.FLANGEMARK_DATA;
    else process.env.FLANGEMARK_DATA = before;
    rmSync(folder, { recursive: true, force: true });
  });

  const printed = async (): Promise<{ path: string; text: string }> => {
    const loaded = loadCase({ caseId });
    const path = await writeReport(loaded, assess({ record: loaded.record, seed: 1 }));
    return { path, text: pdfText(readFileSync(path)).join('\n') };
  };

  it('is written whole, with the photo, the log in words and the state it was made of', async () => {
    const { head } = loadCase({ caseId });
    const { path, text } = await printed();
    expect(readFileSync(path).subarray(0, 5).toString()).toBe('%PDF-');
    expect(text.replaceAll('\n', ' ')).toContain('A photo of the job');
    expect(text).toContain('Opened the case');
    expect(text).toContain(head.slice(0, 12));
    expect(
      readdirSync(join(folder, 'derived', 'reports')).filter((name) => name.startsWith('unfinished')),
    ).toEqual([]);
  });

  it('is another file once the case has changed', async () => {
    const first = await printed();
    expect(
      saveWords(
        loadCase({ caseId }),
        words({ summary: 'It came off.', determination: '', signatories: '' }),
        actor,
      ),
    ).toBeNull();
    const second = await printed();
    expect(second.path).not.toBe(first.path);
    expect(second.text).toContain('It came off.');
  });

  it('refuses words that are too long and keeps what was entered', () => {
    const long = 'x'.repeat(1601);
    const refused = saveWords(
      loadCase({ caseId }),
      words({ summary: long, determination: 'kept', signatories: '' }),
      actor,
    );
    expect(refused?.errors.summary).toBe('Summary has 1601 characters. Shorten it to 1600 or fewer.');
    expect(refused?.entered).toEqual({ summary: long, determination: 'kept', signatories: '' });
    expect(loadCase({ caseId }).record.narrative.determination).toBe('');
  });

  it('names the gaps of the report before it is printed', () => {
    const gaps = (): Readonly<Record<string, string>> =>
      Object.fromEntries(reportParts(loadCase({ caseId })).map(({ name, gap }) => [name, gap]));
    expect(gaps()['Point of derailment and marks']).toContain('not recorded');
    expect(gaps().Photos).toBe('');
    addEntity(database(), caseId, 'mark', { type: 'flangeOnHead', rail: 'right' }, actor);
    expect(gaps()['Point of derailment and marks']).toBe('');
  });
});
