/** One page of a long list, and where it stands in it. */
export type Paged<T> = {
  readonly items: readonly T[];
  readonly page: number;
  readonly pages: number;
  readonly total: number;
};

export const PAGE_SIZE = 40;

/** The page the text names, counted from 1; the first or last one when it names none there is. */
export function pageOf<T>(all: readonly T[], text: string | null, size = PAGE_SIZE): Paged<T> {
  const pages = Math.max(1, Math.ceil(all.length / size));
  const asked = /^\d{1,6}$/.test(text ?? '') ? Number(text) : 1;
  const page = Math.min(Math.max(asked, 1), pages);
  return { items: all.slice((page - 1) * size, page * size), page, pages, total: all.length };
}
