import { Form } from '@remix-run/react';
import type { RunView, Sample } from '~/app/train/runs.server';
import { FigureImage } from '../FigureImage';
import { ReasonForm } from '../ReasonForm';

type Props = {
  readonly run: RunView;
  /** The answer to the distance that was asked about this run. */
  readonly back: {
    readonly distance: string;
    readonly sample: Sample | null;
    readonly error: string | null;
  } | null;
  readonly exampleDistance: string;
  readonly reasonError?: string;
};

const inWords = ({ number, time, speed }: Sample): string => `${speed} (sample ${number}, ${time})`;

/** One recorder run: what it is, its chart, its speed where the POD may be. */
export function RecorderRunSheet({ run, back, exampleDistance, reasonError }: Props) {
  const id = `back-${run.id}`;
  return (
    <article className="stack" aria-label={run.name} id={`run-${run.id}`}>
      <h3>{run.name}</h3>
      {run.removed !== null && <div className="note note--care">Removed: {run.removed}</div>}
      {run.chart && <FigureImage figure={run.chart} />}
      {run.byDistance && (
        <details>
          <summary>The same against distance run</summary>
          <FigureImage figure={run.byDistance} />
        </details>
      )}
      {run.clock.map((text) => (
        <div key={text} className="note note--care">
          {text}
        </div>
      ))}
      <dl className="facts">
        <div>
          <dt>At the POD</dt>
          <dd>{run.pod ? inWords(run.pod.sample) : 'not placed in this run'}</dd>
        </div>
        <div>
          <dt>Speed at the first emergency sample</dt>
          <dd>{run.emergency ? inWords(run.emergency) : 'no emergency application in this run'}</dd>
        </div>
        {run.facts.map(({ label, text }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      {run.pod && <p className="small soft">{run.pod.how}</p>}
      <p className="small soft">
        SHA-256 of the file <span className="hash">{run.sha256}</span>
      </p>
      {run.note && <p>{run.note}</p>}
      {run.removed === null ? (
        <>
          <p className="small soft">
            The first emergency sample is not the POD itself: the brakes go on when the brake pipe parts,
            which may be after the first wheel has left the rail. Look up here what the run says some distance
            before the stop; to keep it as the POD, enter the distance or the sample’s number under “POD in
            the recorder run” below.
          </p>
          <Form method="get" action="#recorder" className="row" preventScrollReset>
            <input type="hidden" name="run" value={run.id} />
            <label htmlFor={id}>Distance back from where it stopped</label>
            <input
              id={id}
              name="back"
              type="text"
              className="short"
              autoComplete="off"
              placeholder={exampleDistance}
              defaultValue={back?.distance ?? ''}
              aria-invalid={back?.error ? true : undefined}
              aria-describedby={back ? `${id}-answer` : undefined}
            />
            <button className="button button--small">Look up</button>
          </Form>
          {back && (
            <p id={`${id}-answer`} role="status" className={back.error ? 'field__error' : undefined}>
              {back.error ?? (back.sample && `${back.distance} before it stopped: ${inWords(back.sample)}`)}
            </p>
          )}
          <ReasonForm
            label="Remove this run"
            intent="removeRun"
            hidden={{ run: run.id }}
            explain="It leaves the screens and the findings, with the reason beside it. Its samples stay and it can be put back."
            error={reasonError}
          />
        </>
      ) : (
        <Form method="post">
          <input type="hidden" name="intent" value="restoreRun" />
          <input type="hidden" name="run" value={run.id} />
          <button className="button button--small">Put it back</button>
        </Form>
      )}
    </article>
  );
}
