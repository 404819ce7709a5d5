import type { CaseRecord } from '~/lib/case/record';
import type { Trace } from '~/lib/case/trace';
import type { Outline } from '~/lib/outline/outline';
import type { UnitSystem } from '~/lib/readings/unit';
import { buildRecord } from '../findings/record-builder';
import { worn } from '../rail/worn';
import { hollowWheel } from '../wheel/wheels';

const pairs = ({ xMm, yMm }: Outline): Float64Array =>
  Float64Array.from({ length: 2 * xMm.length }, (_, i) => (i % 2 === 0 ? xMm : yMm)[i >> 1]!);

/** An invented outline of a wheelset, a rail or a point of a case. */
export const traceOf = (
  id: string,
  of: Pick<Trace, 'shape' | 'subject' | 'side'>,
  outline: Outline,
  more: Partial<Trace> = {},
): Trace => ({
  id,
  order: 0,
  behindMm: null,
  ...of,
  sha256: id.charCodeAt(0).toString(16).repeat(32),
  fileName: `${id}.csv`,
  making: { by: 'file', unit: 'mm', columns: [0, 1], flipped: { x: false, y: false } },
  pointsMm: pairs(outline),
  uncertainty: { acrossMm: 0.1, scale: 0, because: ['Across the line: laser profilometer.'] },
  mirrored: false,
  hand: null,
  distanceRunKm: null,
  instrumentId: null,
  personId: null,
  takenAt: '2031-04-08T10:00',
  disturbance: 'undisturbed',
  note: '',
  removed: null,
  createdAt: '2031-04-08T12:00:00.000Z',
  ...more,
});

const wheel = (side: Trace['side'], id = 'wheelset-1') =>
  ({ shape: 'wheel', subject: { kind: 'wheelset', id }, side }) as const;
const rail = (side: Trace['side']) =>
  ({ shape: 'rail', subject: { kind: 'rail', id: `rail-${side}` }, side }) as const;

const TRACES: readonly Trace[] = [
  traceOf('a-earlier', wheel('left'), hollowWheel(0.6), {
    takenAt: '2030-02-02T08:00',
    distanceRunKm: 60_000,
  }),
  traceOf('b-left', wheel('left'), hollowWheel(3.2), { distanceRunKm: 190_000 }),
  traceOf('c-right', wheel('right'), hollowWheel(2.1)),
  traceOf(
    'd-left-rail',
    rail('left'),
    worn({ sectionId: '136RE', topMm: 2, faceDeg: 82, faceMm: 2, atDepthMm: 16 }, 60),
  ),
  traceOf(
    'e-right-rail',
    rail('right'),
    worn({ sectionId: '136RE', topMm: 1, faceDeg: 84, faceMm: 1, atDepthMm: 16 }, 60),
  ),
  traceOf('f-other', wheel('left', 'wheelset-2'), hollowWheel(1)),
];

/** An invented case with both wheels of the first derailed axle and both rails traced. */
export const tracedRecord = (units: UnitSystem, traces: readonly Trace[] = TRACES): CaseRecord =>
  buildRecord({
    units,
    fields: { number: 'T-9', title: 'Outlines of wheels and rails', alignment: 'curveLeft', trackClass: '2' },
    vehicle: [
      {
        id: 'vehicle-1',
        fields: { position: 4, mark: 'QVR', number: '31', type: 'coveredHopper', firstDerailed: true },
      },
    ],
    wheelset: [
      {
        id: 'wheelset-1',
        fields: { vehicle: 'vehicle-1', axle: 1, firstDerailed: true, disturbance: 'undisturbed' },
        readings: ['0', '120', '240'].map((slot) => ({
          quantity: 'backToBack',
          slot,
          value: 1349.4,
          disturbance: 'undisturbed' as const,
        })),
      },
      { id: 'wheelset-2', fields: { vehicle: 'vehicle-1', axle: 2, disturbance: 'undisturbed' } },
    ],
    rail: (['left', 'right'] as const).map((side) => ({
      id: `rail-${side}`,
      fields: { rail: side, where: 'POD', section: '136RE', disturbance: 'undisturbed' },
    })),
    station: [
      {
        id: 'station-0',
        fields: { name: '0', disturbance: 'undisturbed' },
        readings: [
          { quantity: 'stationPosition', value: 0 },
          { quantity: 'gauge', value: 1444, disturbance: 'undisturbed' as const },
        ],
      },
    ],
    changes: { traces },
  });
