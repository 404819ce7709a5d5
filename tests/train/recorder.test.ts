import { describe, expect, it } from 'vitest';
import type { RecorderRun } from '~/lib/case/record';
import type { RunSamples } from '~/lib/case/recorder-moments';
import { RECORDED_SPEED_U, recorderAtPod } from '~/lib/findings/recorder-at-pod';
import { accelerationAt, accelerations, slopeOver } from '~/lib/train/acceleration';
import { clockFaults } from '~/lib/train/clock-faults';
import { placePod } from '~/lib/train/pod-placing';
import { slackEvents } from '~/lib/train/slack-events';
import { buildRecord, type RecordSpec } from '../findings/record-builder';

const seconds = (count: number): Float64Array => Float64Array.from({ length: count }, (_, i) => i);

/** 100 s at 10 m/s, then braking at 0.5 m/s² to a stop at 120 s; emergency on from 98 s. */
const time = seconds(140);
const stopping: RunSamples = {
  time,
  speed: time.map((t) => (t <= 100 ? 10 : Math.max(0, 10 - (t - 100) / 2))),
  emergency: time.map((t) => (t >= 98 ? 1 : 0)),
  throttle: time.map((t) => (t < 60 ? 5 : 0)),
  dynamicBrakeNotch: time.map((t) => (t >= 65 && t < 98 ? 4 : 0)),
  brakePipe: time.map((t) => (t >= 98 ? 0 : 620)),
};

describe('clockFaults', () => {
  it('names gaps and backward steps and mends nothing', () => {
    const clock = [0, 1, 2, 3, 9, 10, 11, 8, 9, 10];
    expect(clockFaults(clock)).toEqual({ usualStepS: 1, gaps: [[3, 9]], backward: [7] });
    expect(clockFaults(seconds(50))).toEqual({ usualStepS: 1, gaps: [], backward: [] });
  });
});

describe('acceleration from speed', () => {
  it('is the slope of a straight line, with the resolution as its uncertainty', () => {
    const speed = time.map((t) => 3 + 0.25 * t);
    const { value, u } = accelerationAt(time, speed, 50, 0.1);
    expect(value).toBeCloseTo(0.25, 12);
    // Seven samples: Σ(t − t̄)² = 28.
    expect(u).toBeCloseTo(0.1 / Math.sqrt(28), 12);
  });

  it('has no answer over a gap of values, a backward clock or too few samples', () => {
    const holed = time.map((t) => (t === 50 ? NaN : 10));
    expect(accelerationAt(time, holed, 51, 0.1).value).toBeNaN();
    expect(slopeOver([0, 1, 2], [1, 2, 3], 0, 3, 0.1).value).toBeNaN();
    expect(slopeOver([0, 1, 0.5, 2], [1, 2, 3, 4], 0, 4, 0.1).value).toBeNaN();
    expect(accelerations(time, holed, 0.1)[90]).toBeCloseTo(0, 12);
  });
});

describe('slackEvents', () => {
  it('finds the bend where braking begins and the change from power to dynamic brake', () => {
    const events = slackEvents(stopping, 0.06);
    expect(events.map(({ kind }) => kind)).toContain('handling');
    expect(events.find(({ kind }) => kind === 'handling')?.timeS).toBe(65);
    const bend = events.find(({ kind }) => kind === 'speedBend');
    expect(bend?.timeS).toBe(100);
    expect(bend?.change).toBeCloseTo(-0.5, 6);
  });

  it('makes no event of the half-mile steps of a recorder', () => {
    const step = 0.2235;
    const speed = time.map((t) => Math.round((10 + 0.02 * t) / step) * step);
    expect(slackEvents({ time, speed }, step / 2 / Math.sqrt(3))).toEqual([]);
  });
});

describe('placePod', () => {
  const nothing = { sample: null, backM: null, alongTrainM: null };
  const place = (choice: Partial<Parameters<typeof placePod>[1]>) =>
    placePod(stopping, { ...nothing, ...choice });

  it('takes the chosen sample, else the distance back from the stop, else the emergency', () => {
    expect(place({ sample: 81, backM: 100 })).toMatchObject({ value: { index: 80, by: 'sample' } });
    // 100 m braking, so 150 m back is 5 s before braking began.
    expect(place({ backM: 150 })).toMatchObject({ value: { index: 95, by: 'backFromStop' } });
    expect(place({ backM: 200, alongTrainM: 50 })).toMatchObject({ value: { index: 95, alongTrain: true } });
    expect(place({})).toMatchObject({ value: { index: 98, by: 'emergency' } });
    expect(placePod({ time, speed: stopping.speed! }, nothing)).toEqual({ ok: true, value: null });
  });

  it('says what to enter when a choice does not fit', () => {
    for (const choice of [{ sample: 0 }, { sample: 141 }, { backM: 5000 }, { backM: 40, alongTrainM: 50 }]) {
      const refused = place(choice);
      expect(refused.ok).toBe(false);
      if (!refused.ok) expect(refused.message).toMatch(/[Ee]nter/);
    }
  });
});

describe('recorderAtPod', () => {
  const run: RecorderRun = {
    id: 'run-1',
    name: 'lead unit',
    vehicleId: 'loco',
    fileName: 'run.csv',
    sha256: 'a'.repeat(64),
    rows: 140,
    channels: {},
    clockOffsetS: 0,
    note: '',
    removed: null,
    createdAt: '',
  };
  const length = { quantity: 'lengthOverPullingFaces', value: 20 };
  const train = (readings: RecordSpec['readings']) =>
    buildRecord({
      readings: readings ?? [],
      vehicle: [
        { id: 'loco', fields: { position: 1 }, readings: [length] },
        { id: 'car', fields: { position: 2 }, readings: [length] },
        { id: 'first', fields: { position: 3, firstDerailed: true }, readings: [length] },
      ],
    });
  const at = (readings: RecordSpec['readings']) =>
    recorderAtPod(train(readings), run, stopping, RECORDED_SPEED_U);

  it('counts back the train between the recording vehicle and the first derailed one', () => {
    const found = at([{ quantity: 'podBackFromStop', value: 104 }]);
    // 104 m − 40 m = 64 m back, where 64 = v²/(2·0.5): v = 8 m/s at 104 s.
    expect(found).toMatchObject({ index: 104, by: 'backFromStop' });
    expect(found?.speedMs).toBeCloseTo(8, 6);
    expect(found?.placedBy).toEqual([
      'case-1.podBackFromStop',
      'loco.lengthOverPullingFaces',
      'car.lengthOverPullingFaces',
    ]);
    // Each metre of doubt in the place is a/v = 0.0625 m/s of speed.
    expect(found?.uMs).toBeGreaterThan(RECORDED_SPEED_U);
    expect(found?.acceleration.value).toBeCloseTo(-0.5, 6);
  });

  it('falls back on the emergency sample and says that the entry did not fit', () => {
    const found = at([{ quantity: 'podBackFromStop', value: 9000 }]);
    expect(found?.by).toBe('emergency');
    expect(found?.placedBy).toEqual([]);
    expect(found?.remark).toMatch(/could not be placed as entered/);
    // Handling is read before the pipe parted: the brakes were off.
    expect(found?.brakePipeReductionKpa).toBe(0);
    expect(found?.slack.map(({ kind }) => kind)).toContain('handling');
  });

  it('takes the sample somebody chose before anything else', () => {
    const found = at([
      { quantity: 'podBackFromStop', value: 104 },
      { quantity: 'podSample', value: 91 },
    ]);
    expect(found).toMatchObject({ index: 90, by: 'sample', dynamicBrakeShare: 0.5, speedMs: 10 });
  });
});
