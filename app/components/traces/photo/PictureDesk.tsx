import { useEffect, useRef, useState, type KeyboardEvent } from 'react';
import type { Drawing, PointKind } from '~/app/traces/photo/drawing';
import type { ScaleWay } from '~/app/traces/photo/scale';
import { inside, middle, showing, whole, zoomed, type Size, type Window } from '~/app/traces/photo/window';
import type { PixelPoint } from '~/lib/tracing/line';
import { DrawnOver } from './DrawnOver';
import { useHands, type Dragged } from './use-hands';

type Props = {
  readonly url: string;
  readonly size: Size;
  readonly drawing: Drawing;
  readonly way: ScaleWay;
  /** What a tap on the picture sets. */
  readonly sets: PointKind;
  /** False once every mark of the scale is set. */
  readonly takesMore: boolean;
  readonly onAdd: (point: PixelPoint) => void;
  readonly onMove: (kind: PointKind, index: number, point: PixelPoint) => void;
  readonly onUndo: () => void;
};

const ZOOM_STEP = 1.6;
/** Steps of the cross in CSS pixels: plain, and with Shift. */
const STEP_PX = { plain: 8, fine: 1 } as const;
const ARROWS: Readonly<Record<string, PixelPoint>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
const CURSOR_PX = 18;
/** So that the whole picture and the buttons below it are seen at once. */
const TALLEST_VH = 78;

const whileDragged = (drawing: Drawing, dragged: Dragged | null): Drawing =>
  dragged === null
    ? drawing
    : {
        ...drawing,
        [dragged.kind]: drawing[dragged.kind].map((point, index) =>
          index === dragged.index ? dragged.point : point,
        ),
      };

/** The picture with what is set on it: tap to set a point, drag a point or the picture, pinch or turn the wheel to look closer. */
export function PictureDesk({ url, size, drawing, way, sets, takesMore, onAdd, onMove, onUndo }: Props) {
  const svg = useRef<SVGSVGElement>(null);
  const [window, look] = useState<Window>(() => whole(size));
  const [screenWidth, measure] = useState(600);
  const [cursor, putCursor] = useState<PixelPoint | null>(null);
  const grain = window.width / screenWidth;

  useEffect(() => {
    const element = svg.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => measure(Math.max(1, element.clientWidth)));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);

  const { dragged, hands } = useHands({
    svg,
    size,
    grain,
    look,
    onPress: () => putCursor(null),
    onTap: (point) => takesMore && onAdd(point),
    onMove,
  });

  const zoom = (factor: number): void => look((now) => zoomed(size, now, factor, cursor ?? middle(now)));

  const type = (event: KeyboardEvent<SVGSVGElement>): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const at = cursor ?? middle(window);
    const arrow = ARROWS[event.key];
    if (arrow) {
      const step = (event.shiftKey ? STEP_PX.fine : STEP_PX.plain) * grain;
      const to = inside(size, [at[0] + step * arrow[0], at[1] + step * arrow[1]]);
      putCursor(to);
      look((now) => showing(size, now, to));
    } else if ((event.key === 'Enter' || event.key === ' ') && takesMore) onAdd(at);
    else if (event.key === '+' || event.key === '=') zoom(ZOOM_STEP);
    else if (event.key === '-') zoom(1 / ZOOM_STEP);
    else if (event.key === '0') look(whole(size));
    else if (event.key === 'Backspace') onUndo();
    else return;
    event.preventDefault();
  };

  const tools = [
    ['Closer', () => zoom(ZOOM_STEP)],
    ['Farther', () => zoom(1 / ZOOM_STEP)],
    ['Whole picture', () => look(whole(size))],
    ['Undo', onUndo],
  ] as const;
  const arm = CURSOR_PX * grain;

  return (
    <div className="desk">
      <svg
        ref={svg}
        className="desk__picture"
        viewBox={`${window.x} ${window.y} ${window.width} ${window.height}`}
        style={{
          aspectRatio: `${size.width} / ${size.height}`,
          width: `min(100%, ${(TALLEST_VH * size.width) / size.height}vh)`,
        }}
        role="application"
        aria-label="Picture of the drawn outline"
        aria-describedby="desk-keys"
        tabIndex={0}
        {...hands}
        onKeyDown={type}
        onBlur={() => putCursor(null)}
      >
        <image href={url} width={size.width} height={size.height} />
        <DrawnOver drawing={whileDragged(drawing, dragged)} way={way} sets={sets} grain={grain} />
        {cursor && (
          <path
            className="desk__cursor"
            d={`M${cursor[0] - arm} ${cursor[1]}h${2 * arm}M${cursor[0]} ${cursor[1] - arm}v${2 * arm}`}
          />
        )}
      </svg>
      <div className="row desk__tools">
        {tools.map(([label, act]) => (
          <button key={label} type="button" className="button button--small" onClick={act}>
            {label}
          </button>
        ))}
      </div>
      <p className="small soft" id="desk-keys">
        Tap to set a point, drag a point to move it, drag the picture to see another part, pinch or turn the
        wheel to look closer. With keys: arrows move a cross, with Shift by less; Enter sets a point; + and −
        look closer and farther, 0 shows all; Backspace undoes.
      </p>
    </div>
  );
}
