/** Who is entering: written into every entry of the log. */
export type Actor = { readonly personId: string | null; readonly name: string };
