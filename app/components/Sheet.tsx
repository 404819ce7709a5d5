import { useId, type ReactNode } from 'react';

type Props = {
  readonly title: string;
  readonly id?: string;
  readonly aside?: ReactNode;
  readonly children: ReactNode;
};

/** One section of a screen, as a sheet of the book with its heading. */
export function Sheet({ title, id, aside, children }: Props) {
  const headingId = useId();
  return (
    <section className="sheet" aria-labelledby={headingId} id={id}>
      <div className="sheet__head">
        <h2 id={headingId}>{title}</h2>
        {aside && <div className="row">{aside}</div>}
      </div>
      {children}
    </section>
  );
}
