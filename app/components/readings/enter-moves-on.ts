import type { KeyboardEvent } from 'react';

/** Enter goes to the next box, as down a column on paper; in the last one it sends the form. */
export function enterMovesOn(event: KeyboardEvent<HTMLFormElement>): void {
  const from = event.target;
  if (event.key !== 'Enter' || event.nativeEvent.isComposing) return;
  if (!(from instanceof HTMLInputElement) || from.type !== 'text') return;
  const boxes = [...event.currentTarget.elements].filter(
    (box): box is HTMLInputElement =>
      box instanceof HTMLInputElement && box.type === 'text' && box.offsetParent !== null,
  );
  const next = boxes[boxes.indexOf(from) + 1];
  if (!next) return;
  event.preventDefault();
  next.focus();
  next.select();
}
