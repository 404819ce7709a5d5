import type { Measure, QuantityGroup } from '../quantity';
import { ALONG, feet } from './build';
import { CURVATURE, GRADE } from './train';

const distance = (id: string, name: string, short: string): Measure => ({
  kind: 'measure',
  id,
  name,
  short,
  subject: 'lineStretch',
  slots: [],
  dimension: 'alongTrack',
  bareUnit: ALONG,
  possible: [feet(-200_000), feet(200_000)],
  usual: [feet(-60_000), feet(20_000)],
  defaultResolution: {
    halfWidth: feet(25),
    source: 'scaled off a track chart to 50 ft; engineering judgement',
  },
  reference: { low: feet(-10_000), high: feet(1_000), source: 'engineering judgement' },
});

export const lineProfileGroup: QuantityGroup = {
  id: 'lineProfile',
  name: 'Grades and curves of the line',
  screen: 'train',
  subject: 'lineStretch',
  howTo: {
    take: 'Copy or import the track chart: distance from the POD counted as for the stations (before it negative), grade with uphill positive the way the distances run, and curvature. A row with “to” holds the same from end to end, as a grade or a curve between its ends does; a row without is a point. Between rows grade and curvature run on straight, as over a vertical curve or a spiral. Leave a cell empty where the row says nothing of it.',
    why: 'Every vehicle’s grade and curve when the first derailed one came to the POD follow from it by the lengths of the train, and those the train ran over before.',
    bearsOn: ['inTrainForce'],
    spoiledBy:
      'A chart counted from another place than the POD; mileposts that are not a mile apart; grades signed for the other direction.',
    figure: 'couplerForces',
  },
  quantities: [
    distance('lineFrom', 'From, distance from the POD', 'From'),
    distance('lineTo', 'To, distance from the POD', 'To'),
    { ...GRADE, subject: 'lineStretch', id: 'lineGrade', name: 'Grade, uphill positive', short: 'Grade' },
    { ...CURVATURE, subject: 'lineStretch', id: 'lineCurvature', name: 'Curvature', short: 'Curvature' },
  ],
};
