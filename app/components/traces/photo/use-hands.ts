import { useEffect, useRef, useState, type PointerEvent, type RefObject } from 'react';
import type { PointKind } from '~/app/traces/photo/drawing';
import { inside, shifted, zoomed, type Size, type Window } from '~/app/traces/photo/window';
import type { PixelPoint } from '~/lib/tracing/line';

/** A finger or a mouse that moves less than this, in CSS pixels, was a tap. */
const STILL_PX = 6;
const NEAREST_FINGERS_PX = 10;
const WHEEL = 0.0015;

type Spot = readonly [number, number];

type Grip =
  | { readonly on: 'picture'; readonly from: Spot; moved: boolean }
  | { readonly on: PointKind; readonly index: number };

export type Dragged = { readonly kind: PointKind; readonly index: number; readonly point: PixelPoint };

type Wanted = {
  readonly svg: RefObject<SVGSVGElement>;
  readonly size: Size;
  /** Pixels of the picture to one CSS pixel. */
  readonly grain: number;
  readonly look: (change: (now: Window) => Window) => void;
  readonly onPress: () => void;
  readonly onTap: (point: PixelPoint) => void;
  readonly onMove: (kind: PointKind, index: number, point: PixelPoint) => void;
};

/** A place on the screen as pixels of the picture. The middle of a pixel is its whole number. */
function pointAt(svg: SVGSVGElement, [clientX, clientY]: Spot): PixelPoint | null {
  const back = svg.getScreenCTM()?.inverse();
  if (!back) return null;
  const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(back);
  return [x - 0.5, y - 0.5];
}

const apart = (a: Spot, b: Spot): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Mouse and fingers on the picture: a tap, a point dragged, the picture moved, two fingers or a wheel to look closer. */
export function useHands({ svg, size, grain, look, onPress, onTap, onMove }: Wanted) {
  const fingers = useRef(new Map<number, Spot>());
  const grip = useRef<Grip | null>(null);
  const [dragged, drag] = useState<Dragged | null>(null);

  useEffect(() => {
    const element = svg.current;
    if (element === null) return;
    // React's own listener may not keep the page from scrolling.
    const turn = (event: WheelEvent): void => {
      event.preventDefault();
      const about = pointAt(element, [event.clientX, event.clientY]);
      if (about) look((now) => zoomed(size, now, Math.exp(-WHEEL * event.deltaY), about));
    };
    element.addEventListener('wheel', turn, { passive: false });
    return () => element.removeEventListener('wheel', turn);
  }, [svg, size, look]);

  const press = (event: PointerEvent<SVGSVGElement>): void => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const spot: Spot = [event.clientX, event.clientY];
    fingers.current.set(event.pointerId, spot);
    const held = event.target instanceof SVGElement ? event.target.dataset : {};
    const onPoint = held.kind === 'marks' || held.kind === 'clicks';
    grip.current =
      onPoint && fingers.current.size === 1
        ? { on: held.kind as PointKind, index: Number(held.index) }
        : { on: 'picture', from: spot, moved: fingers.current.size > 1 };
    if (fingers.current.size > 1) drag(null);
    onPress();
  };

  const pinch = (element: SVGSVGElement, before: Spot, now: Spot, other: Spot): void => {
    const spread = (to: Spot): number => Math.max(NEAREST_FINGERS_PX, apart(to, other));
    const about = pointAt(element, [(now[0] + other[0]) / 2, (now[1] + other[1]) / 2]);
    if (!about) return;
    // The middle between two fingers moves half as far as the one that moved.
    look((then) =>
      shifted(
        size,
        zoomed(size, then, spread(now) / spread(before), about),
        ((before[0] - now[0]) / 2) * grain,
        ((before[1] - now[1]) / 2) * grain,
      ),
    );
  };

  const pull = (event: PointerEvent<SVGSVGElement>): void => {
    const before = fingers.current.get(event.pointerId);
    const held = grip.current;
    if (before === undefined || held === null) return;
    const now: Spot = [event.clientX, event.clientY];
    fingers.current.set(event.pointerId, now);
    const other = [...fingers.current].find(([id]) => id !== event.pointerId)?.[1];
    if (other !== undefined) {
      pinch(event.currentTarget, before, now, other);
    } else if (held.on !== 'picture') {
      const point = pointAt(event.currentTarget, now);
      if (point) drag({ kind: held.on, index: held.index, point: inside(size, point) });
    } else if (held.moved || apart(now, held.from) >= STILL_PX) {
      held.moved = true;
      look((then) => shifted(size, then, (before[0] - now[0]) * grain, (before[1] - now[1]) * grain));
    }
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
    const point = pointAt(event.currentTarget, [event.clientX, event.clientY]);
    if (!held.moved && event.type !== 'pointercancel' && point) onTap(inside(size, point));
  };

  return {
    dragged,
    hands: {
      onPointerDown: press,
      onPointerMove: pull,
      onPointerUp: release,
      onPointerCancel: release,
    },
  };
}
