import type { FollowedLine } from '~/lib/tracing/follow-line';
import type { PixelPoint } from '~/lib/tracing/line';

/** What has been set on the picture so far. A stretch is null while its line is being followed. */
export type Drawing = {
  readonly marks: readonly PixelPoint[];
  readonly clicks: readonly PixelPoint[];
  /** One fewer than clicks: the line from each to the next. */
  readonly stretches: readonly (FollowedLine | null)[];
};

export const NOTHING_DRAWN: Drawing = { marks: [], clicks: [], stretches: [] };

/** Points are either marks of the scale or clicks along the line. */
export type PointKind = 'marks' | 'clicks';

export type DrawingChange =
  | { readonly type: 'add'; readonly kind: PointKind; readonly point: PixelPoint }
  | { readonly type: 'move'; readonly kind: PointKind; readonly index: number; readonly point: PixelPoint }
  | {
      readonly type: 'followed';
      readonly from: PixelPoint;
      readonly to: PixelPoint;
      readonly line: FollowedLine;
    }
  | { readonly type: 'clear'; readonly kind: PointKind }
  | { readonly type: 'undo' };

/** The drawing now and as it was before each change, the last one last. */
export type Drawn = { readonly now: Drawing; readonly before: readonly Drawing[] };

export const drawnFrom = (now: Drawing): Drawn => ({ now, before: [] });

const MOST_UNDONE = 500;

function added(drawing: Drawing, kind: PointKind, point: PixelPoint): Drawing {
  if (kind === 'marks') return { ...drawing, marks: [...drawing.marks, point] };
  return {
    ...drawing,
    clicks: [...drawing.clicks, point],
    stretches: drawing.clicks.length === 0 ? [] : [...drawing.stretches, null],
  };
}

function moved(drawing: Drawing, kind: PointKind, index: number, point: PixelPoint): Drawing {
  const points = drawing[kind].map((each, i) => (i === index ? point : each));
  if (kind === 'marks') return { ...drawing, marks: points };
  return {
    ...drawing,
    clicks: points,
    stretches: drawing.stretches.map((each, i) => (i === index || i === index - 1 ? null : each)),
  };
}

/** An answer about two points is put where they still are next to each other; elsewhere it is late. */
const answered = (drawing: Drawing, from: PixelPoint, to: PixelPoint, line: FollowedLine): Drawing => ({
  ...drawing,
  stretches: drawing.stretches.map((each, i) =>
    drawing.clicks[i] === from && drawing.clicks[i + 1] === to ? line : each,
  ),
});

/** The drawing after one change; `undo` takes the last one back. Lines that were followed are no change of their own. */
export function change(drawn: Drawn, done: DrawingChange): Drawn {
  const { now, before } = drawn;
  const kept = (next: Drawing): Drawn => ({ now: next, before: [...before.slice(-MOST_UNDONE), now] });
  switch (done.type) {
    case 'add':
      return kept(added(now, done.kind, done.point));
    case 'move':
      return kept(moved(now, done.kind, done.index, done.point));
    case 'followed':
      return { now: answered(now, done.from, done.to, done.line), before };
    case 'clear':
      return kept(done.kind === 'marks' ? { ...now, marks: [] } : { ...now, clicks: [], stretches: [] });
    case 'undo': {
      const last = before.at(-1);
      return last === undefined ? drawn : { now: last, before: before.slice(0, -1) };
    }
  }
}

/** Stretches whose line has not been followed yet, as pairs of points. */
export const pending = ({ clicks, stretches }: Drawing): readonly (readonly [PixelPoint, PixelPoint])[] =>
  stretches.flatMap((line, i) => {
    const [from, to] = [clicks[i], clicks[i + 1]];
    return line === null && from !== undefined && to !== undefined ? [[from, to] as const] : [];
  });
