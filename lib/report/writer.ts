import { drawFigure } from '../figures/pdf';
import type { Figure } from '../figures/shapes';
import type { UnitSystem } from '../readings/unit';
import { openPages, type Pages } from './pages';
import { paperFor, type Orientation, type Paper } from './paper';
import { pictureReader } from './picture-reader';
import { planPages, type Chunk } from './table/pages';
import { CELL, divideRow, layoutTable, type LaidRow, type LaidTable, type Table } from './table/table';
import type { Measure } from './type/faces';
import { INK } from './type/inks';
import type { Lettering, Stroke } from './type/lettering';
import { bold, breakLines, faint, join, type Inline, type InlineStyle, type Line } from './type/inline';

export const BODY = 9.2;
const LEADING = 1.42;
const PARAGRAPH_GAP = 5;
/** Indent of a list's words behind their point. */
const HANG = 11;
const NBSP = '\u00a0';
/** Longer tables are tagged row by row: a reader's program gains little from 50,000 cells. */
const TAGGED_CELLS = 150;
/** A figure may be drawn this much smaller to stay on the page of its text. */
const LEAST_SHRINK = 0.8;
/** A table smaller than this share of a page is not divided. */
const KEPT_WHOLE = 0.28;

const sum = (numbers: readonly number[]): number => numbers.reduce((total, each) => total + each, 0);

export type SectionHeading = {
  /** "4" or "Appendix A"; empty for parts without one. */
  readonly number: string;
  readonly title: string;
  readonly anchor: string;
  readonly startsPage?: boolean;
  readonly orientation?: Orientation;
};

type TextOptions = Partial<InlineStyle> & {
  readonly indent?: number;
  readonly after?: number;
  /** Stays on one page with what follows. */
  readonly leadsTo?: boolean;
};

/** Where a box stands on a page, points. */
export type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** Sets text, tables and figures one below the other and starts pages as they are needed. */
export type Writer = {
  readonly system: UnitSystem;
  readonly measure: Measure;
  readonly pages: Pages;
  readonly paper: () => Paper;
  readonly width: () => number;
  readonly section: (heading: SectionHeading) => void;
  readonly heading: (text: string) => void;
  readonly text: (inline: Inline, options?: TextOptions) => void;
  /** Heads what follows as bold words on their own line. */
  readonly lead: (text: string) => void;
  readonly list: (items: readonly Inline[]) => void;
  readonly pairs: (rows: readonly (readonly [string, Inline])[]) => void;
  readonly table: (caption: Inline, table: Table) => void;
  /** `toScale`: never shrunk to fit what is left of a page, for a stated scale would not hold. */
  readonly figure: (figure: Figure, caption: Inline, toScale?: boolean) => void;
  readonly note: (title: string, text: Inline, tone?: 'plain' | 'warn') => void;
  readonly space: (points: number) => void;
  readonly newPage: (orientation?: Orientation) => void;
  /** A block of a height that stays together; draws with the box it was given. */
  readonly block: (height: number, tag: string, alt: string | null, draw: (box: Box) => void) => void;
  /** A pale box with a bar of ink on its left edge. */
  readonly panel: (box: Box, ink: string) => void;
  readonly lines: (
    lines: readonly Line[],
    x: number,
    y: number,
    style: { size: number; lead: number },
  ) => void;
  /** A JPEG file, set into the box. */
  readonly picture: (path: string, box: Box) => void;
  readonly missing: (box: Box, words: string) => void;
  readonly frame: (box: Box, ink: string) => void;
  readonly rule: (from: number, to: number, y: number, ink: string) => void;
  /** Lines an item of a list takes, and the height of one, points. */
  readonly linesOf: (item: Inline) => number;
  readonly lineHeight: number;
  /** Height left on the page, points. */
  readonly room: () => number;
  /** Gives the next thing drawn a name that links lead to. */
  readonly anchorNext: (name: string) => void;
  /** Lets what is written so far leave memory. */
  readonly breathe: () => Promise<void>;
  /** Draws headings that wait for something to follow. */
  readonly settle: () => void;
};

type Waiting = { readonly height: number; readonly draw: () => void; readonly heading?: SectionHeading };

/** A writer on a document with its letters. */
export function createWriter(
  doc: PDFKit.PDFDocument,
  lettering: Lettering,
  system: UnitSystem,
  breathe: () => Promise<void>,
): Writer {
  const { measure } = lettering;
  const pages = openPages(doc);
  const readPicture = pictureReader();
  let paper = paperFor(system, 'portrait');
  let y = paper.top;
  let waiting: Waiting[] = [];
  let tables = 0;
  let figures = 0;
  let element: PDFKit.PDFStructureElement | null = null;

  const width = (): number => paper.right - paper.left;
  const room = (): number => paper.bottom - y;
  const pageRoom = (): number => paper.bottom - paper.top;
  const atTop = (): boolean => y <= paper.top + 0.5;

  function newPage(orientation: Orientation = paper.width > paper.height ? 'landscape' : 'portrait'): void {
    paper = paperFor(system, orientation);
    pages.add(paper);
    y = paper.top;
  }

  /** The next page, headed by the section that is about to begin on it. */
  function turnPage(): void {
    const due = waiting.find((each) => each.heading !== undefined)?.heading;
    if (due !== undefined) pages.nextHeading(due);
    newPage();
  }

  /** Makes room for a block together with the headings that wait for it, and draws those. */
  function begin(least: number): void {
    if (least === 0 && waiting.length === 0) return;
    const before = sum(waiting.map((each) => each.height));
    if (before + Math.min(least, pageRoom() - before) > room() && !atTop()) turnPage();
    const due = waiting;
    waiting = [];
    for (const { height, draw } of due) {
      draw();
      y += height;
    }
  }

  function tagged(type: string, draw: () => void, alt?: string): void {
    if (element === null) return draw();
    const child = doc.struct(type, alt === undefined ? {} : { alt }, () => draw());
    element.add(child);
    child.end();
  }

  function drawLines(
    lines: readonly Line[],
    x: number,
    top: number,
    { size, lead }: { size: number; lead: number },
    align: 'left' | 'right' | 'centre' = 'left',
    within = 0,
  ): void {
    const strokes: Stroke[] = [];
    lines.forEach((line, i) => {
      const shift =
        align === 'right' ? within - line.width : align === 'centre' ? (within - line.width) / 2 : 0;
      const baseline = top + i * lead + size * 0.96;
      for (const { text: letters, x: at, width: wide, face, ink, goTo } of line.pieces) {
        strokes.push({ text: letters, x: x + shift + at, baseline, size, face, ink });
        if (goTo !== undefined)
          pages.link(goTo, { x: x + shift + at, y: baseline - size, width: wide, height: lead });
      }
    });
    lettering.write(strokes);
  }

  function text(inline: Inline, options: TextOptions = {}): void {
    const { size = BODY, indent = 0, after = PARAGRAPH_GAP, face, ink } = options;
    const lead = size * LEADING;
    const lines = breakLines(inline, width() - indent, { size, face, ink }, measure);
    if (options.leadsTo) {
      waiting.push({
        height: lines.length * lead + after,
        draw: () => tagged('P', () => drawLines(lines, paper.left + indent, y, { size, lead })),
      });
      return;
    }
    begin(Math.min(2, lines.length) * lead);
    let from = 0;
    while (from < lines.length) {
      let count = Math.max(1, Math.min(lines.length - from, Math.floor((room() + 0.01) / lead)));
      // A line is not left alone at the head of the next page.
      if (lines.length - from - count === 1 && count > 2) count -= 1;
      const part = lines.slice(from, from + count);
      tagged('P', () => drawLines(part, paper.left + indent, y, { size, lead }));
      y += count * lead;
      from += count;
      if (from < lines.length) newPage();
    }
    y += after;
  }

  function section(heading: SectionHeading): void {
    begin(0);
    if (element !== null) element.end();
    element = doc.struct('Sect', { title: heading.title });
    doc.addStructure(element);
    const orientation = heading.orientation ?? 'portrait';
    const turned = (paper.width > paper.height ? 'landscape' : 'portrait') !== orientation;
    if (heading.startsPage || turned || pages.count() === 0 || room() < pageRoom() * 0.3) {
      pages.nextHeading(heading);
      newPage(orientation);
    }
    const size = 15;
    const above = atTop() ? 0 : 18;
    const lines = breakLines(
      heading.number === ''
        ? heading.title
        : [{ text: heading.number, ink: 'accent' }, { text: ` ${NBSP}${heading.title}` }],
      width(),
      { size, face: 'bold' },
      measure,
    );
    const lead = size * 1.25;
    const height = above + lines.length * lead + 12;
    waiting.push({
      height,
      heading,
      draw: () => {
        const top = atTop() ? y : y + above;
        pages.heading(heading, top);
        tagged('H1', () => drawLines(lines, paper.left, top, { size, lead }));
        const rule = top + lines.length * lead + 3;
        doc
          .moveTo(paper.left, rule)
          .lineTo(paper.right, rule)
          .lineWidth(0.8)
          .strokeColor(INK.accent)
          .stroke();
        if (top === y) y -= above;
      },
    });
  }

  function heading(words: string): void {
    const size = 10.6;
    const lead = size * 1.3;
    const lines = breakLines(words, width(), { size, face: 'bold' }, measure);
    const above = 8;
    waiting.push({
      height: above + lines.length * lead + 3,
      draw: () => tagged('H2', () => drawLines(lines, paper.left, y + above, { size, lead })),
    });
  }

  function lead(words: string): void {
    const leading = BODY * LEADING;
    const lines = breakLines(words, width(), { size: BODY, face: 'bold' }, measure);
    waiting.push({
      height: 3 + lines.length * leading + 1,
      draw: () => tagged('H3', () => drawLines(lines, paper.left, y + 3, { size: BODY, lead: leading })),
    });
  }

  function list(items: readonly Inline[]): void {
    const size = BODY;
    const leading = size * LEADING;
    items.forEach((item, index) => {
      const lines = breakLines(item, width() - HANG, { size }, measure);
      begin(Math.min(2, lines.length) * leading);
      let from = 0;
      while (from < lines.length) {
        let count = Math.max(1, Math.min(lines.length - from, Math.floor((room() + 0.01) / leading)));
        if (lines.length - from - count === 1 && count > 2) count -= 1;
        const part = lines.slice(from, from + count);
        tagged('LI', () => {
          if (from === 0) {
            doc
              .circle(paper.left + 3, y + leading * 0.46, 1.15)
              .fillColor(INK.accent)
              .fill();
          }
          drawLines(part, paper.left + HANG, y, { size, lead: leading });
        });
        y += count * leading;
        from += count;
        if (from < lines.length) newPage();
      }
      y += index === items.length - 1 ? PARAGRAPH_GAP : 2;
    });
  }

  function pairs(rows: readonly (readonly [string, Inline])[]): void {
    const label = Math.min(150, width() * 0.25);
    setTable(null, {
      size: BODY,
      columns: [{ head: '', width: label }, { head: '' }],
      rows: rows.map(([name, value]) => ({ cells: [[faint(name)], value] })),
    });
  }

  function table(caption: Inline, given: Table): void {
    tables += 1;
    setTable(join([bold(`Table ${tables}  `)], caption), given);
  }

  function setTable(caption: Inline | null, given: Table): void {
    const laid = layoutTable(given, width(), measure);
    if (laid.rows.length === 0) return;
    const size = 8;
    const captionLead = size * 1.35;
    const captionLines = caption === null ? [] : breakLines(caption, width(), { size }, measure);
    const captionHeight = caption === null ? 0 : captionLines.length * captionLead + 4;
    const again =
      caption === null
        ? []
        : breakLines([{ text: `Table ${tables}, continued`, ink: 'faint' }], width(), { size: 7.4 }, measure);
    const againHeight = caption === null ? 0 : 12;
    const before = sum(waiting.map((each) => each.height));
    const next = pageRoom() - againHeight;
    const rows = laid.rows.flatMap((row) =>
      divideRow(row, next - laid.headHeight - captionHeight - before, laid.lead),
    );
    const plan = (mayMove: boolean): readonly Chunk[] =>
      planPages(
        rows.map((row) => row.height),
        { head: laid.headHeight, first: room() - before - captionHeight, next, mayMove },
        (i) => rows[i]?.row.heads ?? false,
      );
    const whole = before + captionHeight + laid.headHeight + sum(rows.map((row) => row.height));
    const small = whole < pageRoom() * KEPT_WHOLE && whole > room();
    let chunks = plan(!atTop());
    if (chunks[0]?.to === 0 || (small && !atTop())) {
      turnPage();
      chunks = plan(false);
    }
    begin(0);
    let continued = false;
    for (const chunk of chunks) {
      if (continued) newPage();
      if (!continued && caption !== null) {
        tagged('Caption', () => drawLines(captionLines, paper.left, y + 1, { size, lead: captionLead }));
        y += captionHeight;
      } else if (continued && caption !== null) {
        drawLines(again, paper.left, y, { size: 7.4, lead: 10 });
        y += againHeight;
      }
      drawChunk({ ...laid, rows }, chunk);
      continued = true;
    }
    y += caption === null ? 5 : 4;
    for (const note of given.notes ?? []) text([faint(note)], { size: 7.2, after: 1 });
    if (caption !== null) y += 7;
  }

  function rowAt(laid: LaidTable, row: LaidRow, cellType: string, cellTags: boolean): void {
    const style = { size: laid.size, lead: laid.lead };
    if (row.row.anchor !== undefined) pages.anchor(row.row.anchor, y);
    const drawCells = (each: (draw: () => void) => void): void => {
      let x = paper.left;
      row.cells.forEach((lines, i) => {
        const wide = row.row.heads ? width() : (laid.widths[i] ?? 0);
        const align = row.row.heads ? 'left' : (laid.table.columns[i]?.align ?? 'left');
        const at = x;
        each(() => drawLines(lines, at + CELL.side, y + CELL.above, style, align, wide - 2 * CELL.side));
        x += wide;
      });
    };
    if (element === null) return drawCells((draw) => draw());
    const tr = doc.struct('TR');
    element.add(tr);
    if (cellTags) {
      drawCells((draw) => {
        const cell = doc.struct(cellType, {}, () => draw());
        tr.add(cell);
        cell.end();
      });
    } else {
      const cell = doc.struct(cellType, {}, () => drawCells((draw) => draw()));
      tr.add(cell);
      cell.end();
    }
    tr.end();
  }

  function drawChunk(laid: LaidTable, { from, to }: Chunk): void {
    const cellTags = laid.rows.length <= TAGGED_CELLS;
    const outer = element;
    if (outer !== null) {
      element = doc.struct('Table');
      outer.add(element);
    }
    const rule = (at: number, thick: number, ink: string): void => {
      doc.moveTo(paper.left, at).lineTo(paper.right, at).lineWidth(thick).strokeColor(ink).stroke();
    };
    if (laid.headHeight > 0) {
      rule(y, 0.8, INK.text);
      rowAt(laid, { row: { cells: [] }, cells: laid.head, height: laid.headHeight }, 'TH', true);
      y += laid.headHeight;
      rule(y, 0.5, INK.text);
    }
    for (let i = from; i < to; i += 1) {
      const row = laid.rows[i];
      if (row === undefined) continue;
      if (row.row.heads) doc.rect(paper.left, y, width(), row.height).fillColor(INK.panel).fill();
      rowAt(laid, row, 'TD', cellTags);
      y += row.height;
      if (i < to - 1) rule(y, 0.35, INK.hairline);
    }
    if (laid.headHeight > 0) rule(y, 0.6, INK.rule);
    if (outer !== null) {
      element?.end();
      element = outer;
    }
  }

  function block(height: number, tag: string, alt: string | null, draw: (box: Box) => void): void {
    begin(height);
    const box = { x: paper.left, y, width: width(), height };
    tagged(tag, () => draw(box), alt ?? undefined);
    y += height;
  }

  function figure(drawing: Figure, caption: Inline, toScale = false): void {
    figures += 1;
    const size = 8;
    const captionLead = size * 1.35;
    const lines = breakLines(join([bold(`Figure ${figures}  `)], caption), width(), { size }, measure);
    const below = 6 + lines.length * captionLead + 10;
    const before = sum(waiting.map((each) => each.height));
    // 0.75 pt per unit is the drawing's own size; a scale stated in it holds only then.
    let scale = Math.min(0.75, width() / drawing.width, (pageRoom() - before - below) / drawing.height);
    const left = (room() - before - below) / drawing.height;
    if (!toScale && left < scale && left >= scale * LEAST_SHRINK) scale = left;
    const tall = drawing.height * scale;
    begin(tall + below);
    const wide = drawing.width * scale;
    tagged(
      'Figure',
      () => {
        drawFigure(
          doc,
          drawing,
          { x: paper.left + (width() - wide) / 2, y, width: wide },
          { body: 'figure', bold: 'figureBold' },
        );
      },
      `${drawing.title}. ${drawing.description}`,
    );
    y += tall + 6;
    tagged('Caption', () => drawLines(lines, paper.left, y, { size, lead: captionLead }));
    y += below - 6;
  }

  function panel({ x, y: top, width: wide, height }: Box, ink: string): void {
    doc.rect(x, top, wide, height).fillColor(INK.panel).fill();
    doc.rect(x, top, 2.2, height).fillColor(ink).fill();
  }

  function note(title: string, inline: Inline, tone: 'plain' | 'warn' = 'plain'): void {
    const pad = 9;
    const lead = BODY * 1.38;
    const lines = breakLines(
      join([{ text: title, face: 'bold', ink: tone === 'warn' ? 'warn' : 'text' }, { text: '\n' }], inline),
      width() - 2 * pad - 4,
      { size: BODY },
      measure,
    );
    const height = lines.length * lead + 2 * pad - 3;
    block(height, 'Note', null, (box) => {
      panel(box, tone === 'warn' ? INK.warn : INK.accent);
      drawLines(lines, box.x + pad + 4, box.y + pad - 2, { size: BODY, lead });
    });
    y += 8;
  }

  return {
    system,
    measure,
    pages,
    paper: () => paper,
    width,
    section,
    heading,
    lead,
    text,
    list,
    pairs,
    table,
    figure,
    note,
    block,
    panel,
    lines: drawLines,
    newPage,
    breathe,
    picture: (path, box) => {
      doc.image(readPicture(path), box.x, box.y, { width: box.width, height: box.height });
    },
    missing: (box, words) => {
      doc.rect(box.x, box.y, box.width, box.height).fillColor(INK.panel).fill();
      const lines = breakLines([faint(words)], box.width - 20, { size: BODY }, measure);
      drawLines(lines, box.x + 10, box.y + 10, { size: BODY, lead: BODY * LEADING });
    },
    frame: (box, ink) => {
      doc.rect(box.x, box.y, box.width, box.height).lineWidth(0.4).strokeColor(ink).stroke();
    },
    rule: (from, to, at, ink) => {
      doc.moveTo(from, at).lineTo(to, at).lineWidth(0.5).strokeColor(ink).stroke();
    },
    linesOf: (item) => breakLines(item, width() - HANG, { size: BODY }, measure).length,
    lineHeight: BODY * LEADING,
    room,
    anchorNext: (name) => {
      waiting.push({ height: 0, draw: () => pages.anchor(name, y) });
    },
    space: (points) => {
      y += points;
    },
    settle: () => {
      begin(0);
      element?.end();
      element = null;
    },
  };
}
