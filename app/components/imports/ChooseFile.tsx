import { Form } from '@remix-run/react';
import { ChooseFileForm } from '../ChooseFileForm';

type Props = {
  readonly error?: string;
  readonly largest: string;
  readonly sample: string;
  /** What was pasted and refused; null where nothing is pasted, such as a recorder download. */
  readonly paste: { readonly text: string; readonly error?: string } | null;
};

/** The file of an import: a table with names above its columns. Or the same, pasted from a spreadsheet. */
export function ChooseFile({ error, largest, sample, paste }: Props) {
  return (
    <div className="stack">
      <ChooseFileForm label="CSV file" accept=".csv,.txt,.tsv,text/csv,text/plain" error={error}>
        The first row names the columns. Commas, semicolons or tabs between them; UTF-8; up to {largest}. To
        try it out, take <code>{sample}</code> from the program’s folder.
      </ChooseFileForm>
      {paste && <PasteForm {...paste} />}
    </div>
  );
}

function PasteForm({ text, error }: NonNullable<Props['paste']>) {
  return (
    <details className="disclose" open={error !== undefined}>
      <summary>Or paste the rows from a spreadsheet …</summary>
      <Form method="post" className="form">
        <input type="hidden" name="intent" value="paste" />
        <div className="field">
          <label htmlFor="pasted">Rows, with the names of the columns above them</label>
          <p className="field__help" id="pasted-help">
            What is pasted is kept as a file of its own, with its SHA-256.
          </p>
          <textarea
            id="pasted"
            name="pasted"
            rows={10}
            spellCheck={false}
            defaultValue={text}
            aria-describedby={error ? 'pasted-help pasted-error' : 'pasted-help'}
            aria-invalid={error ? true : undefined}
          />
          {error && (
            <p className="field__error" id="pasted-error" role="alert">
              {error}
            </p>
          )}
        </div>
        <div>
          <button className="button button--main">Read these rows</button>
        </div>
      </Form>
    </details>
  );
}
