import type { PointView } from '~/app/turnout/point.server';
import { FigureImage } from '../FigureImage';
import { Sheet } from '../Sheet';

/** Sections through flange, point and stock rail, and how they are to be read. */
export function PointSheet({ figure, reading, from }: PointView) {
  return (
    <Sheet title="Flange at the point" id="point-sections">
      <FigureImage figure={figure} />
      <div className="beside beside--even small soft">
        <ul className="plain-list">
          {reading.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
        <ul className="plain-list">
          {from.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      </div>
    </Sheet>
  );
}
