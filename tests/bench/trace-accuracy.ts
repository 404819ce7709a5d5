import { traced, within } from '~/tests/tracing/whole-path';
import type { Measurement } from './measurement';

const SCENES = 100;

/**
 * Photos of drawn wheels made by arithmetic, each traced from the pixels to the features: the share
 * whose flange height, flange thickness, flange angle and hollow all come within tolerance.
 */
export function traceAccuracy(): readonly Measurement[] {
  const outcomes = Array.from({ length: SCENES }, (_, i) => traced(i + 1));
  const missed = outcomes.filter((outcome) => !within(outcome));
  return [
    {
      name: 'trace-accuracy',
      value: 1 - missed.length / SCENES,
      floor: 0.95,
      atLeast: true,
      unit: `of ${SCENES} scenes within tolerance`,
      parts: missed.map(({ seed, why }) => `scene ${seed}${why === '' ? '' : `: ${why}`}`),
    },
  ];
}
