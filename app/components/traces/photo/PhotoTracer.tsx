import { useEffect, useMemo, useReducer, useState } from 'react';
import { change, drawnFrom, pending, type Drawing, type PointKind } from '~/app/traces/photo/drawing';
import { useFollower } from '~/app/traces/photo/follower';
import { SCALE_WAYS, type ScaleWay } from '~/app/traces/photo/scale';
import { outcomeOf } from '~/app/traces/photo/traced';
import { LINE_ORDER } from '~/app/traces/how-to-trace';
import type { TracedShape } from '~/lib/case/trace';
import type { UnitSystem } from '~/lib/readings/unit';
import { joined } from '~/lib/tracing/follow-line';
import { PictureDesk } from './PictureDesk';
import { ScaleFields } from './ScaleFields';

export type PhotoTracerStart = {
  readonly drawing: Drawing;
  readonly way: ScaleWay;
  readonly distances: readonly [string, string];
};

type Props = {
  readonly url: string;
  readonly size: { readonly width: number; readonly height: number };
  readonly shape: TracedShape;
  readonly system: UnitSystem;
  readonly focal35Mm: number | null;
  readonly start: PhotoTracerStart;
};

/** Two decimals of a pixel are far below what can be seen. */
const rounded = ([x, y]: readonly [number, number]): readonly [number, number] => [
  Math.round(x * 100) / 100,
  Math.round(y * 100) / 100,
];

/** The line through all clicks, as far as it has been followed. */
function lineOf({ stretches }: Drawing) {
  const widths = stretches
    .flatMap((each) => (each?.widthPx == null ? [] : [each.widthPx]))
    .sort((a, b) => a - b);
  return {
    path: joined(stretches.map((each) => each?.points ?? [])).map(rounded),
    straight: stretches.flatMap((each, index) => (each?.followed === false ? [index] : [])),
    widthPx: widths[Math.floor(widths.length / 2)] ?? null,
  };
}

/** Scale and line set on the picture, sent with the form round it. */
export function PhotoTracer({ url, size, shape, system, focal35Mm, start }: Props) {
  const [{ now }, act] = useReducer(change, start.drawing, drawnFrom);
  const [sets, setSets] = useState<PointKind>(start.drawing.marks.length > 0 ? 'clicks' : 'marks');
  const [way, setWay] = useState(start.way);
  const [distances, setDistances] = useState(start.distances);
  const { state, why, follow } = useFollower(url);

  // What is asked again is answered from memory; an answer that comes late changes nothing.
  useEffect(() => {
    if (state !== 'ready') return;
    for (const [from, to] of pending(now))
      void follow(from, to).then((line) => act({ type: 'followed', from, to, line }));
  }, [state, now, follow]);

  const waiting = pending(now).length > 0;
  const line = useMemo(() => lineOf(now), [now]);
  const outcome = useMemo(
    () =>
      waiting || now.clicks.length < 2
        ? null
        : outcomeOf(shape, {
            ...line,
            way,
            distances,
            system,
            marks: now.marks,
            clicks: now.clicks,
            size: [size.width, size.height],
            focal35Mm,
          }),
    [waiting, now, line, shape, way, distances, system, size, focal35Mm],
  );
  const needed = SCALE_WAYS[way].marks;
  const lost = [...new Set(now.stretches.flatMap((each) => each?.why ?? []))];

  return (
    <div className="stack">
      <input
        type="hidden"
        name="drawing"
        value={JSON.stringify({
          size: [size.width, size.height],
          marks: now.marks.map(rounded),
          clicks: now.clicks.map(rounded),
          ...line,
        })}
      />
      <ScaleFields
        way={way}
        distances={distances}
        marked={Math.min(now.marks.length, needed)}
        onWay={(next) => {
          setWay(next);
          act({ type: 'clear', kind: 'marks' });
          setSets('marks');
        }}
        onDistances={setDistances}
        onClear={() => {
          act({ type: 'clear', kind: 'marks' });
          setSets('marks');
        }}
      />
      <fieldset className="row">
        <legend>A tap on the picture sets</legend>
        {(['marks', 'clicks'] as const).map((kind) => (
          <label key={kind} className="row">
            <input type="radio" checked={sets === kind} onChange={() => setSets(kind)} />{' '}
            {kind === 'marks' ? 'the scale' : 'the line'}
          </label>
        ))}
      </fieldset>
      <PictureDesk
        url={url}
        size={size}
        drawing={now}
        way={way}
        sets={sets}
        takesMore={sets === 'clicks' || now.marks.length < needed}
        onAdd={(point) => {
          act({ type: 'add', kind: sets, point });
          if (sets === 'marks' && now.marks.length + 1 === needed) setSets('clicks');
        }}
        onMove={(kind, index, point) => act({ type: 'move', kind, index, point })}
        onUndo={() => act({ type: 'undo' })}
      />
      <p className="soft">{LINE_ORDER[shape]} Set more points where it bends.</p>
      <div role="status">
        {state === 'starting' && <p className="soft">The picture is being made ready …</p>}
        {state === 'failed' && (
          <p className="note note--bad">
            <strong>The line cannot be followed.</strong> {why} Load the page again, or type the outline as
            pin offsets.
          </p>
        )}
        {waiting && state === 'ready' && <p className="soft">Following the line …</p>}
        {lost.map((each) => (
          <p key={each} className="note note--care">
            {each}
          </p>
        ))}
        {outcome && (
          <p className={outcome.ok ? 'note' : 'note note--care'}>
            {outcome.ok ? outcome.value : outcome.message}
          </p>
        )}
      </div>
      {now.clicks.length > 0 && (
        <p>
          <button
            type="button"
            className="button button--small"
            onClick={() => act({ type: 'clear', kind: 'clicks' })}
          >
            Take the line away
          </button>
        </p>
      )}
    </div>
  );
}
