import { Form } from '@remix-run/react';

type Props = { readonly error?: string; readonly action?: string };

/** First step: the file. A whole page load, so that it goes the same way without JavaScript. */
export function ChooseOutlineFile({ error, action }: Props) {
  return (
    <Form method="post" action={action} encType="multipart/form-data" reloadDocument className="form">
      <div className="field">
        <label htmlFor="file">File with the points</label>
        <p className="field__help" id="file-help">
          An x and a y on each line, in mm or inches, in any order of columns. Headings, comments and further
          columns may be in it. The file is kept as it is.
        </p>
        <input
          id="file"
          name="file"
          type="file"
          accept=".csv,.txt,.tsv,.dat,.xyz,text/csv,text/plain"
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
