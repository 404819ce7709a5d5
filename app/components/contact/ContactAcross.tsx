import { Form, useSearchParams } from '@remix-run/react';
import { useEffect, useState, useSyncExternalStore } from 'react';
import type { Stood } from '~/app/contact/stand';
import { contactAt } from '~/lib/contact/state';
import { contactPicture } from '~/lib/figures/contact-picture';
import { fromCanonical } from '~/lib/readings/convert';
import type { UnitSystem } from '~/lib/readings/unit';
import { FigureBySize } from '../FigureBySize';

type Props = { readonly stood: Stood; readonly system: UnitSystem };

const STEP_MM = 0.25;
const FRAME_MS = 60;

const within = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** A shift in words: "1.50 mm to the left". */
function shiftText(shiftMm: number, system: UnitSystem): string {
  if (Math.abs(shiftMm) < STEP_MM / 2) return 'in the middle';
  const unit = system === 'us' ? 'in' : 'mm';
  const size = fromCanonical(Math.abs(shiftMm), unit, 'crossLength').toFixed(system === 'us' ? 3 : 2);
  return `${size} ${unit} to the ${shiftMm < 0 ? 'left' : 'right'}`;
}

const never = () => () => {};

/** Moves the wheelset from one end to the other and back while it runs. */
function useRunning(fromMm: number, toMm: number, move: (change: (at: number) => number) => void) {
  const [running, run] = useState(false);
  useEffect(() => {
    if (!running) return;
    let way = 1;
    const timer = setInterval(() => {
      move((at) => {
        if (at >= toMm - STEP_MM / 2) way = -1;
        if (at <= fromMm + STEP_MM / 2) way = 1;
        return within(at + way * STEP_MM, fromMm, toMm);
      });
    }, FRAME_MS);
    return () => clearInterval(timer);
  }, [running, fromMm, toMm, move]);
  return [running, () => run((was) => !was)] as const;
}

/** The wheelset at one shift, moved with a slider; without scripts the slider is sent as a form. */
export function ContactAcross({ stood, system }: Props) {
  const { setup, fromMm, toMm } = stood;
  const [params] = useSearchParams();
  const asked = Number(params.get('shift') ?? 0);
  const [shiftMm, move] = useState(within(Number.isFinite(asked) ? asked : 0, fromMm, toMm));
  const [running, toggle] = useRunning(fromMm, toMm, move);
  // A button that does nothing before scripts run is not shown before they do.
  const alive = useSyncExternalStore(
    never,
    () => true,
    () => false,
  );
  const state = contactAt(setup, within(shiftMm, fromMm, toMm));
  return (
    <div className="stack">
      <Form method="get" className="row">
        {[...params].map(([name, value]) =>
          name === 'shift' ? null : <input key={name} type="hidden" name={name} value={value} />,
        )}
        <label htmlFor="shift">Wheelset moved sideways, {shiftText(shiftMm, system)}</label>
        <input
          id="shift"
          name="shift"
          type="range"
          className="slider"
          min={fromMm}
          max={toMm}
          step={STEP_MM}
          value={shiftMm}
          aria-valuetext={shiftText(shiftMm, system)}
          onChange={({ target }) => move(Number(target.value))}
        />
        {alive && (
          <button type="button" className="button button--small" onClick={toggle}>
            {running ? 'Stop' : 'Move it to and fro'}
          </button>
        )}
        <noscript>
          <button className="button button--small">Show it there</button>
        </noscript>
      </Form>
      {state.ok ? (
        <FigureBySize draw={(width) => contactPicture({ setup, state: state.value, system }, { width })} />
      ) : (
        <p className="note note--care">{state.message}</p>
      )}
    </div>
  );
}
