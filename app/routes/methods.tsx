import type { MetaFunction } from '@remix-run/node';
import { ConditionTable } from '~/app/components/methods/ConditionTable';
import { LimitTable } from '~/app/components/methods/LimitTable';
import { SourceList } from '~/app/components/methods/SourceList';
import { Page } from '~/app/components/Page';
import { Sheet } from '~/app/components/Sheet';
import { METHODS } from '~/lib/findings/methods';
import { INSTRUMENT_KINDS } from '~/lib/readings/instrument';
import { RULE_SETS } from '~/lib/rules';

export const meta: MetaFunction = () => [{ title: 'Methods · Flangemark' }];

export default function Methods() {
  return (
    <Page
      title="Methods"
      intro="How every number is worked out, for what it holds, and where it comes from. What is not published says so."
    >
      <Sheet title="Formulas" id="formulas">
        {METHODS.map(({ id, name, formula, validRange, sources }) => (
          <article key={id} id={id} className="finding">
            <h3>{name}</h3>
            <p>{formula}</p>
            <p className="soft">Holds for: {validRange}</p>
            <SourceList sources={sources} />
          </article>
        ))}
      </Sheet>
      <Sheet title="Instruments" id="instruments">
        <p>
          What each resolves when its own certificate is not at hand. A resolution of ±a is a standard
          uncertainty of a/√3 (JCGM 100:2008, 4.3.7).
        </p>
        <ul className="plain-list">
          {INSTRUMENT_KINDS.map(({ id, name, source, status }) => (
            <li key={id}>
              <strong>{name}.</strong> {source}.{' '}
              {status !== 'published' && <span className="chip chip--care">{status}</span>}
            </li>
          ))}
        </ul>
      </Sheet>
      {RULE_SETS.map((set) => (
        <Sheet key={set.id} title={set.name} id={set.id}>
          <p>
            {set.jurisdiction}. {set.edition}
          </p>
          {set.notes.map((note) => (
            <p key={note} className="soft">
              {note}
            </p>
          ))}
          <LimitTable set={set} />
          <ConditionTable set={set} />
          {set.conventions.length > 0 && (
            <>
              <h3>How it is applied</h3>
              {set.conventions.map(({ id, text, source }) => (
                <div key={id} className="stack">
                  <p>{text}</p>
                  <SourceList sources={[source]} />
                </div>
              ))}
            </>
          )}
        </Sheet>
      ))}
    </Page>
  );
}
