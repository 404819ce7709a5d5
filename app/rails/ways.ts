/** The ways off the rail that mechanics speaks of, by the start of what a finding is; the last takes the rest. */
export const WAYS = [
  { id: 'climbing', title: 'Climbing the rail', starts: ['climb', 'axleSum'], drawings: [] },
  {
    id: 'rolling',
    title: 'Rolling the rail over',
    starts: ['rollover'],
    drawings: ['rolling-flanging', 'rolling-other'],
  },
  { id: 'dropping', title: 'Dropping in between', starts: ['dropIn'], drawings: ['dropping'] },
  {
    id: 'contact',
    title: 'Wheel on rail',
    starts: ['flangeClearance', 'equivalentConicity', 'radiusDifference', 'fieldSideShare'],
    drawings: [],
  },
  { id: 'loads', title: 'Loads on the curve', starts: [''], drawings: [] },
] as const;

export type Way = (typeof WAYS)[number];

/** The way off the rail that a finding of the mechanics is about. */
export const wayOf = (what: string): Way =>
  WAYS.find(({ starts }) => starts.some((start) => what.startsWith(start))) ?? WAYS[0];
