import { Form, useSearchParams } from '@remix-run/react';
import type { ReactNode } from 'react';
import { KEPT_PARAM, type ReadingsAnswer } from '~/app/readings/cells';
import type { ReadingsChoices, ReadingsView } from '~/app/readings/view.server';
import { GROUPS } from '~/lib/readings/quantities';
import { HowTo } from '../HowTo';
import { Message } from '../Message';
import { enterMovesOn } from './enter-moves-on';
import { ObservationRow } from './ObservationRow';
import { QuantityRow } from './QuantityRow';
import { SharedFields } from './SharedFields';

type Props = {
  readonly view: ReadingsView;
  readonly choices: ReadingsChoices;
  /** The action's answer to any form of readings of the page. */
  readonly answer?: ReadingsAnswer;
  readonly action?: string;
  readonly submit?: string;
  readonly children?: ReactNode;
};

const plural = (n: number): string => (n === 1 ? '1 reading' : `${n} readings`);

function Kept({ form }: { readonly form: string }) {
  const [params] = useSearchParams();
  const [count, by] = (params.get(KEPT_PARAM) ?? '').split(' ');
  if (by !== form || !/^\d{1,4}$/.test(count ?? '')) return null;
  return <Message tone="good">{plural(Number(count))} kept.</Message>;
}

function Outcome({ answer }: { readonly answer: ReadingsAnswer }) {
  const refused = Object.keys(answer.errors).length;
  return (
    <>
      {answer.saved > 0 && <Message tone="good">{plural(answer.saved)} kept.</Message>}
      {answer.questions.length > 0 && (
        <Message tone="care">
          Kept, but unusual:
          <ul>
            {answer.questions.map((question) => (
              <li key={question}>{question}</li>
            ))}
          </ul>
        </Message>
      )}
      {refused > 0 && (
        <Message tone="bad">
          {refused === 1 ? 'One box is' : `${refused} boxes are`} marked below with what to enter instead;
          what stands in them is still there.
        </Message>
      )}
      {answer.saved === 0 && refused === 0 && (
        <Message tone="care">Every box was empty; nothing changed.</Message>
      )}
    </>
  );
}

/**
 * Readings of one subject: who, when and with what once, then the boxes of each group. Sends
 * `intent=readings`, `subjectKind`, `subjectId` and `groups`; answered by `takeReadings`.
 */
export function ReadingsForm({
  view,
  choices,
  answer,
  action,
  submit = 'Keep these readings',
  children,
}: Props) {
  const own = answer?.form === view.form ? answer : undefined;
  const groups = view.groups.flatMap((id) => GROUPS.filter((group) => group.id === id));
  return (
    <Form
      method="post"
      action={action}
      className="form"
      key={own?.stamp ?? view.stamp}
      onKeyDown={enterMovesOn}
      preventScrollReset
      noValidate
    >
      <input type="hidden" name="intent" value="readings" />
      <input type="hidden" name="subjectKind" value={view.subject.kind} />
      <input type="hidden" name="subjectId" value={view.subject.id} />
      <input type="hidden" name="groups" value={view.groups.join(' ')} />
      {own ? <Outcome answer={own} /> : <Kept form={view.form} />}
      <SharedFields id={view.form} choices={choices} defaults={view.defaults} answer={own} />
      {groups.map((group) => (
        <fieldset key={group.id}>
          <legend>
            <h3>{group.name}</h3>
          </legend>
          <HowTo howTo={group.howTo} />
          {group.quantities.map((quantity) =>
            quantity.kind === 'observation' ? (
              <ObservationRow key={quantity.id} quantity={quantity} view={view} answer={own} />
            ) : (
              <QuantityRow key={quantity.id} quantity={quantity} view={view} answer={own} />
            ),
          )}
        </fieldset>
      ))}
      {children}
      <div>
        <button className="button button--main">{submit}</button>
      </div>
    </Form>
  );
}
