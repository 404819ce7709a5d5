/** The outcome of something a user can get wrong: a value, or a message saying what to enter instead. */
export type Result<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly message: string };

export const ok = <T>(value: T): Result<T> => ({ ok: true, value });

/** A refusal. The message tells the user what to type instead. */
export const refuse = (message: string): Result<never> => ({ ok: false, message });
