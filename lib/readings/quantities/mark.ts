import type { QuantityGroup } from '../quantity';
import { ALONG, crossLength, feet, TAPE } from './build';

const ALONG_MARK = {
  kind: 'measure',
  subject: 'mark',
  slots: [],
  dimension: 'alongTrack',
  bareUnit: ALONG,
  possible: [feet(-20_000), feet(20_000)],
  usual: [feet(-1_000), feet(3_000)],
  defaultResolution: TAPE,
  reference: { low: feet(-50), high: feet(200), source: 'engineering judgement' },
} as const;

export const markExtentGroup: QuantityGroup = {
  id: 'markExtent',
  name: 'Where the mark runs',
  screen: 'marks',
  subject: 'mark',
  howTo: {
    take: 'Tape along the rail from the POD: negative before it, positive after, in the direction of travel. Give where the mark starts and ends, and how far across the head it lies from the gauge face at both.',
    why: 'A mark that crosses the head over several feet was made by a wheel rolling up; one that stays on the inside was made by a wheel dropping. The order of marks tells which wheel left first.',
    bearsOn: ['wheelClimb', 'wideGauge', 'railRollover', 'switchPointPick'],
    spoiledBy:
      'Stopping at the first mark found. Rain, sand and passing wheels. Reading a mark made by another wheel.',
    figure: 'markAcrossHead',
  },
  quantities: [
    { ...ALONG_MARK, id: 'markStart', name: 'Starts at, from the POD', short: 'Start' },
    { ...ALONG_MARK, id: 'markEnd', name: 'Ends at, from the POD', short: 'End' },
    crossLength('mark', {
      id: 'markOffsetStart',
      name: 'From the gauge face at its start',
      short: 'Across, start',
      possibleIn: [-12, 60],
      usualIn: [-1, 8],
      referenceIn: [0, 3],
      referenceSource: 'across a rail head; engineering judgement',
    }),
    crossLength('mark', {
      id: 'markOffsetEnd',
      name: 'From the gauge face at its end',
      short: 'Across, end',
      possibleIn: [-60, 60],
      usualIn: [-30, 30],
      referenceIn: [0, 3],
      referenceSource: 'across a rail head; engineering judgement',
    }),
  ],
};
