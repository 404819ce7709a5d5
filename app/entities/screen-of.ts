import type { EntityKind } from '~/lib/case/record';

/** The screen on which records of the kind are listed. */
export const SCREEN_OF: Readonly<Record<EntityKind, string>> = {
  person: 'scene',
  instrument: 'scene',
  statement: 'scene',
  vehicle: 'train',
  lineStretch: 'train',
  mark: 'marks',
  station: 'track',
  wheelset: 'wheels',
  wheelDefect: 'wheels',
  truck: 'wheels',
  rail: 'rails',
  turnout: 'turnout',
};
