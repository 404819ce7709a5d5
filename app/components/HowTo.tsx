import { EXPLANATIONS } from '~/lib/explanations';
import { OTHER_EXPLANATIONS } from '~/lib/explanations/others';
import { howToFigure } from '~/lib/figures/howto';
import { toSvg } from '~/lib/figures/svg';
import type { HowTo as HowToText } from '~/lib/readings/quantity';
import { SvgView } from './FigureView';

const NAMES: ReadonlyMap<string, string> = new Map(
  [...EXPLANATIONS, ...OTHER_EXPLANATIONS].map(({ id, name }) => [id, name.toLowerCase()]),
);

const drawn = new Map<string, { readonly __html: string } | null>();

/** The drawings never change, so each is rendered once. */
function drawing(name: string | undefined): { readonly __html: string } | null {
  if (name === undefined) return null;
  const known = drawn.get(name);
  if (known !== undefined) return known;
  const figure = howToFigure(name);
  const html = figure ? { __html: toSvg(figure) } : null;
  drawn.set(name, html);
  return html;
}

type Props = { readonly howTo: HowToText; readonly open?: boolean };

/** How somebody takes this reading: beside the boxes it is about, closed until asked for. */
export function HowTo({ howTo, open = false }: Props) {
  const picture = drawing(howTo.figure);
  const bearsOn = howTo.bearsOn.map((id) => NAMES.get(id) ?? id);
  return (
    <details className="how-to" open={open}>
      <summary>How to take this reading</summary>
      <div className="how-to__body">
        {picture && (
          <div className="how-to__figure">
            <SvgView html={picture} />
          </div>
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
