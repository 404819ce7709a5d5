import { Form } from '@remix-run/react';

type Props = {
  readonly error?: string;
  readonly largest: string;
  readonly sample: string;
};

/** First step: the file. A whole page load, so that it goes the same way without JavaScript. */
export function ChooseFile({ error, largest, sample }: Props) {
  return (
    <Form method="post" encType="multipart/form-data" reloadDocument className="form">
      <div className="field">
        <label htmlFor="file">CSV file</label>
        <p className="field__help" id="file-help">
          The first row names the columns. Commas, semicolons or tabs between them; UTF-8; up to {largest}. To
          try it out, take <code>{sample}</code> from the program’s folder.
        </p>
        <input
          id="file"
          name="file"
          type="file"
          accept=".csv,.txt,.tsv,text/csv,text/plain"
          aria-describedby={error ? 'file-help file-error' : 'file-help'}
          aria-invalid={error ? true : undefined}
        />
        {error && (
          <p className="field__error" id="file-error" role="alert">
            {error}
          </p>
        )}
      </div>
      <div>
        <button className="button button--main">Read this file</button>
      </div>
    </Form>
  );
}
