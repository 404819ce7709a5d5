import type { FactView } from '~/app/explanations/view.server';
import { decibansText } from './decibans';
import { Phrases } from './Phrases';

const STATES: Readonly<Record<string, { readonly label: string; readonly chip: string }>> = {
  seen: { label: 'Seen', chip: 'chip chip--good' },
  notFound: { label: 'Looked for and not found', chip: 'chip' },
  couldNotTell: { label: 'Could not tell', chip: 'chip chip--care' },
  notLooked: { label: 'Not looked for', chip: 'chip chip--care' },
  notNeeded: { label: 'Not needed', chip: 'chip' },
  outcome: { label: 'Read', chip: 'chip chip--good' },
};

type Props = { readonly fact: FactView };

/** One fact, what it means, and each witness in the state it is in. */
export function FactSheet({ fact }: Props) {
  return (
    <>
      <p className="soft">{fact.definition}</p>
      <p>
        <Phrases line={fact.sentence} />
      </p>
      <ul className="findings">
        {fact.witnesses.map(({ id, state, decibans, sentence, remarks }) => (
          <li key={id} className="finding">
            <div className="finding__line">
              <span>
                <span className={STATES[state]?.chip}>{STATES[state]?.label}</span>{' '}
                <Phrases line={sentence} />
              </span>
              <strong>{decibansText(decibans)}</strong>
            </div>
            {remarks.map((remark) => (
              <p key={remark} className="small soft">
                {remark}
              </p>
            ))}
          </li>
        ))}
      </ul>
    </>
  );
}
