import { useSubmit } from '@remix-run/react';
import { useRef, type FormEvent } from 'react';

const PAUSE_MS = 250;

/**
 * Asks for the picture anew, soon after something in the form was changed, as its “Draw it again”
 * button does without JavaScript. What is said of the outline changes nothing in the picture.
 */
export function useRedraw(): (event: FormEvent<HTMLFormElement>) => void {
  const submit = useSubmit();
  const waiting = useRef<ReturnType<typeof setTimeout>>();
  return ({ currentTarget, target }) => {
    if (target instanceof Element && target.closest('.shared') !== null) return;
    clearTimeout(waiting.current);
    waiting.current = setTimeout(
      () => submit(currentTarget, { method: 'get', replace: true, preventScrollReset: true }),
      PAUSE_MS,
    );
  };
}
