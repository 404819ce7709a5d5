/** Said once for the whole file: in the address between the steps, so that going back loses nothing. */
export const ABOUT_BOXES = [
  'person',
  'takenAt',
  'disturbance',
  'sampling',
  'instrument',
  'name',
  'vehicle',
  'clockOffsetS',
  'note',
] as const;
export type About = Readonly<Record<(typeof ABOUT_BOXES)[number], string>>;

/** Instruments are taken column by column, each the usual one for what was read. */
export const BY_COLUMN = 'byColumn';

const USUAL: About = {
  person: '',
  takenAt: '',
  disturbance: 'notSaid',
  sampling: 'every',
  instrument: BY_COLUMN,
  name: '',
  vehicle: '',
  clockOffsetS: '0',
  note: '',
};

type Source = { readonly get: (name: string) => unknown; readonly has: (name: string) => boolean };

export const readAbout = (source: Source): About =>
  Object.fromEntries(
    ABOUT_BOXES.map((box) => [
      box,
      source.has(box)
        ? String(source.get(box) ?? '')
            .trim()
            .slice(0, 1000)
        : USUAL[box],
    ]),
  ) as About;
