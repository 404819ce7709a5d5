import { Form, useLocation } from '@remix-run/react';

type Props = {
  readonly caseId: string;
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly personId: string | null;
};

/** Says whose name goes into the log with what is entered next. */
export function EnteringAs({ caseId, people, personId }: Props) {
  const { pathname, search } = useLocation();
  return (
    <Form method="post" action={`/cases/${caseId}/entering-as`} className="entering">
      <input type="hidden" name="back" value={pathname + search} />
      <label htmlFor="entering-as">Entering as</label>
      <select id="entering-as" name="person" defaultValue={personId ?? ''} key={personId}>
        <option value="">not named</option>
        {people.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
      <button className="button button--small">Set</button>
    </Form>
  );
}
