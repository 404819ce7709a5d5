import { useEffect, useRef, useState, type KeyboardEvent, type PointerEvent } from 'react';
import type { Drawing, PointKind } from '~/app/traces/photo/drawing';
import type { ScaleWay } from '~/app/traces/photo/scale';
import { middle, shifted, showing, whole, zoomed, type Window } from '~/app/traces/photo/window';
import type { PixelPoint } from '~/lib/tracing/line';
import { DrawnOver } from './DrawnOver';

type Props = {
  readonly url: string;
  readonly size: { readonly width: number; readonly height: number };
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

type Grip =
  | { readonly on: 'picture'; readonly from: PixelPoint; moved: boolean }
  | { readonly on: PointKind; readonly index: number };

/** A finger or a mouse that moves less than this, in CSS pixels, was a tap. */
const STILL_PX = 6;
const ZOOM_STEP = 1.6;
const WHEEL = 0.0015;

/** The picture with what is set on it: tap to set a point, drag a point or the picture, pinch or turn the wheel to look closer. */
export function PictureDesk({ url, size, drawing, way, sets, takesMore, onAdd, onMove, onUndo }: Props) {
  const svg = useRef<SVGSVGElement>(null);
  const [window, look] = useState<Window>(() => whole(size));
  const [screenWidth, measure] = useState(600);
  const [cursor, putCursor] = useState<PixelPoint | null>(null);
  const [dragged, drag] = useState<{ kind: PointKind; index: number; point: PixelPoint } | null>(null);
  const fingers = useRef(new Map<number, readonly [number, number]>());
  const grip = useRef<Grip | null>(null);
  /** Pixels of the picture to one CSS pixel. */
  const grain = window.width / screenWidth;

  useEffect(() => {
    const element = svg.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => measure(Math.max(1, element.clientWidth)));
    observer.observe(element);
    // The browser's own listener may scroll the page as well; this one may not be passive.
    const turn = (event: WheelEvent): void => {
      event.preventDefault();
      const about = pointAt(element, event.clientX, event.clientY);
      if (about) look((now) => zoomed(size, now, Math.exp(-WHEEL * event.deltaY), about));
    };
    element.addEventListener('wheel', turn, { passive: false });
    return () => {
      observer.disconnect();
      element.removeEventListener('wheel', turn);
    };
  }, [size]);

  const press = (event: PointerEvent<SVGSVGElement>): void => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    fingers.current.set(event.pointerId, [event.clientX, event.clientY]);
    if (fingers.current.size > 1) {
      grip.current = { on: 'picture', from: [event.clientX, event.clientY], moved: true };
      return;
    }
    const held = event.target instanceof SVGElement ? event.target.dataset : {};
    grip.current =
      held.kind === 'marks' || held.kind === 'clicks'
        ? { on: held.kind, index: Number(held.index) }
        : { on: 'picture', from: [event.clientX, event.clientY], moved: false };
    putCursor(null);
  };

  const pull = (event: PointerEvent<SVGSVGElement>): void => {
    const before = fingers.current.get(event.pointerId);
    const held = grip.current;
    if (before === undefined || held === null) return;
    const now = [event.clientX, event.clientY] as const;
    const others = [...fingers.current].filter(([id]) => id !== event.pointerId);
    fingers.current.set(event.pointerId, now);
    const other = others[0]?.[1];
    if (other !== undefined) {
      const spread = (to: readonly [number, number]): number =>
        Math.max(10, Math.hypot(to[0] - other[0], to[1] - other[1]));
      const about = pointAt(event.currentTarget, (now[0] + other[0]) / 2, (now[1] + other[1]) / 2);
      if (about)
        look((then) =>
          shifted(
            size,
            zoomed(size, then, spread(now) / spread(before), about),
            ((before[0] - now[0]) / 2) * grain,
            ((before[1] - now[1]) / 2) * grain,
          ),
        );
      return;
    }
    if (held.on !== 'picture') {
      const point = pointAt(event.currentTarget, now[0], now[1]);
      if (point) drag({ kind: held.on, index: held.index, point: inside(size, point) });
      return;
    }
    if (!held.moved && Math.hypot(now[0] - held.from[0], now[1] - held.from[1]) < STILL_PX) return;
    held.moved = true;
    look((then) => shifted(size, then, (before[0] - now[0]) * grain, (before[1] - now[1]) * grain));
  };

  const release = (event: PointerEvent<SVGSVGElement>): void => {
    fingers.current.delete(event.pointerId);
    const held = grip.current;
    if (fingers.current.size > 0 || held === null) return;
    grip.current = null;
    if (held.on !== 'picture') {
      if (dragged) onMove(held.on, held.index, dragged.point);
      drag(null);
      return;
    }
    if (held.moved || event.type === 'pointercancel' || !takesMore) return;
    const point = pointAt(event.currentTarget, event.clientX, event.clientY);
    if (point) onAdd(inside(size, point));
  };

  const type = (event: KeyboardEvent<SVGSVGElement>): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const at = cursor ?? middle(window);
    const step = (event.shiftKey ? 1 : 8) * grain;
    const go: Readonly<Record<string, PixelPoint>> = {
      ArrowLeft: [-step, 0],
      ArrowRight: [step, 0],
      ArrowUp: [0, -step],
      ArrowDown: [0, step],
    };
    const by = go[event.key];
    if (by) {
      const to = inside(size, [at[0] + by[0], at[1] + by[1]]);
      putCursor(to);
      look((now) => showing(size, now, to));
    } else if ((event.key === 'Enter' || event.key === ' ') && takesMore) onAdd(at);
    else if (event.key === '+' || event.key === '=') look((now) => zoomed(size, now, ZOOM_STEP, at));
    else if (event.key === '-') look((now) => zoomed(size, now, 1 / ZOOM_STEP, at));
    else if (event.key === '0') look(whole(size));
    else if (event.key === 'Backspace') onUndo();
    else return;
    event.preventDefault();
  };

  const shown: Drawing = dragged
    ? {
        ...drawing,
        [dragged.kind]: drawing[dragged.kind].map((point, i) =>
          i === dragged.index ? dragged.point : point,
        ),
      }
    : drawing;
  const zoom = (factor: number): void => look((now) => zoomed(size, now, factor, cursor ?? middle(now)));

  return (
    <div className="desk">
      <svg
        ref={svg}
        className="desk__picture"
        viewBox={`${window.x} ${window.y} ${window.width} ${window.height}`}
        style={{ aspectRatio: `${size.width} / ${size.height}` }}
        role="application"
        aria-label="Picture of the drawn outline"
        aria-describedby="desk-keys"
        tabIndex={0}
        onPointerDown={press}
        onPointerMove={pull}
        onPointerUp={release}
        onPointerCancel={release}
        onKeyDown={type}
        onBlur={() => putCursor(null)}
      >
        <image href={url} width={size.width} height={size.height} />
        <DrawnOver drawing={shown} way={way} sets={sets} grain={grain} />
        {cursor && (
          <path
            className="desk__cursor"
            d={`M${cursor[0] - 18 * grain} ${cursor[1]}h${36 * grain}M${cursor[0]} ${cursor[1] - 18 * grain}v${36 * grain}`}
          />
        )}
      </svg>
      <div className="row desk__tools">
        <button type="button" className="button button--small" onClick={() => zoom(ZOOM_STEP)}>
          Closer
        </button>
        <button type="button" className="button button--small" onClick={() => zoom(1 / ZOOM_STEP)}>
          Farther
        </button>
        <button type="button" className="button button--small" onClick={() => look(whole(size))}>
          Whole picture
        </button>
        <button type="button" className="button button--small" onClick={onUndo}>
          Undo
        </button>
      </div>
      <p className="small soft" id="desk-keys">
        Tap to set a point, drag a point to move it, drag the picture to see another part, pinch or turn the
        wheel to look closer. With keys: arrows move a cross, with Shift by less; Enter sets a point; + and −
        look closer and farther, 0 shows all; Backspace undoes.
      </p>
    </div>
  );
}

const inside = ({ width, height }: Props['size'], [x, y]: PixelPoint): PixelPoint => [
  Math.min(width - 1, Math.max(0, x)),
  Math.min(height - 1, Math.max(0, y)),
];

/** A place on the screen as pixels of the picture. A pixel's middle is its whole number. */
function pointAt(svg: SVGSVGElement, clientX: number, clientY: number): PixelPoint | null {
  const back = svg.getScreenCTM()?.inverse();
  if (!back) return null;
  const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(back);
  return [x - 0.5, y - 0.5];
}
