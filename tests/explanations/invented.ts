import type { CaseRecord } from '~/lib/case/record';
import { buildContext } from '~/lib/findings/context';
import { keyInputsOf } from '~/lib/findings/key-inputs';
import { gather } from '~/lib/explanations/gather';
import { TABLES } from '~/lib/explanations/judgement-table';
import { marginSampler } from '~/lib/explanations/margin-sampler';
import type { WitnessRecord } from '~/lib/explanations/witness';
import {
  buildRecord,
  range,
  stationSheet,
  type ReadingSpec,
  type RecordSpec,
} from '../findings/record-builder';

/** Observations by quantity: a state, or the share examined of something not found. */
export const observations = (states: Readonly<Record<string, string | number>>): readonly ReadingSpec[] =>
  Object.entries(states).map(([quantity, state]) =>
    typeof state === 'number'
      ? { quantity, state: 'notFound', examined: state }
      : { quantity, state, examined: null },
  );

const undisturbed = { disturbance: 'undisturbed' };

/** An invented empty hopper that climbed the high (right) rail of a sharp left-hand curve. */
export const CLIMB: RecordSpec = {
  fields: { alignment: 'curveLeft' },
  readings: [
    { quantity: 'speedAtPod', entered: '17 mph' },
    ...observations({
      obsFlangeAcrossHead: 'seen',
      obsMateInside: 'seen',
      obsRunningOnWeb: 1,
      obsRimMarkInside: 0.9,
      obsFirstMarkAtPoint: 1,
      obsGaugeSpikesLifted: 0.8,
      obsDryGaugeFace: 'seen',
      obsTruckStiff: 'seen',
      obsTiesClustered: 0.9,
    }),
  ],
  vehicle: [
    {
      id: 'car',
      fields: { position: 17, mark: 'XYZ', number: '1', type: 'coveredHopper', firstDerailed: true },
      readings: [
        { quantity: 'grossWeight', entered: '63000' },
        { quantity: 'axleCount', entered: '4' },
      ],
    },
  ],
  wheelset: [
    {
      id: 'axle1',
      fields: { vehicle: 'car', axle: 1, firstDerailed: true, ...undisturbed },
      readings: [
        { quantity: 'flangeAngle', slot: 'right', entered: '68' },
        { quantity: 'flangeThickness', slot: 'right', entered: '1 1/16' },
        { quantity: 'rimWidth', slot: 'left', entered: '5 11/16' },
        ...['0', '120', '240'].map((slot) => ({ quantity: 'backToBack', slot, entered: '53 1/16' })),
      ],
    },
  ],
  rail: [
    {
      id: 'high',
      fields: { rail: 'right', where: '-1', section: '115RE', ...undisturbed },
      readings: [
        { quantity: 'gaugeFaceAngle', entered: '64' },
        { quantity: 'gaugeFaceFriction', entered: '0.5' },
        { quantity: 'gaugeFaceCondition', state: 'dryRough' },
      ],
    },
  ],
  station: stationSheet(range(-10, 0), {
    gauge: (step) => (step % 2 === 0 ? '56 3/4' : '56 5/8'),
    crosslevel: (step) => (step === -2 ? '2' : '2 7/8'),
    midOrdinate62: () => '8',
    defectiveTies: () => '4',
  }),
};

export const climbRecord = (changes: Partial<CaseRecord> = {}): CaseRecord => ({
  ...buildRecord(CLIMB),
  ...changes,
});

export function gathered(record: CaseRecord, seed = 1): ReadonlyMap<string, WitnessRecord> {
  const context = buildContext(record, { seed });
  return gather(TABLES.facts, { context, keyInputs: keyInputsOf(context), sample: marginSampler(seed) });
}
