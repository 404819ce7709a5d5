import type { Writable } from 'node:stream';
import PDFDocument from 'pdfkit';
import { drawContents } from './contents';
import { drawFurniture } from './furniture';
import { handOn } from './hand-on';
import type { ReportInput } from './input';
import { prepareReport, type Section } from './report';
import { SECTIONS } from './sections';
import { documentId } from './sections/title';
import { createLettering } from './type/lettering';
import { createWriter, type SectionHeading } from './writer';

export type BuiltReport = {
  readonly pages: number;
  /** Sections in order with the page each begins on, from 1. */
  readonly sections: readonly { readonly id: string; readonly page: number }[];
  /** Places that a link leads to and that are nowhere: a fault of a section. */
  readonly dangling: readonly string[];
};

const ANCHOR = 'section-';

function headings(sections: readonly Section[]): ReadonlyMap<Section, SectionHeading> {
  let number = 0;
  let letter = 0;
  return new Map(
    sections.map((section) => {
      if (section.kind === 'numbered') number += 1;
      if (section.kind === 'appendix') letter += 1;
      const label =
        section.kind === 'numbered'
          ? String(number)
          : section.kind === 'appendix'
            ? `Appendix ${String.fromCharCode(64 + letter)}`
            : '';
      const { title, startsPage, orientation, id } = section;
      return [section, { number: label, title, anchor: `${ANCHOR}${id}`, startsPage, orientation }];
    }),
  );
}

/**
 * Writes the report as a PDF to `out` and ends it; resolves when everything is written. Sections
 * follow lib/report/sections. The same input gives the same bytes. Pages are kept open until the end
 * for their numbers; pictures are not: each leaves memory as soon as it is written.
 * Rejects when `out` fails.
 */
export async function buildReport(input: ReportInput, out: Writable): Promise<BuiltReport> {
  const report = prepareReport(input);
  const { fields } = input.record;
  const title = `Derailment investigation ${String(fields.number ?? '')}: ${String(fields.title ?? '')}`;
  const doc = new PDFDocument({
    autoFirstPage: false,
    bufferPages: true,
    pdfVersion: '1.7',
    lang: 'en-US',
    tagged: true,
    displayTitle: true,
    info: {
      Title: title,
      Subject: 'Readings, findings and explanations considered',
      Author: String(fields.railroad ?? ''),
      Keywords: `log head ${input.logHead}`,
      Creator: `Flangemark ${input.version}`,
      // Time and identity of the file come from the input, so that the same input gives the same bytes.
      CreationDate: new Date(input.generatedAt),
    },
  });
  const flow = handOn(doc, out);
  const lettering = createLettering(doc);
  const writer = createWriter(doc, lettering, report.system, flow.breathe);

  const byHeading = headings(SECTIONS);
  let contentsPage = 0;
  for (const [section, heading] of byHeading) {
    if (section.kind === 'cover') {
      writer.newPage();
      await section.build(report, writer);
      writer.pages.nextHeading({ number: '', title: 'Contents', anchor: '' });
      contentsPage = writer.pages.count();
      writer.newPage();
      continue;
    }
    writer.section(heading);
    await section.build(report, writer);
    await flow.breathe();
  }
  writer.settle();

  const total = writer.pages.count();
  const running = `${String(fields.number ?? '')} · ${String(fields.title ?? '')}`;
  for (let i = 0; i < total; i += 1) {
    const page = writer.pages.of(i);
    if (page === undefined) continue;
    doc.switchToPage(i);
    if (i === contentsPage) drawContents(doc, writer.pages, page.paper, lettering);
    drawFurniture(
      doc,
      page.paper,
      { running, section: page.section, documentId: documentId(report), page: i + 1, of: total },
      lettering,
    );
  }
  doc.end();
  await flow.done;
  return {
    pages: total,
    sections: writer.pages.contents().map(({ anchor, page }) => ({ id: anchor.slice(ANCHOR.length), page })),
    dangling: writer.pages.dangling(),
  };
}
