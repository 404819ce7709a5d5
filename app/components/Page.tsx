import type { ReactNode } from 'react';

type Props = {
  readonly title: string;
  readonly intro?: string;
  /** Buttons and links that belong to the whole page. */
  readonly actions?: ReactNode;
  readonly children: ReactNode;
};

/** The body of one screen below its heading. */
export function Page({ title, intro, actions, children }: Props) {
  return (
    <main id="content" className="page" tabIndex={-1}>
      <div className="page__inner">
        <div className="page__head">
          <div className="page__words">
            <h1>{title}</h1>
            {intro && <p className="soft">{intro}</p>}
          </div>
          {actions && <div className="row">{actions}</div>}
        </div>
        {children}
      </div>
    </main>
  );
}
