import { Form } from '@remix-run/react';
import type { ReactNode } from 'react';

type Props = {
  readonly label: string;
  /** Kinds of file offered first. */
  readonly accept: string;
  readonly error?: string;
  readonly action?: string;
  /** What may be in the file. */
  readonly children: ReactNode;
};

/** First step of bringing a file in. A whole page load, so that it goes the same way without JavaScript. */
export function ChooseFileForm({ label, accept, error, action, children }: Props) {
  return (
    <Form method="post" action={action} encType="multipart/form-data" reloadDocument className="form">
      <div className="field">
        <label htmlFor="file">{label}</label>
        <p className="field__help" id="file-help">
          {children}
        </p>
        <input
          id="file"
          name="file"
          type="file"
          accept={accept}
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
