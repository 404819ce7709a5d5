import type { Measure } from '~/lib/readings/quantity';

const measure = (
  entry: Pick<Measure, 'id' | 'name' | 'dimension' | 'bareUnit' | 'possible' | 'usual'> & {
    halfWidth: number;
  },
): Measure => ({
  ...entry,
  kind: 'measure',
  short: entry.name,
  subject: 'station',
  slots: [],
  defaultResolution: { halfWidth: entry.halfWidth, source: 'made up for the test' },
  reference: { low: entry.usual[0], high: entry.usual[1], source: 'made up for the test' },
});

export const gauge = measure({
  id: 'gauge',
  name: 'Gauge',
  dimension: 'crossLength',
  bareUnit: { us: 'in', metric: 'mm' },
  possible: [1270, 1676.4],
  usual: [1422.4, 1485.9],
  halfWidth: 25.4 / 32,
});

export const crosslevel = measure({
  id: 'crosslevel',
  name: 'Crosslevel',
  dimension: 'crossLength',
  bareUnit: { us: 'in', metric: 'mm' },
  possible: [-304.8, 304.8],
  usual: [-76.2, 177.8],
  halfWidth: 25.4 / 16,
});

export const station = measure({
  id: 'station',
  name: 'Distance from the POD',
  dimension: 'alongTrack',
  bareUnit: { us: 'ft', metric: 'm' },
  possible: [-6096, 6096],
  usual: [-609.6, 609.6],
  halfWidth: 0.015,
});

export const curvature = measure({
  id: 'curvature',
  name: 'Curvature',
  dimension: 'curvature',
  bareUnit: { us: '°curve', metric: 'm radius' },
  possible: [-1 / 30, 1 / 30],
  usual: [-1 / 90, 1 / 90],
  halfWidth: 1e-5,
});

export const flangeAngle = measure({
  id: 'flangeAngle',
  name: 'Flange angle',
  dimension: 'angle',
  bareUnit: { us: '°', metric: '°' },
  possible: [0, 1.6],
  usual: [1, 1.4],
  halfWidth: 0.01,
});

export const weight = measure({
  id: 'weight',
  name: 'Weight',
  dimension: 'mass',
  bareUnit: { us: 'lb', metric: 't' },
  possible: [2_268, 544_310],
  usual: [13_608, 199_580],
  halfWidth: 450,
});

export const speed = measure({
  id: 'speed',
  name: 'Speed',
  dimension: 'speed',
  bareUnit: { us: 'mph', metric: 'km/h' },
  possible: [0, 60],
  usual: [0, 40],
  halfWidth: 0.2,
});

export const temperature = measure({
  id: 'temperature',
  name: 'Rail temperature',
  dimension: 'temperature',
  bareUnit: { us: '°F', metric: '°C' },
  possible: [-50, 80],
  usual: [-30, 65],
  halfWidth: 0.6,
});

export const pressure = measure({
  id: 'pressure',
  name: 'Brake pipe pressure',
  dimension: 'pressure',
  bareUnit: { us: 'psi', metric: 'kPa' },
  possible: [0, 1000],
  usual: [0, 800],
  halfWidth: 3.4,
});

export const friction = measure({
  id: 'friction',
  name: 'Friction',
  dimension: 'ratio',
  bareUnit: { us: '1', metric: '1' },
  possible: [0, 1],
  usual: [0.05, 0.7],
  halfWidth: 0.05,
});

export const MEASURES: readonly Measure[] = [
  gauge,
  crosslevel,
  station,
  curvature,
  flangeAngle,
  weight,
  speed,
  temperature,
  pressure,
  friction,
];
