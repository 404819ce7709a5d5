import { useSubmit } from '@remix-run/react';
import { useEffect, useRef, type FormEvent } from 'react';

const PAUSE_MS = 250;

type Redrawn = {
  readonly onChange: (event: FormEvent<HTMLFormElement>) => void;
  readonly onSubmit: () => void;
};

/**
 * For a form with a picture beside it: asks for the picture anew soon after something was changed,
 * as its “Draw it again” button does without JavaScript. What is said of the outline changes nothing
 * in the picture. Sending the form ends the waiting, or the picture would take the place of the form.
 */
export function useRedraw(): Redrawn {
  const submit = useSubmit();
  const waiting = useRef<ReturnType<typeof setTimeout>>();
  const stop = (): void => clearTimeout(waiting.current);
  useEffect(() => () => clearTimeout(waiting.current), []);
  return {
    onSubmit: stop,
    onChange: ({ currentTarget, target }) => {
      if (target instanceof Element && target.closest('.shared') !== null) return;
      stop();
      waiting.current = setTimeout(
        () => submit(currentTarget, { method: 'get', replace: true, preventScrollReset: true }),
        PAUSE_MS,
      );
    },
  };
}
