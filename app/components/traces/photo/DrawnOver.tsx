import type { Drawing, PointKind } from '~/app/traces/photo/drawing';
import { SCALE_WAYS, type ScaleWay } from '~/app/traces/photo/scale';
import type { PixelPoint } from '~/lib/tracing/line';

type Props = {
  readonly drawing: Drawing;
  readonly way: ScaleWay;
  /** Points of this kind can be taken hold of. */
  readonly sets: PointKind;
  /** Pixels of the picture to one CSS pixel. */
  readonly grain: number;
};

const pointsText = (points: readonly PixelPoint[]): string =>
  points.map(([x, y]) => `${(x + 0.5).toFixed(1)},${(y + 0.5).toFixed(1)}`).join(' ');

function scaleLines(way: ScaleWay, marks: readonly PixelPoint[]): readonly (readonly PixelPoint[])[] {
  if (way === 'sheet') {
    const first = marks[0];
    return [marks.length === SCALE_WAYS.sheet.marks && first ? [...marks, first] : marks];
  }
  return [marks.slice(0, 2), marks.slice(2, 4)];
}

type HandleProps = {
  readonly kind: PointKind;
  readonly index: number;
  readonly at: PixelPoint;
  readonly grain: number;
  readonly held: boolean;
};

function Handle({ kind, index, at: [x, y], grain, held }: HandleProps) {
  const [cx, cy] = [x + 0.5, y + 0.5];
  return (
    <g className={`desk__point desk__point--${kind}`}>
      <circle cx={cx} cy={cy} r={5 * grain} />
      <circle className="desk__dot" cx={cx} cy={cy} r={1.2 * grain} />
      {kind === 'marks' && (
        <text x={cx + 9 * grain} y={cy - 7 * grain} fontSize={15 * grain}>
          {index + 1}
        </text>
      )}
      {/* A finger is wider than the ring it aims at. */}
      {held && (
        <circle className="desk__grip" data-kind={kind} data-index={index} cx={cx} cy={cy} r={13 * grain} />
      )}
    </g>
  );
}

/** Scale marks and the followed line, drawn over the picture. Straight stretches are broken lines. */
export function DrawnOver({ drawing, way, sets, grain }: Props) {
  const { marks, clicks, stretches } = drawing;
  return (
    <>
      {scaleLines(way, marks).map((points, index) => (
        <polyline key={index} className="desk__scale" points={pointsText(points)} />
      ))}
      {stretches.map((line, index) => {
        const ends = [clicks[index], clicks[index + 1]].filter((point) => point !== undefined);
        return (
          <g key={index}>
            <polyline className="desk__halo" points={pointsText(line?.points ?? ends)} />
            <polyline
              className={line?.followed ? 'desk__line' : 'desk__line desk__line--straight'}
              points={pointsText(line?.points ?? ends)}
            />
          </g>
        );
      })}
      {marks.map((at, index) => (
        <Handle key={index} kind="marks" index={index} at={at} grain={grain} held={sets === 'marks'} />
      ))}
      {clicks.map((at, index) => (
        <Handle key={index} kind="clicks" index={index} at={at} grain={grain} held={sets === 'clicks'} />
      ))}
    </>
  );
}
