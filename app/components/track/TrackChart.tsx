import { Form, Link, useFetcher } from '@remix-run/react';
import { useRef, useState, type PointerEvent } from 'react';
import { FigureImage } from '~/app/components/FigureImage';
import type { ChartView, ReadOut } from '~/app/track/chart.server';

type Props = { readonly caseId: string; readonly chart: ChartView };

/** Half and double the stretch shown, about its middle. */
function stretchBy({ shown }: ChartView, by: number): string {
  const middle = (shown.from + shown.to) / 2;
  const half = Math.max(5, ((shown.to - shown.from) / 2) * by);
  return `?from=${Math.round(middle - half)}&to=${Math.round(middle + half)}#chart`;
}

function moveBy({ shown }: ChartView, share: number): string {
  const by = Math.round((shown.to - shown.from) * share);
  return `?from=${shown.from + by}&to=${shown.to + by}#chart`;
}

/** The track chart with its zoom and a reading cursor; the forms do both without JavaScript. */
export function TrackChart({ caseId, chart }: Props) {
  const values = useFetcher<readonly ReadOut[]>();
  const [index, setIndex] = useState<number | null>(null);
  const picture = useRef<HTMLDivElement>(null);
  const load = (): void => {
    if (values.state === 'idle' && values.data === undefined) values.load(`/cases/${caseId}/track/values`);
  };
  const all = (values.data ?? []).filter(({ atM }) => atM >= chart.fromM && atM <= chart.toM);
  const at = index === null ? null : (all[Math.min(index, all.length - 1)] ?? null);
  const shown = at ?? chart.readOut;

  const plotNow = (): readonly [number, number] =>
    chart.plot[window.matchMedia('(max-width: 40rem)').matches ? 'narrow' : 'wide'];
  const follow = (event: PointerEvent): void => {
    load();
    const box = picture.current?.querySelector('img')?.getBoundingClientRect();
    if (!box || all.length === 0) return;
    const [left, right] = plotNow();
    const share = ((event.clientX - box.left) / box.width - left) / (right - left);
    const place = chart.fromM + share * (chart.toM - chart.fromM);
    const nearest = all.reduce(
      (best, each, i) => (Math.abs(each.atM - place) < Math.abs((all[best]?.atM ?? NaN) - place) ? i : best),
      0,
    );
    setIndex(nearest);
  };
  const lineAt = (width: 'wide' | 'narrow'): string => {
    const [left, right] = chart.plot[width];
    const share = shown ? (shown.atM - chart.fromM) / (chart.toM - chart.fromM) : NaN;
    return `${(left + share * (right - left)) * 100}%`;
  };
  const inside = shown !== null && shown.atM >= chart.fromM && shown.atM <= chart.toM;
  return (
    <div className="track-chart" id="chart">
      <div className="row">
        <Form method="get" action={`/cases/${caseId}/track#chart`} className="row">
          <label htmlFor="chart-from">From</label>
          <input
            id="chart-from"
            name="from"
            type="text"
            className="short"
            key={`f${chart.shown.from}`}
            defaultValue={chart.shown.from}
          />
          <label htmlFor="chart-to">to</label>
          <input
            id="chart-to"
            name="to"
            type="text"
            className="short"
            key={`t${chart.shown.to}`}
            defaultValue={chart.shown.to}
          />
          <span>{chart.unit} from the POD</span>
          <label htmlFor="chart-read">read at station</label>
          <input id="chart-read" name="read" type="text" className="short" defaultValue={chart.asked} />
          <button className="button button--small">Show</button>
        </Form>
        <nav className="row" aria-label="Stretch of the chart">
          <Link className="button button--small" to={stretchBy(chart, 0.5)} preventScrollReset>
            Closer
          </Link>
          <Link className="button button--small" to={stretchBy(chart, 2)} preventScrollReset>
            Wider
          </Link>
          <Link className="button button--small" to={moveBy(chart, -0.5)} preventScrollReset>
            ← Back
          </Link>
          <Link className="button button--small" to={moveBy(chart, 0.5)} preventScrollReset>
            On →
          </Link>
          {chart.zoomed && (
            <Link className="button button--small" to="?#chart" preventScrollReset>
              Whole chart
            </Link>
          )}
        </nav>
      </div>
      <div
        className="track-chart__picture"
        ref={picture}
        onPointerMove={follow}
        onPointerDown={follow}
        onPointerEnter={load}
      >
        <FigureImage figure={chart.figure} />
        {inside && (
          <>
            <div className="track-chart__cursor track-chart__cursor--wide" style={{ left: lineAt('wide') }} />
            <div
              className="track-chart__cursor track-chart__cursor--narrow"
              style={{ left: lineAt('narrow') }}
            />
          </>
        )}
      </div>
      <label className="track-chart__slider">
        <span>Read the chart, station by station</span>
        <input
          type="range"
          min={0}
          max={Math.max(0, all.length - 1)}
          value={index ?? 0}
          onFocus={load}
          onChange={(event) => {
            load();
            setIndex(Number(event.currentTarget.value));
          }}
          aria-valuetext={at ? `Station ${at.station}, ${at.place}` : undefined}
        />
      </label>
      <div className="track-chart__values" role="status">
        {shown ? (
          <>
            <strong>
              Station {shown.station}, {shown.place} from the POD.
            </strong>{' '}
            {shown.values.length === 0
              ? 'Nothing was read here.'
              : shown.values.map(({ label, value }) => `${label}: ${value}`).join('; ')}
          </>
        ) : chart.asked !== '' ? (
          `There is no station “${chart.asked}” on the chart.`
        ) : (
          'Point at the chart, move the slider, or ask for a station to read the values there.'
        )}
      </div>
    </div>
  );
}
