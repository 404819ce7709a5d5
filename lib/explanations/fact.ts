import type { Witness } from './witness';

export const FACT_IDS = [
  'flangeCrossedHead',
  'railRolledFirst',
  'droppedInside',
  'flangeShallowOrDry',
  'sideForceHigh',
  'wheelLight',
  'fieldSideContact',
  'railsWeaklyHeld',
  'gaugeBeyondSpan',
  'pointPicked',
  'pointCouldBeStruck',
] as const;
export type FactId = (typeof FACT_IDS)[number];

/** One thing that was either so or not so just before, or as, the first wheel left the rail. */
export type Fact = {
  readonly id: FactId;
  readonly name: string;
  /** What counts as so. Witnesses and expectations are judged against these words. */
  readonly definition: string;
  /** When it does not hold, as the middle of a sentence: "no flange crossed …". */
  readonly negation: string;
  readonly witnesses: readonly Witness[];
};
