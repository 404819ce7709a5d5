import { gatherPage } from './gather-page';
import type { Paper } from './paper';
import type { SectionHeading } from './writer';

type Page = { readonly paper: Paper; readonly section: string };

export type ContentsEntry = SectionHeading & { readonly page: number };

/** The pages of a document: what heads each, where the named places are, and which links lead nowhere. */
export type Pages = {
  readonly add: (paper: Paper) => void;
  readonly count: () => number;
  readonly of: (index: number) => Page | undefined;
  /** Says under which section the pages from the next one on run. */
  readonly nextHeading: (heading: SectionHeading) => void;
  /** Enters a section's heading, drawn at `y` on the present page, into outline and contents. */
  readonly heading: (heading: SectionHeading, y: number) => void;
  readonly anchor: (name: string, y: number) => void;
  readonly link: (name: string, box: { x: number; y: number; width: number; height: number }) => void;
  readonly contents: () => readonly ContentsEntry[];
  /** Places that something leads to and that are nowhere. */
  readonly dangling: () => readonly string[];
};

const named = ({ number, title }: SectionHeading): string => (number === '' ? title : `${number} ${title}`);

export function openPages(doc: PDFKit.PDFDocument): Pages {
  const all: Page[] = [];
  const entries: ContentsEntry[] = [];
  const anchors = new Set<string>();
  const wanted = new Set<string>();
  let section = '';

  const anchor = (name: string, y: number): void => {
    if (anchors.has(name)) return;
    anchors.add(name);
    doc.addNamedDestination(name, 'XYZ', 0, Math.max(0, y - 6), null);
  };

  return {
    add(paper) {
      if (all.length > 0) gatherPage(doc);
      doc.addPage({ size: [paper.width, paper.height], margin: 0 });
      all.push({ paper, section });
    },
    count: () => all.length,
    of: (index) => all[index],
    nextHeading(heading) {
      section = named(heading);
    },
    heading(heading, y) {
      section = named(heading);
      entries.push({ ...heading, page: all.length });
      doc.outline.addItem(section);
      anchor(heading.anchor, y);
    },
    anchor,
    link(name, { x, y, width, height }) {
      wanted.add(name);
      doc.goTo(x, y, width, height, name);
    },
    contents: () => entries,
    dangling: () => [...wanted].filter((name) => !anchors.has(name)),
  };
}
