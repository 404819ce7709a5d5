import type { Context } from './context';

/** What several findings of one context share is worked out once and goes with the context. */
export function oncePerContext<T>(compute: (context: Context) => T): (context: Context) => T {
  const known = new WeakMap<Context, { readonly value: T }>();
  return (context) => {
    const before = known.get(context);
    if (before !== undefined) return before.value;
    const value = compute(context);
    known.set(context, { value });
    return value;
  };
}
