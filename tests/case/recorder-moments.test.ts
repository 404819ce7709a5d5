import { describe, expect, it } from 'vitest';
import { finalStop, firstEmergency, sampleBackFromStop, type RunSamples } from '~/lib/case/recorder-moments';

/** Ten seconds at 10 m/s, then braking at 1 m/s² to a stop at 20 s, standing to 25 s. */
const time = Float64Array.from({ length: 26 }, (_, i) => i);
const speed = time.map((t) => (t <= 10 ? 10 : Math.max(0, 20 - t)));
const distance = time.map((t) =>
  t <= 10 ? 10 * t : 100 + 10 * Math.min(t - 10, 10) - Math.min(t - 10, 10) ** 2 / 2,
);
const emergency = time.map((t) => (t >= 9 ? 1 : 0));

const backOf = (samples: RunSamples, distanceM: number): number => {
  const found = sampleBackFromStop(samples, distanceM);
  if (!found.ok) throw new Error(found.message);
  return found.value;
};

describe('moments of a recorder run', () => {
  it('finds the first emergency sample and the final stop', () => {
    const samples = { time, speed, emergency };
    expect(firstEmergency(samples)).toBe(9);
    expect(finalStop(samples)).toBe(20);
    expect(firstEmergency({ time, speed })).toBeNull();
    expect(finalStop({ time, speed: speed.map(() => 5) })).toBeNull();
  });

  it('goes back from the stop by the recorded distance', () => {
    const samples = { time, speed, distance };
    expect(backOf(samples, 50)).toBe(10);
    expect(backOf(samples, 150)).toBe(0);
    expect(backOf(samples, 0.5)).toBe(19);
  });

  it('goes back by the speed where no distance was recorded; the trapezoidal rule is exact here', () => {
    for (const metres of [0.5, 50, 90, 150]) {
      expect(backOf({ time, speed }, metres)).toBe(backOf({ time, speed, distance }, metres));
    }
  });

  it('bridges gaps in the speed', () => {
    const gappy = speed.slice();
    gappy[4] = NaN;
    gappy[5] = NaN;
    expect(backOf({ time, speed: gappy }, 130)).toBe(2);
  });

  it('says what is missing or too far', () => {
    const words = (samples: RunSamples, distanceM: number): string => {
      const found = sampleBackFromStop(samples, distanceM);
      return found.ok ? '' : found.message;
    };
    expect(words({ time, speed }, 151)).toContain('492');
    expect(words({ time, speed }, 0)).toContain('above zero');
    expect(words({ time, speed: speed.map(() => 5) }, 10)).toContain('does not come to rest');
    expect(words({ speed }, 10)).toContain('neither');
  });
});
