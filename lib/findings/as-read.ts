import type { Method } from './finding';

/** For findings that are a reading and nothing more. */
export const asReadMethod: Method = {
  id: 'as-read',
  name: 'Reading as taken',
  formula:
    'value = reading, or the mean of several standing readings; u = a/√3, a: half-width of the instrument’s resolution or of the writing, whichever is coarser; with several readings their standard deviation when that is larger',
  validRange: 'Readings of things the derailment had not disturbed.',
  sources: [
    {
      text: 'JCGM 100:2008 (GUM), 4.2 (repeated readings) and 4.3.7 (resolution)',
      status: 'published',
    },
    {
      text: 'With few repeats the larger of scatter and resolution is taken, and the scatter is not divided by √n',
      status: 'engineering judgement',
    },
  ],
};

/** For findings that are the outcome of a gauge giving pass or fail. */
export const passFailMethod: Method = {
  id: 'go-no-go',
  name: 'Go/no-go check as taken',
  formula: 'Pass or fail of the named check; no number follows from it.',
  validRange: 'A gauge in calibration, applied as its maker says.',
  sources: [{ text: 'Record of the check', status: 'common practice, no source' }],
};
