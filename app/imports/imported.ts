import type { ImportKind } from '~/db/imports';

/** What an import recorded, as the screen it leads to says. */
export type ImportedCounts = {
  readonly kind: ImportKind;
  readonly records: number;
  /** Readings, or samples of a recorder run. */
  readonly readings: number;
};

export const importedParam = ({ kind, records, readings }: ImportedCounts): string =>
  `${kind}.${records}.${readings}`;

/** The counts in the address, when they are of one of these kinds. */
export function importedIn(text: string | null, ...kinds: readonly ImportKind[]): ImportedCounts | null {
  const match = /^([a-z]+)\.(\d{1,6})\.(\d{1,8})$/.exec(text ?? '');
  const kind = kinds.find((each) => each === match?.[1]);
  return match && kind ? { kind, records: Number(match[2]), readings: Number(match[3]) } : null;
}
