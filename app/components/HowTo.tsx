import type { HowTo as HowToText } from '~/lib/readings/quantity';
import { SvgView } from './FigureView';

type Props = {
  readonly howTo: HowToText;
  /** Drawing of how it is taken, as SVG. */
  readonly svg?: string;
  /** Names of the explanations in `howTo.bearsOn`. */
  readonly bearsOn?: readonly string[];
  readonly open?: boolean;
};

/** How somebody takes this reading: beside the boxes it is about, closed until asked for. */
export function HowTo({ howTo, svg, bearsOn = [], open = false }: Props) {
  return (
    <details className="how-to" open={open}>
      <summary>How to take this reading</summary>
      <div className="how-to__body">
        {svg && <SvgView html={{ __html: svg }} />}
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
