import type { OutlineChoice } from '~/lib/tracing/outline-file';

/** Boxes that say how the numbers of a file become an outline. `chosen` is there once somebody could change them. */
export const FILE_BOXES = ['unit', 'x', 'y', 'flipX', 'flipY', 'chosen'] as const;

type Source = { readonly get: (name: string) => unknown };

/** The choice as sent, with what was guessed where nothing was sent. */
export function readFileChoice(sent: Source, guessed: OutlineChoice): OutlineChoice {
  if (sent.get('chosen') === null) return guessed;
  const column = (name: 'x' | 'y', usual: number): number => {
    const text = String(sent.get(name) ?? '');
    return /^\d{1,3}$/.test(text) ? Number(text) : usual;
  };
  const unit = sent.get('unit');
  return {
    columns: [column('x', guessed.columns[0]), column('y', guessed.columns[1])],
    unit: unit === 'mm' || unit === 'in' ? unit : guessed.unit,
    flipped: { x: sent.get('flipX') !== null, y: sent.get('flipY') !== null },
  };
}
