import { useCallback, useEffect, useRef, useState } from 'react';
import type { FollowedLine } from '~/lib/tracing/follow-line';
import type { PixelPoint } from '~/lib/tracing/line';

export type FollowerQuestion =
  | { readonly type: 'open'; readonly url: string }
  | { readonly type: 'follow'; readonly id: string; readonly from: PixelPoint; readonly to: PixelPoint };

export type FollowerAnswer =
  | { readonly type: 'ready' }
  | { readonly type: 'line'; readonly id: string; readonly line: FollowedLine }
  | { readonly type: 'failed'; readonly why: string };

export type Follower = {
  readonly state: 'starting' | 'ready' | 'failed';
  readonly why: string;
  /** The line between two points; answers in its own time, and at once when it was asked before. */
  readonly follow: (from: PixelPoint, to: PixelPoint) => Promise<FollowedLine>;
};

type Asked = Map<
  string,
  { readonly answer: Promise<FollowedLine>; readonly give: (line: FollowedLine) => void }
>;

/** The thread that follows lines on the picture at this address. */
export function useFollower(url: string): Follower {
  const worker = useRef<Worker | null>(null);
  const asked = useRef<Asked>(new Map());
  const [{ state, why }, tell] = useState<Pick<Follower, 'state' | 'why'>>({ state: 'starting', why: '' });

  useEffect(() => {
    const thread = new Worker(new URL('./follow.worker.ts', import.meta.url), { type: 'module' });
    const questions = asked.current;
    worker.current = thread;
    thread.addEventListener('message', ({ data }: MessageEvent<FollowerAnswer>) => {
      if (data.type === 'line') questions.get(data.id)?.give(data.line);
      else if (data.type === 'ready') tell({ state: 'ready', why: '' });
      else tell({ state: 'failed', why: data.why });
    });
    thread.addEventListener('error', () =>
      tell({ state: 'failed', why: 'This browser cannot follow lines on a picture.' }),
    );
    const question: FollowerQuestion = { type: 'open', url: new URL(url, location.href).href };
    thread.postMessage(question);
    return () => {
      thread.terminate();
      questions.clear();
    };
  }, [url]);

  const follow = useCallback((from: PixelPoint, to: PixelPoint): Promise<FollowedLine> => {
    const id = JSON.stringify([from, to]);
    const before = asked.current.get(id);
    if (before) return before.answer;
    let give: (line: FollowedLine) => void = () => {};
    const answer = new Promise<FollowedLine>((resolve) => {
      give = resolve;
    });
    asked.current.set(id, { answer, give });
    const question: FollowerQuestion = { type: 'follow', id, from, to };
    worker.current?.postMessage(question);
    return answer;
  }, []);
  return { state, why, follow };
}
