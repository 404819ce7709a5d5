import type { Trace } from '~/lib/case/trace';

/** An outline of a left wheel with three points, for tests that look at what is said of it. */
export const inventedTrace = (given: Partial<Trace> = {}): Trace => ({
  id: 'trace-1',
  order: 0,
  shape: 'wheel',
  subject: { kind: 'wheelset', id: 'w' },
  side: 'left',
  behindMm: null,
  sha256: 'a'.repeat(64),
  fileName: 'left.csv',
  making: { by: 'file', unit: 'mm', columns: [0, 1], flipped: { x: false, y: false } },
  pointsMm: Float64Array.of(0, 0, 20, 28, 70, 0),
  uncertainty: { acrossMm: 0.1, scale: 0, because: ['As the profilometer says.'] },
  mirrored: false,
  hand: null,
  distanceRunKm: null,
  instrumentId: null,
  personId: null,
  takenAt: null,
  disturbance: 'undisturbed',
  note: '',
  removed: null,
  createdAt: '2026-03-01T12:00:00.000Z',
  ...given,
});
