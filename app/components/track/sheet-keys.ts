import type { ClipboardEvent, KeyboardEvent } from 'react';
import { pastedBlock } from '~/app/track/pasted-block';

type Cell = { readonly row: HTMLTableRowElement; readonly column: number };

const isBox = (target: EventTarget | null): target is HTMLInputElement =>
  target instanceof HTMLInputElement && target.type === 'text';

function cellOf(target: EventTarget | null): Cell | null {
  if (!isBox(target)) return null;
  const cell = target.closest('td');
  const row = cell?.parentElement;
  return cell && row instanceof HTMLTableRowElement ? { row, column: cell.cellIndex } : null;
}

const boxAt = (row: Element | null | undefined, column: number): HTMLInputElement | null => {
  const box = row instanceof HTMLTableRowElement ? row.cells[column]?.querySelector('input') : null;
  return box instanceof HTMLInputElement ? box : null;
};

function moveTo(box: HTMLInputElement | null): boolean {
  if (!box) return false;
  box.focus();
  box.select();
  return true;
}

/** Enter and the arrows go up and down the column, as on a sheet; past the last row, one is added. */
export function moveInColumn(event: KeyboardEvent, addRows: (count: number) => void): void {
  const cell = cellOf(event.target);
  if (!cell || event.nativeEvent.isComposing || event.altKey || event.ctrlKey || event.metaKey) return;
  const up = event.key === 'ArrowUp' || (event.key === 'Enter' && event.shiftKey);
  const down = event.key === 'ArrowDown' || (event.key === 'Enter' && !event.shiftKey);
  if (!up && !down) return;
  event.preventDefault();
  const { row, column } = cell;
  if (up) {
    moveTo(boxAt(row.previousElementSibling, column));
    return;
  }
  if (moveTo(boxAt(row.nextElementSibling, column)) || event.key !== 'Enter') return;
  addRows(1);
  moveTo(boxAt(row.nextElementSibling, column));
}

/**
 * Fills cells to the right and down from the one the block is pasted into, adding rows as needed.
 * One cell alone is left to the browser. What would go beyond the last column is left out; answers
 * how many cells were filled and how many left out, or null when nothing was done here.
 */
export function pasteBlock(
  event: ClipboardEvent,
  addRows: (count: number) => void,
): { readonly filled: number; readonly left: number } | null {
  const cell = cellOf(event.target);
  const block = pastedBlock(event.clipboardData.getData('text/plain'));
  if (!cell || (block.length === 1 && block[0]?.length === 1)) return null;
  event.preventDefault();
  const body = cell.row.parentElement;
  if (!body) return null;
  const first = cell.row.sectionRowIndex;
  const missing = first + block.length - body.children.length;
  if (missing > 0) addRows(missing);
  let filled = 0;
  let left = 0;
  block.forEach((texts, down) =>
    texts.forEach((text, right) => {
      const box = boxAt(body.children[first + down], cell.column + right);
      if (!box) {
        left += 1;
        return;
      }
      box.value = text.trim();
      filled += 1;
    }),
  );
  return { filled, left };
}
