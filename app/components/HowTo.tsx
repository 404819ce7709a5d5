import { EXPLANATIONS } from '~/lib/explanations';
import { OTHER_EXPLANATIONS } from '~/lib/explanations/others';
import { howToFigure } from '~/lib/figures/howto';
import type { HowTo as HowToText } from '~/lib/readings/quantity';
import { useLook } from './look';

const NAMES: ReadonlyMap<string, string> = new Map(
  [...EXPLANATIONS, ...OTHER_EXPLANATIONS].map(({ id, name }) => [id, name.toLowerCase()]),
);

type Props = { readonly howTo: HowToText; readonly open?: boolean };

/** How somebody takes this reading: beside the boxes it is about, closed until asked for. */
export function HowTo({ howTo, open = false }: Props) {
  const look = useLook();
  const figure = howTo.figure === undefined ? undefined : howToFigure(howTo.figure);
  const bearsOn = howTo.bearsOn.map((id) => NAMES.get(id) ?? id);
  return (
    <details className="how-to" open={open}>
      <summary>How to take this reading</summary>
      <div className="how-to__body">
        {figure && (
          // Asked for when the words are opened, and kept by the browser.
          <img
            className="how-to__figure"
            src={`/how-to/${howTo.figure}?look=${look}`}
            alt={`${figure.title}. ${figure.description}`}
            width={figure.width}
            height={figure.height}
            loading="lazy"
          />
        )}
        <p>{howTo.take}</p>
        <h4>Why it matters</h4>
        <p>
          {howTo.why}
          {bearsOn.length > 0 && ` Bears on: ${bearsOn.join(', ')}.`}
        </p>
        <h4>What spoils it</h4>
        <p>{howTo.spoiledBy}</p>
      </div>
    </details>
  );
}
