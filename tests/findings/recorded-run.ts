import type { RunSamples } from '~/lib/case/recorder-moments';
import type { RecorderRun } from '~/lib/case/record';

/** A run on vehicle v1: 100 samples a second apart, in emergency from the 90th on. */
export const run: RecorderRun = {
  id: 'run-1',
  name: 'lead unit',
  vehicleId: 'v1',
  fileName: 'run.csv',
  sha256: 'a'.repeat(64),
  rows: 100,
  channels: {},
  clockOffsetS: 0,
  note: '',
  removed: null,
  createdAt: '',
};

/** One for each sample. */
export const seconds = Float64Array.from({ length: 100 }, (_, i) => i);

/** At 8 m/s in notch 6. */
export const pulling: RunSamples = {
  time: seconds,
  speed: seconds.map(() => 8),
  throttle: seconds.map(() => 6),
  dynamicBrakeNotch: seconds.map(() => 0),
  emergency: seconds.map((t) => (t >= 90 ? 1 : 0)),
};
