import { pointSectionNotes, pointSectionPages } from '../../figures/point-section';
import { pointSectionData } from '../../figures/point-section-data';
import { paperFor } from '../paper';
import type { Report } from '../report';
import type { Writer } from '../writer';

/** Room kept for the caption below the drawing, points. */
const CAPTION = 62;

/** Flange, point and stock rail of one facing turnout in section, to a stated scale. */
export function pointSectionDrawing(report: Report, writer: Writer, turnoutId: string): void {
  const data = pointSectionData(report.context, turnoutId);
  if (data === null) return;
  const { top, bottom } = paperFor(report.system, 'portrait');
  const most = (bottom - top - CAPTION) / 0.75;
  const pages = pointSectionPages(
    data,
    { width: Math.floor(writer.width() / 0.75), lengthScale: 'paper' },
    most,
  );
  pages.forEach((figure, i) =>
    writer.figure(
      figure,
      `Flange, point and stock rail in section${pages.length === 1 ? '' : `, part ${i + 1} of ${pages.length}`}. ${pointSectionNotes(data).join(' ')}`,
      true,
    ),
  );
}
