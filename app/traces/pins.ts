/** Boxes of the form for typed pins. */
export type PinBoxes = { readonly pins: string; readonly pitch: string; readonly unit: 'mm' | 'in' };

type Source = { readonly get: (name: string) => unknown };

export const MOST_PIN_LETTERS = 6000;

export const readPinBoxes = (sent: Source, usual: PinBoxes['unit']): PinBoxes => {
  const text = (name: string) => String(sent.get(name) ?? '');
  const unit = text('unit');
  return {
    pins: text('pins').slice(0, MOST_PIN_LETTERS),
    pitch: text('pitch').slice(0, 30).trim(),
    unit: unit === 'mm' || unit === 'in' ? unit : usual,
  };
};
