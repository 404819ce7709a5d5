import { createHash } from 'node:crypto';
import { PassThrough } from 'node:stream';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CaseRecord, Photo, Reading } from '~/lib/case/record';
import { SAFETY_POINTS } from '~/lib/case/safety';
import { assess } from '~/lib/explanations/assess';
import { buildReport, type BuiltReport } from '~/lib/report/build-report';
import type { ReportInput } from '~/lib/report/input';
import { SECTIONS } from '~/lib/report/sections';
import { buildRecord, range, stationSheet } from '../findings/record-builder';
import { pdfText } from './pdf-text';

const HEAD = 'ab12'.repeat(16);

async function print(
  record: CaseRecord,
  more: Partial<ReportInput> = {},
): Promise<{ readonly built: BuiltReport; readonly pdf: Buffer; readonly pages: readonly string[] }> {
  const out = new PassThrough();
  const chunks: Buffer[] = [];
  out.on('data', (chunk: Buffer) => chunks.push(chunk));
  const built = await buildReport(
    {
      record,
      assessment: assess({ record, seed: 1 }),
      recorder: null,
      photoFile: () => null,
      generatedAt: '2031-04-09T14:35:00.000Z',
      version: '0.0.1',
      logHead: HEAD,
      ...more,
    },
    out,
  );
  const pdf = Buffer.concat(chunks);
  return { built, pdf, pages: pdfText(pdf) };
}

const photo: Photo = {
  id: 'photo-1',
  order: 0,
  sha256: 'c'.repeat(64),
  fileName: 'first mark.jpg',
  mime: 'image/jpeg',
  bytes: 1,
  width: 400,
  height: 300,
  takenAt: '2031-04-08T10:00',
  latitude: 46.5,
  longitude: -38.25,
  caption: 'Flange mark, ½ in wide at δ ≤ 70°, µ not measured, 3 ⅜″',
  subject: { kind: 'mark', id: 'mark-1' },
  personId: 'person-1',
  removed: null,
  createdAt: '2031-04-08T12:00:00.000Z',
};

const full = (units: 'us' | 'metric'): CaseRecord => {
  const base = buildRecord({
    units,
    fields: { number: 'T-7', title: 'A case for the report', alignment: 'curveLeft', trackClass: '2' },
    person: [{ id: 'person-1', fields: { name: 'A. Person', role: 'investigator' } }],
    mark: [
      {
        id: 'mark-1',
        fields: { type: 'flangeOnHead', rail: 'right', isPod: true, disturbance: 'undisturbed' },
        readings: [
          { quantity: 'markStart', entered: '0' },
          { quantity: 'markEnd', entered: units === 'us' ? '9 ft' : '3 m' },
        ],
      },
    ],
    station: stationSheet(range(-10, 2), {
      gauge: () => (units === 'us' ? '57' : '1447'),
      crosslevel: () => (units === 'us' ? '2 1/4' : '57'),
    }),
    statement: [{ id: 'statement-1', fields: { person: 'person-1', text: 'The rail was still standing.' } }],
    changes: {
      photos: [photo],
      narrative: {
        summary: 'A car came off.',
        determination: 'Left open by the investigator.',
        signatories: 'A. Person, investigator',
      },
    },
  });
  return corrected(base);
};

/** The first gauge reading corrected, the second withdrawn. */
function corrected(record: CaseRecord): CaseRecord {
  const gauges = record.readings.filter(({ quantity }) => quantity === 'gauge');
  const [first, second] = gauges as [Reading, Reading];
  return {
    ...record,
    readings: [
      ...record.readings,
      { ...first, id: 'corrected', entered: '57 1/8', replaces: first.id, reason: 'read upside down' },
      {
        ...second,
        id: 'withdrawn',
        value: null,
        replaces: second.id,
        reason: 'wrong station',
        withdrawn: true,
      },
    ],
  };
}

const empty = buildRecord({ fields: { number: 'T-8', title: 'Nothing yet' } });

/** A whole document is built in most of these; a busy machine takes its time. */
const PATIENCE = 30_000;

describe('the report', { timeout: PATIENCE }, () => {
  let folder = '';
  let picture = '';
  let whole: Awaited<ReturnType<typeof print>>;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'flangemark-report-'));
    picture = join(folder, 'picture.jpg');
    const pixels = { create: { width: 400, height: 300, channels: 3 as const, background: '#884422' } };
    writeFileSync(picture, await sharp(pixels).jpeg().toBuffer());
    whole = await print(full('us'), { photoFile: () => picture });
  }, PATIENCE);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('has every section in order, each begun on a page of the document', () => {
    const ids = whole.built.sections.map(({ id }) => id);
    expect(ids).toEqual(SECTIONS.filter(({ kind }) => kind !== 'cover').map(({ id }) => id));
    for (const { page } of whole.built.sections) expect(page).toBeLessThanOrEqual(whole.built.pages);
  });

  it('lists them in the contents with the page they begin on', () => {
    const contents = whole.pages[1]?.split('\n') ?? [];
    expect(contents).toContain('Contents');
    for (const { id, page } of whole.built.sections) {
      const { title = '' } = SECTIONS.find((section) => section.id === id) ?? {};
      const at = contents.indexOf(title);
      expect(at, title).toBeGreaterThan(0);
      expect(contents[at + 1], title).toBe(String(page));
      expect(whole.pages[page - 1], title).toContain(title);
    }
  });

  it('numbers every page of all and names the case and its state on each', () => {
    expect(whole.pages).toHaveLength(whole.built.pages);
    whole.pages.forEach((page, i) => {
      expect(page).toContain(`Page ${i + 1} of ${whole.built.pages}`);
      expect(page).toContain(`T-7 · state ${HEAD.slice(0, 12)}`);
    });
  });

  it('leads nowhere that is not there', () => {
    expect(whole.built.dangling).toEqual([]);
  });

  it('prints the safety notice, the summary on one page, the determination and the statement', () => {
    const all = whole.pages.join('\n').replaceAll('\n', ' ');
    for (const { title } of SAFETY_POINTS) expect(all).toContain(`${title}.`);
    const page = (id: string): number => whole.built.sections.find((each) => each.id === id)?.page ?? 0;
    expect(page('occurrence')).toBe(page('summary') + 1);
    expect(all).toContain('Left open by the investigator.');
    expect(all).toContain('The rail was still standing.');
  });

  it('keeps the summary on one page however long the investigator’s words are', async () => {
    const record = full('us');
    const summary = 'Every one of these words says something that matters here. '.repeat(27);
    const { built } = await print({ ...record, narrative: { ...record.narrative, summary } });
    const page = (id: string): number => built.sections.find((each) => each.id === id)?.page ?? 0;
    expect(page('occurrence')).toBe(page('summary') + 1);
  });

  it('prints a photo with caption, time, position, hash and what it shows, with the trade’s symbols', () => {
    const at = whole.built.sections.find(({ id }) => id === 'photos')?.page ?? 0;
    const page = whole.pages[at - 1] ?? '';
    expect(page.replaceAll('\n', ' ')).toContain('½ in wide at δ ≤ 70°, µ not measured, 3 ⅜″');
    expect(page).toContain('46.50000° N, 38.25000° W');
    expect(page).toContain('c'.repeat(64));
    expect(page).toContain('8 April 2031, 10:00');
    expect(whole.pdf.includes('/DCTDecode')).toBe(true);
  });

  it('keeps corrected and withdrawn readings in the appendix with the reason', () => {
    const all = whole.pages.join(' ').replaceAll('\n', ' ');
    expect(all).toContain(': read upside down.');
    expect(all).toContain(': wrong station.');
    expect(all).toMatch(/Corrected by\s+R\d+/);
    expect(all).toMatch(/Withdrawn by\s+R\d+/);
    for (let i = 1; i <= full('us').readings.length; i += 1) expect(all).toMatch(new RegExp(`\\bR${i}\\b`));
  });

  it('is the same to the last byte when built again', async () => {
    const again = await print(full('us'), { photoFile: () => picture });
    const hash = (pdf: Buffer): string => createHash('sha256').update(pdf).digest('hex');
    expect(hash(again.pdf)).toBe(hash(whole.pdf));
    const later = await print(full('us'), {
      photoFile: () => picture,
      generatedAt: '2031-04-10T00:00:00.000Z',
    });
    expect(hash(later.pdf)).not.toBe(hash(whole.pdf));
  });

  it('carries its title, language and outline', () => {
    const text = whole.pdf.toString('latin1');
    expect(text).toContain('/Lang (en-US)');
    expect(text).toContain('/Marked true');
    expect(text).toContain('Derailment investigation T-7: A case for the report');
    expect(text.match(/\/Title \(/g)?.length).toBeGreaterThanOrEqual(SECTIONS.length - 1);
  });

  it('says of every part that nobody recorded that it was not recorded', async () => {
    const { built, pages } = await print(empty);
    expect(built.sections.map(({ id }) => id)).toEqual(whole.built.sections.map(({ id }) => id));
    expect(built.dangling).toEqual([]);
    const all = pages.join('\n');
    for (const part of [
      'Photos',
      'Statements',
      'Marks on rails',
      'Track stations',
      'The vehicles of the train',
    ]) {
      expect(all).toMatch(new RegExp(`${part}[^\\n]*\\n?[^\\n]*not recorded`));
    }
    expect(all).toContain('An event recorder was not recorded.');
    expect(all).toContain('A turnout was not recorded.');
    expect(all).toContain('A determination was not recorded.');
  });

  it('says that a picture is missing and goes on', async () => {
    const { pages } = await print(full('us'));
    expect(pages.join('\n')).toContain('The picture file is missing.');
  });

  it('is on letter paper in inches and on A4 in millimetres', async () => {
    const metric = await print(full('metric'));
    expect(whole.pdf.toString('latin1')).toContain('/MediaBox [0 0 612 792]');
    expect(metric.pdf.toString('latin1')).toMatch(/\/MediaBox \[0 0 595\.2\d* 841\.8\d*\]/);
    expect(metric.pages.join('\n')).toContain('1447');
  });

  it('refuses when it cannot be written', async () => {
    const out = new PassThrough();
    out.destroy(new Error('disk full'));
    const record = full('us');
    await expect(
      buildReport(
        {
          record,
          assessment: assess({ record, seed: 1 }),
          recorder: null,
          photoFile: () => null,
          generatedAt: '2031-04-09T14:35:00.000Z',
          version: '0.0.1',
          logHead: HEAD,
        },
        out,
      ),
    ).rejects.toThrow('disk full');
  });
});
