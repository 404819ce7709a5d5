import { Form } from '@remix-run/react';
import { useState } from 'react';
import { targetBox, unitBox } from '~/app/imports/boxes';
import type { MatchingView } from '~/app/imports/matching.server';
import { Message } from '../Message';
import { AboutFile, type AboutFileProps } from './AboutFile';

type RowProps = {
  readonly index: number;
  readonly column: MatchingView['columns'][number];
  readonly view: MatchingView;
};

function ColumnRow({ index, column, view }: RowProps) {
  const [target, setTarget] = useState(column.target);
  const own = view.targets.find(({ id }) => id === target)?.units;
  // Before JavaScript runs every unit can be chosen and the server checks; then only those that fit.
  const units = own === undefined ? view.units : view.units.filter(({ id }) => own.includes(id));
  return (
    <tr>
      <th scope="row">{column.name || `(column ${index + 1} has no name)`}</th>
      <td data-label="In the file" className="small soft">
        {column.samples.join(' · ') || 'empty'}
      </td>
      <td data-label="Holds">
        <select
          name={targetBox(index)}
          aria-label={`What “${column.name}” holds`}
          value={target}
          onChange={(event) => setTarget(event.target.value)}
        >
          <option value="">Leave this column out</option>
          {view.targets.map(({ id, label }) => (
            <option key={id} value={id}>
              {label}
            </option>
          ))}
        </select>
      </td>
      <td data-label="Bare numbers in">
        <select
          key={units.length === view.units.length ? 'all' : target}
          name={unitBox(index)}
          aria-label={`Unit of bare numbers in “${column.name}”`}
          defaultValue={units.some(({ id }) => id === column.unit) ? column.unit : ''}
        >
          <option value="">{units.length === 0 ? 'no unit' : 'the case’s usual unit'}</option>
          {units.map(({ id, label }) => (
            <option key={id} value={id}>
              {label}
            </option>
          ))}
        </select>
      </td>
    </tr>
  );
}

type Props = {
  readonly view: MatchingView;
  readonly problems: readonly string[];
  readonly about: AboutFileProps;
};

/** Second step: what each column holds, and what holds for the whole file. */
export function MatchColumns({ view, problems, about }: Props) {
  return (
    <Form method="post" className="form" noValidate>
      <input type="hidden" name="intent" value="match" />
      {problems.length > 0 && (
        <Message tone="bad">
          <ul>
            {problems.map((problem) => (
              <li key={problem}>{problem}</li>
            ))}
          </ul>
        </Message>
      )}
      <div className="table-wrap">
        <table className="as-cards">
          <caption className="visually-hidden">Columns of the file</caption>
          <thead>
            <tr>
              <th scope="col">Column</th>
              <th scope="col">In the file</th>
              <th scope="col">Holds</th>
              <th scope="col">Bare numbers in</th>
            </tr>
          </thead>
          <tbody>
            {view.columns.map((column, index) => (
              <ColumnRow key={index} index={index} column={column} view={view} />
            ))}
          </tbody>
        </table>
      </div>
      <AboutFile {...about} />
      <div>
        <button className="button button--main">Show what would be imported</button>
      </div>
    </Form>
  );
}
