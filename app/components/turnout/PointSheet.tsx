import type { PointView } from '~/app/turnout/point.server';
import { FigureImage } from '../FigureImage';
import { Sheet } from '../Sheet';

/** Sections through flange, point and stock rail, and how they are to be read. */
export function PointSheet({ figure, notes }: PointView) {
  return (
    <Sheet title="Flange at the point" id="point-sections">
      <FigureImage figure={figure} />
      <ul className="plain-list small soft">
        {notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    </Sheet>
  );
}
