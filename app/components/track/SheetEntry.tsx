import { Form } from '@remix-run/react';
import { useState } from 'react';
import { flushSync } from 'react-dom';
import { cellName, instrumentBox, SHEET_COLUMNS, type SheetColumn } from '~/app/track/columns';
import { shownColumns, type MoreColumns } from '~/app/track/shown-columns';
import type { SheetRow } from '~/app/track/rows.server';
import type { SheetAnswer } from '~/app/track/save-sheet.server';
import type { SheetEntryView } from '~/app/track/view.server';
import { DISTURBANCE_LABELS, SAMPLING_LABELS } from '~/app/readings/wording';
import { DISTURBANCES, SAMPLINGS } from '~/lib/case/record';
import type { UnitSystem } from '~/lib/readings/unit';
import { LabelledInput } from '../LabelledInput';
import { LabelledSelect } from '../LabelledSelect';
import { moveInColumn, pasteBlock } from './sheet-keys';
import { SheetOutcome } from './SheetOutcome';
import { SheetHead } from './StationTable';

const EMPTY_ROWS = 5;
const MOST_ADDED = 1000;

type Values = Readonly<Record<string, string>>;

/** Choices of a column as the browser's own suggestions, so that a cell still takes a paste. */
function choicesOf(column: SheetColumn): readonly string[] {
  const asked = column.type === 'field' ? column.field : column.quantity;
  const isChoice = 'type' in asked ? asked.type === 'choice' : asked.kind === 'choice';
  return isChoice && 'choices' in asked ? asked.choices.map(({ label }) => label) : [];
}

/** Both sides of a quantity share one list. */
const listName = (column: SheetColumn): string =>
  `sheet-${column.type === 'field' ? column.id : column.quantity.id}`;

const listOf = (column: SheetColumn): string | undefined =>
  choicesOf(column).length > 0 ? listName(column) : undefined;

type RowProps = {
  readonly row: string;
  readonly name: string;
  readonly cells: readonly string[];
  readonly values: Values;
  readonly errors: Values;
  readonly columns: readonly number[];
};

function EntryRow({ row, name, cells, values, errors, columns }: RowProps) {
  return (
    <tr>
      {columns.map((index) => {
        const column = SHEET_COLUMNS[index];
        if (column === undefined) return null;
        const cell = cellName(row, column.id);
        const error = errors[cell];
        return (
          <td key={column.id}>
            <input
              name={cell}
              defaultValue={values[cell] ?? cells[index] ?? ''}
              aria-label={`${column.short}, ${name}`}
              list={listOf(column)}
              autoComplete="off"
              {...(error ? { id: cell, 'aria-invalid': true, 'aria-describedby': `${cell}:error` } : {})}
            />
            {error && (
              <p className="field__error" id={`${cell}:error`}>
                {error}
              </p>
            )}
          </td>
        );
      })}
    </tr>
  );
}

const newRowsIn = (values: Values): number =>
  Math.max(0, ...Object.keys(values).map((cell) => Number(/^cell:n(\d+):/.exec(cell)?.[1] ?? 0)));

const FIELDS = SHEET_COLUMNS.flatMap(({ type, id }, index) => (type === 'field' ? [{ id, index }] : []));

/** Fields of the stations as shown: what changed is told from them when the form comes back. */
const fieldsOf = (rows: readonly SheetRow[]): string =>
  JSON.stringify(
    Object.fromEntries(
      rows.map(({ id, cells }) => [
        id,
        Object.fromEntries(FIELDS.map((field) => [field.id, cells[field.index] ?? ''])),
      ]),
    ),
  );

type Props = {
  readonly rows: readonly SheetRow[];
  /** Rows with a marked cell that lie on another page. */
  readonly strays: readonly SheetRow[];
  readonly view: SheetEntryView;
  readonly system: UnitSystem;
  readonly answer?: SheetAnswer;
  readonly columns: {
    readonly asked: readonly string[];
    readonly shown: readonly number[];
    readonly more: MoreColumns;
  };
  /** Address of the page of the sheet with its cells open. */
  readonly action: string;
};

/** Columns that hold something of what was sent and stands in its box again. */
const sentColumns = (values: Values): ReadonlySet<number> =>
  new Set(
    Object.entries(values).flatMap(([name, text]) => {
      const [kind, , column] = name.split(':');
      const index = SHEET_COLUMNS.findIndex(({ id }) => id === column);
      return kind === 'cell' && text !== '' && index >= 0 ? [index] : [];
    }),
  );

/** Further columns to choose; they come with the sheet, so that nothing entered is lost. */
function MoreColumnsForm({ more }: { readonly more: MoreColumns }) {
  if (more.length === 0) return null;
  return (
    <details className="disclose">
      <summary>More columns</summary>
      <div className="stack">
        {more.map(({ group, quantities }) => (
          <fieldset key={group}>
            <legend className="label">{group}</legend>
            <div className="form__grid">
              {quantities.map(({ id, name, asked }) => (
                <label className="check" key={id}>
                  <input type="checkbox" name="columns" value={id} defaultChecked={asked} />
                  {name}
                </label>
              ))}
            </div>
          </fieldset>
        ))}
        <div>
          <button className="button" name="more" value="1">
            Save, and show these columns
          </button>
        </div>
      </div>
    </details>
  );
}

/** The station sheet with every cell open: one form, which works as a plain one without JavaScript. */
export function SheetEntry({ rows, strays, view, system, answer, columns, action }: Props) {
  const values = answer?.values ?? {};
  const errors = answer?.errors ?? {};
  const value = (name: string, usual: string): string => values[name] ?? usual;
  const [added, setAdded] = useState(EMPTY_ROWS + newRowsIn(values));
  const [pasted, setPasted] = useState('');
  const addRows = (count: number): void =>
    flushSync(() => setAdded((now) => Math.min(now + count, MOST_ADDED)));
  const shown = [...rows, ...strays];
  const filled = new Set([...columns.shown, ...sentColumns(values)]);
  const inSheet = answer ? shownColumns(filled, answer.columns) : columns.shown;
  const more = columns.more.map(({ group, quantities }) => ({
    group,
    quantities: quantities.map((each) => ({
      ...each,
      asked: (answer?.columns ?? columns.asked).includes(each.id),
    })),
  }));
  const heads = inSheet.flatMap((index) => SHEET_COLUMNS[index] ?? []);
  const lists = new Map(
    heads.flatMap((column) => {
      const labels = choicesOf(column);
      return labels.length === 0 ? [] : [[listName(column), labels] as const];
    }),
  );
  const inHead = new Set(heads.flatMap((column) => (column.type === 'reading' ? [column.quantity.id] : [])));
  const instruments = view.instruments.filter(({ quantity }) => inHead.has(quantity));
  return (
    <Form method="post" action={action} className="form" preventScrollReset noValidate>
      <input type="hidden" name="intent" value="sheet" />
      <input type="hidden" name="asOf" value={view.asOf} />
      <input type="hidden" name="was" value={fieldsOf(shown)} />
      {answer && <SheetOutcome answer={answer} rows={shown} />}
      <fieldset className="shared">
        <legend className="visually-hidden">Who and when</legend>
        <div className="form__grid">
          <LabelledSelect
            id="sheet-person"
            name="person"
            label="Taken by"
            value={value('person', view.person)}
            options={[{ id: '', label: 'Not said' }, ...view.people]}
          />
          <div>
            <LabelledInput
              id="sheet-at"
              name="takenAt"
              type="datetime-local"
              label="When (local time)"
              value={value('takenAt', '')}
              error={errors.takenAt}
            />
            <label className="check">
              <input type="checkbox" name="justNow" defaultChecked={value('justNow', '') !== ''} />
              Just now
            </label>
          </div>
          <LabelledSelect
            id="sheet-state"
            name="disturbance"
            label="State of new stations when read"
            help="Where a row’s own State cell is empty."
            value={value('disturbance', 'notSaid')}
            options={DISTURBANCES.map((id) => ({ id, label: DISTURBANCE_LABELS[id] }))}
          />
          <LabelledSelect
            id="sheet-sampling"
            name="sampling"
            label="How the stations were chosen"
            value={value('sampling', 'every')}
            options={SAMPLINGS.map((id) => ({ id, label: SAMPLING_LABELS[id] }))}
          />
        </div>
        {instruments.length > 0 && (
          <details className="disclose">
            <summary>Read with, column by column</summary>
            <div className="form__grid">
              {instruments.map(({ quantity, name, options, usual }) => (
                <LabelledSelect
                  key={quantity}
                  id={`sheet-with-${quantity}`}
                  name={instrumentBox(quantity)}
                  label={name}
                  value={value(instrumentBox(quantity), usual)}
                  options={[{ id: '', label: 'Ordinary instrument, not named' }, ...options]}
                />
              ))}
            </div>
          </details>
        )}
      </fieldset>
      {[...lists].map(([id, labels]) => (
        <datalist key={id} id={id}>
          {labels.map((label) => (
            <option key={label} value={label} />
          ))}
        </datalist>
      ))}
      {/* The keys belong to the boxes inside; the region itself does nothing when pressed. */}
      {/* eslint-disable-next-line jsx-a11y/no-noninteractive-element-interactions */}
      <div
        className="station-sheet station-sheet--open"
        role="region"
        aria-label="Station sheet"
        onKeyDown={(event) => moveInColumn(event, addRows)}
        onPaste={(event) => {
          const done = pasteBlock(event, addRows);
          if (done)
            setPasted(
              `${done.filled} cells filled.` +
                (done.left > 0
                  ? ` ${done.left} lay beyond the last column and were left out: choose more columns first.`
                  : ''),
            );
        }}
      >
        <table>
          <SheetHead system={system} columns={heads} />
          <tbody>
            {shown.map(({ id, name, cells }) => (
              <EntryRow
                key={id}
                row={id}
                name={name}
                cells={cells}
                values={values}
                errors={errors}
                columns={inSheet}
              />
            ))}
            {Array.from({ length: added }, (_, index) => (
              <EntryRow
                key={`n${index + 1}`}
                row={`n${index + 1}`}
                name={`new row ${index + 1}`}
                cells={[]}
                values={values}
                errors={errors}
                columns={inSheet}
              />
            ))}
          </tbody>
        </table>
      </div>
      <p role="status" className="small">
        {pasted}
      </p>
      <MoreColumnsForm more={more} />
      <fieldset className="shared">
        <legend className="visually-hidden">If a cell changes that had been saved</legend>
        <p className="label" aria-hidden="true">
          If a cell changes that had been saved
        </p>
        <div className="form__grid">
          <LabelledInput
            id="sheet-reason"
            name="reason"
            label="Reason"
            help="Once for all of them. What stood there stays in the case."
            value={value('reason', '')}
            error={errors.reason}
          />
          <LabelledSelect
            id="sheet-change"
            name="change"
            label="What changed"
            value={value('change', 'slip')}
            options={[
              { id: 'slip', label: 'Entered wrongly: keep who and when' },
              { id: 'again', label: 'Read again: who and when as above' },
            ]}
          />
        </div>
      </fieldset>
      <div className="row">
        <button className="button button--main">Save the sheet</button>
      </div>
    </Form>
  );
}
