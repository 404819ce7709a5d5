import type { CaseRecord } from '~/lib/case/record';
import { traceOf } from '../report/traced-record';
import { buildRecord, type ReadingSpec } from '../findings/record-builder';
import { hollowWheel } from '../wheel/wheels';

const UNDISTURBED = { disturbance: 'undisturbed' } as const;

export const TIP: readonly ReadingSpec[] = [
  { quantity: 'pointGap', entered: '1/16' },
  { quantity: 'tipThickness', entered: '1/8' },
  { quantity: 'tipDepth', entered: '3/4' },
];

/** A tip too low for any flange. */
export const LOW_TIP: readonly ReadingSpec[] = [
  { quantity: 'pointGap', entered: '0' },
  { quantity: 'tipThickness', entered: '1/16' },
  { quantity: 'tipDepth', entered: '1 3/4' },
];

const behind = (slot: string, gap: string, thickness: string, depth: string): readonly ReadingSpec[] => [
  { quantity: 'gapBehind', slot, entered: gap },
  { quantity: 'thicknessBehind', slot, entered: thickness },
  { quantity: 'depthBehind', slot, entered: depth },
];

export const ALONG: readonly ReadingSpec[] = [
  ...behind('ft1', '0', '5/16', '1/2'),
  ...behind('ft3', '0', '3/4', '-1/16'),
  ...behind('ft5', '0', '1 3/4', '-1/4'),
];

export const CHIP: readonly ReadingSpec[] = [
  { quantity: 'chipLength', entered: '6' },
  { quantity: 'chipDepth', entered: '1/4' },
];

type Wanted = {
  readonly readings: readonly ReadingSpec[];
  readonly side?: 'left' | 'right';
  readonly traced?: boolean;
  readonly units?: 'us' | 'metric';
  readonly movement?: 'facing' | 'trailing';
};

/** A case with one turnout `x1` and the wheelset that met it, from readings or from an outline of the wheel. */
export const pointRecord = ({
  readings,
  side = 'right',
  traced = false,
  units = 'us',
  movement = 'facing',
}: Wanted): CaseRecord =>
  buildRecord({
    fields: { trackClass: '2', alignment: 'tangent' },
    units,
    vehicle: [{ id: 'v1', fields: { mark: 'ABC', number: '1', position: 1, firstDerailed: true } }],
    wheelset: [
      {
        id: 'w1',
        fields: { vehicle: 'v1', axle: 1, firstDerailed: true, ...UNDISTURBED },
        readings: traced
          ? []
          : [
              { quantity: 'flangeHeight', slot: side, value: 28.575 },
              { quantity: 'flangeAngle', slot: side, entered: '75' },
            ],
      },
    ],
    rail: [{ id: 'r1', fields: { rail: side, where: 'POD', section: '136RE', ...UNDISTURBED } }],
    turnout: [
      { id: 'x1', fields: { name: 'East switch', movement, pointRead: side, ...UNDISTURBED }, readings },
    ],
    changes: {
      traces: traced
        ? [traceOf('t1', { shape: 'wheel', subject: { kind: 'wheelset', id: 'w1' }, side }, hollowWheel(3))]
        : [],
    },
  });
