import { Link, useLocation } from '@remix-run/react';
import type { Paged } from '~/app/paging';

type Props = {
  readonly of: Omit<Paged<unknown>, 'items'>;
  /** Name of the page number in the address. */
  readonly param?: string;
  /** What is paged, such as "vehicles". */
  readonly what: string;
};

/** What the address says of something that was just done is not true of the next page. */
const ONCE = ['kept', 'done', 'imported'] as const;

export function Pager({ of: { page, pages, total }, param = 'page', what }: Props) {
  const { search } = useLocation();
  if (pages <= 1) return null;
  const to = (target: number) => {
    const params = new URLSearchParams(search);
    for (const said of ONCE) params.delete(said);
    params.set(param, String(target));
    return `?${params}`;
  };
  return (
    <nav className="pager" aria-label={`Pages of ${what}`}>
      {page > 1 && (
        <Link to={to(page - 1)} rel="prev" preventScrollReset>
          ← Before
        </Link>
      )}
      <span>
        Page {page} of {pages} ({total} {what})
      </span>
      {page < pages && (
        <Link to={to(page + 1)} rel="next" preventScrollReset>
          Next →
        </Link>
      )}
    </nav>
  );
}
