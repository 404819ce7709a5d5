import { DIMENSIONS, type Dimension, type Unit } from '../readings/unit';

/** One thing an event recorder writes, sample after sample. */
export type RecorderChannel = {
  readonly id: string;
  readonly label: string;
  readonly dimension: Dimension;
  /** What a file may give it in; the first is taken when the file does not say, per unit system. */
  readonly units: readonly Unit[];
  readonly bareUnit: { readonly us: Unit; readonly metric: Unit };
  /** What is possible, in the dimension's canonical unit; a sample outside is refused. */
  readonly possible: readonly [number, number];
  readonly help?: string;
};

const channel = (
  id: string,
  label: string,
  dimension: Dimension,
  bareUnit: RecorderChannel['bareUnit'],
  possible: readonly [number, number],
  help?: string,
): RecorderChannel => ({
  id,
  label,
  dimension,
  units: DIMENSIONS[dimension].units,
  bareUnit,
  possible,
  ...(help === undefined ? {} : { help }),
});

const both = (unit: Unit): RecorderChannel['bareUnit'] => ({ us: unit, metric: unit });
const PRESSURE = { us: 'psi', metric: 'kPa' } as const;
/** Air brake pressures stay below about 150 psi; engineering judgement, to catch a wrong column. */
const PRESSURE_POSSIBLE = [0, 1100] as const;

/**
 * The channels a run can hold. Time is what the others are read against.
 * Which data a recorder must keep: 49 CFR 229.135(b) (speed, direction, time, distance, throttle,
 * automatic brake, independent brake, dynamic brake, …). Possible ranges are engineering judgement.
 */
export const RECORDER_CHANNELS: readonly RecorderChannel[] = [
  channel(
    'time',
    'Time',
    'time',
    both('s'),
    [-1e10, 1e10],
    'Seconds from any start, such as 0 at the first row.',
  ),
  channel('distance', 'Distance', 'alongTrack', { us: 'ft', metric: 'm' }, [-2_000_000, 2_000_000]),
  channel('speed', 'Speed', 'speed', { us: 'mph', metric: 'km/h' }, [0, 140]),
  channel('throttle', 'Throttle notch', 'count', both('1'), [0, 8], '0 for idle, 1 to 8.'),
  channel('dynamicBrakeNotch', 'Dynamic brake notch', 'count', both('1'), [0, 8], '0 for released.'),
  channel('dynamicBrakeShare', 'Dynamic brake, share of full', 'ratio', both('%'), [0, 1]),
  channel('tractiveEffort', 'Tractive effort', 'force', { us: 'kip', metric: 'kN' }, [-2000, 2000]),
  channel('brakePipe', 'Brake pipe pressure', 'pressure', PRESSURE, PRESSURE_POSSIBLE),
  channel('brakeCylinder', 'Brake cylinder pressure', 'pressure', PRESSURE, PRESSURE_POSSIBLE),
  channel('independentBrake', 'Independent brake pressure', 'pressure', PRESSURE, PRESSURE_POSSIBLE),
  channel('endOfTrainPressure', 'Brake pipe at the rear', 'pressure', PRESSURE, PRESSURE_POSSIBLE),
  channel('emergency', 'Emergency application', 'count', both('1'), [0, 1], '1 when applied, 0 when not.'),
];

export const recorderChannel = (id: string): RecorderChannel | undefined =>
  RECORDER_CHANNELS.find((entry) => entry.id === id);
