import type { ImportKind } from '~/db/imports';

type About = {
  readonly title: string;
  readonly intro: string;
  /** Screen on which what was imported is shown. */
  readonly back: 'train' | 'track';
  readonly sample: string;
};

export const IMPORTS: Readonly<Record<ImportKind, About>> = {
  consist: {
    title: 'Import a consist',
    intro: 'One row per vehicle, head end first: position, reporting mark, number, type, weight, lengths.',
    back: 'train',
    sample: 'fixtures/samples/consist.csv',
  },
  stations: {
    title: 'Import track stations',
    intro: 'One row per station: its name, its distance from the POD, and the readings taken there.',
    back: 'track',
    sample: 'fixtures/samples/stations.csv',
  },
  line: {
    title: 'Import grades and curves of the line',
    intro:
      'One row per grade or curve, or per point: distance from the POD (before it negative), to where it goes, grade uphill positive, curvature.',
    back: 'train',
    sample: 'fixtures/samples/line.csv',
  },
  recorder: {
    title: 'Import an event recorder',
    intro: 'One row per sample: time and speed, and what else was recorded.',
    back: 'train',
    sample: 'fixtures/samples/recorder.csv',
  },
};

export const isImportKind = (text: unknown): text is ImportKind =>
  typeof text === 'string' && Object.hasOwn(IMPORTS, text);
