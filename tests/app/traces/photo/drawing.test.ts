import { describe, expect, it } from 'vitest';
import {
  change,
  drawnFrom,
  NOTHING_DRAWN,
  pending,
  type Drawn,
  type DrawingChange,
} from '~/app/traces/photo/drawing';
import type { FollowedLine } from '~/lib/tracing/follow-line';
import type { PixelPoint } from '~/lib/tracing/line';

const line = (from: PixelPoint, to: PixelPoint): FollowedLine => ({
  points: [from, to],
  cost: 0,
  followed: true,
  why: null,
  widthPx: 5,
});

const after = (...changes: readonly DrawingChange[]): Drawn =>
  changes.reduce(change, drawnFrom(NOTHING_DRAWN));
const click = (point: PixelPoint): DrawingChange => ({ type: 'add', kind: 'clicks', point });

const A: PixelPoint = [10, 10];
const B: PixelPoint = [20, 10];
const C: PixelPoint = [30, 10];

describe('what is set on a picture', () => {
  it('asks for one line fewer than there are points', () => {
    expect(pending(after(click(A)).now)).toEqual([]);
    expect(pending(after(click(A), click(B), click(C)).now)).toEqual([
      [A, B],
      [B, C],
    ]);
  });

  it('puts an answer between its own two points and nowhere else', () => {
    const drawn = after(click(A), click(B), click(C), {
      type: 'followed',
      from: B,
      to: C,
      line: line(B, C),
    });
    expect(pending(drawn.now)).toEqual([[A, B]]);
    const late = change(drawn, { type: 'followed', from: [1, 1], to: [2, 2], line: line(A, B) });
    expect(late.now).toEqual(drawn.now);
  });

  it('follows anew on both sides of a point that was moved, and only there', () => {
    const all = after(click(A), click(B), click(C), click([40, 10]));
    const followed = pending(all.now).reduce(
      (drawn, [from, to]) => change(drawn, { type: 'followed', from, to, line: line(from, to) }),
      all,
    );
    const moved = change(followed, { type: 'move', kind: 'clicks', index: 1, point: [20, 12] });
    expect(moved.now.stretches.map((each) => each === null)).toEqual([true, true, false]);
  });

  it('takes back one change at a time, down to nothing', () => {
    const drawn = after(click(A), click(B), { type: 'add', kind: 'marks', point: C });
    const undone = change(drawn, { type: 'undo' });
    expect(undone.now.marks).toEqual([]);
    expect(undone.now.clicks).toEqual([A, B]);
    const empty = [1, 2, 3].reduce((each) => change(each, { type: 'undo' }), undone);
    expect(empty.now).toEqual(NOTHING_DRAWN);
  });

  it('brings a cleared line back with undo', () => {
    const cleared = change(after(click(A), click(B)), { type: 'clear', kind: 'clicks' });
    expect(cleared.now.clicks).toEqual([]);
    expect(change(cleared, { type: 'undo' }).now.clicks).toEqual([A, B]);
  });
});
