import fc from 'fast-check';
import type { CaseRecord, EntityKind } from '~/lib/case/record';
import type { FindingOptions } from '~/lib/findings/context';
import type { RecorderAtPod } from '~/lib/findings/recorder-at-pod';
import { fromCanonical } from '~/lib/readings/convert';
import { GROUPS } from '~/lib/readings/quantities';
import type { Quantity } from '~/lib/readings/quantity';
import { buildRecord, type EntitySpec, type ReadingSpec } from './record-builder';

/** A case in which nearly everything was read, and what its recorder says of the POD. */
export type WholeCase = { readonly record: CaseRecord; readonly options: FindingOptions };

/** Share of the readings somebody took. */
const TAKEN = 0.92;

/** Read in every case: without one of these a whole kind of finding is not reached. */
const ALWAYS = new Set([
  'pointGap',
  'tipThickness',
  'tipDepth',
  'flangeHeight',
  'flangeAngle',
  'flangeThickness',
  'backToBack',
  'chordLength',
  'chordHeight',
  'gaugeFaceFriction',
  'railTemperature',
  'railNeutralTemperature',
  'gradeAtPod',
]);

/** One reading in every so many parts of the range in which the quantity is usual. */
const PARTS = 1000;

/** Written finer than any instrument reads, so that the other unit is known no better and no worse. */
const written = (value: number): string => value.toFixed(3);

function readingOf(quantity: Quantity, slot: string): fc.Arbitrary<ReadingSpec> {
  const shared = { quantity: quantity.id, slot, disturbance: 'undisturbed' as const };
  switch (quantity.kind) {
    case 'measure': {
      const { low, high } = quantity.reference;
      const unit = quantity.bareUnit.us;
      return fc.nat(PARTS).map((part) => {
        const value = fromCanonical(low + (part / PARTS) * (high - low), unit, quantity.dimension);
        const name = unit === '1' ? '' : unit === '°curve' ? '°' : unit;
        return { ...shared, entered: `${written(value)} ${name}`.trim() };
      });
    }
    case 'count':
      return fc
        .integer({ min: quantity.possible[0], max: Math.min(quantity.possible[1], 20) })
        .map((count) => ({ ...shared, entered: String(count) }));
    case 'goNoGo':
      return fc.constantFrom('pass', 'fail').map((state) => ({ ...shared, state }));
    case 'choice':
      return fc.constantFrom(...quantity.choices.map(({ id }) => id)).map((state) => ({ ...shared, state }));
    case 'observation':
      return fc.constantFrom('seen', 'notFound', 'couldNotTell').map((state) => ({ ...shared, state }));
  }
}

/** Every quantity of a kind, now and then one left out; `fixed` are read as given. */
function readingsFor(kind: string, fixed: readonly ReadingSpec[]): fc.Arbitrary<readonly ReadingSpec[]> {
  const given = new Set(fixed.map(({ quantity }) => quantity));
  const all = GROUPS.filter(({ subject }) => subject === kind)
    .flatMap(({ quantities }) => quantities)
    .filter(({ id }) => !given.has(id))
    .flatMap((quantity) =>
      (quantity.slots.length === 0 ? [''] : quantity.slots.map(({ id }) => id)).map((slot) =>
        fc.tuple(readingOf(quantity, slot), fc.integer({ min: 1, max: 100 })),
      ),
    );
  return fc
    .tuple(...all)
    .map((each) => [
      ...fixed,
      ...each.flatMap(([reading, luck]) =>
        luck <= TAKEN * 100 || ALWAYS.has(reading.quantity) ? [reading] : [],
      ),
    ]);
}

const withReadings = (kind: EntityKind, specs: readonly EntitySpec[]): fc.Arbitrary<readonly EntitySpec[]> =>
  fc.tuple(
    ...specs.map((spec) => readingsFor(kind, spec.readings ?? []).map((readings) => ({ ...spec, readings }))),
  );

const UNDISTURBED = { disturbance: 'undisturbed' } as const;
const VEHICLES = 6;
const FIRST = 4;

/** What findings of the whole train need of every vehicle. */
const vehicle = (position: number): EntitySpec => ({
  id: `v${position}`,
  fields: {
    position,
    mark: 'TST',
    number: String(100 + position),
    type: position === 1 ? 'locomotive' : position === 3 ? 'intermodal' : 'gondola',
    load: position === FIRST ? 'empty' : 'loaded',
    firstDerailed: position === FIRST,
    derailed: position >= FIRST,
  },
  readings: [
    { quantity: 'grossWeight', entered: position === FIRST ? '62000 lb' : `${250_000 + position} lb` },
    { quantity: 'lengthOverPullingFaces', entered: position === 3 ? '94 ft' : `${48 + position} ft` },
    { quantity: 'truckCentres', entered: position === 3 ? '66 ft' : `${36 + position} ft` },
    { quantity: 'axleCount', entered: '4' },
    ...(position === 1
      ? [
          { quantity: 'tractiveEffortRated', entered: '97 kip' },
          { quantity: 'tractiveEffortSpeed', entered: '11 mph' },
          { quantity: 'dynamicBrakeFull', entered: '80 kip' },
        ]
      : []),
  ],
});

/** Stations of a sheet: the last three lie past the POD, and one of them was disturbed. */
const station = (
  index: number,
  count: number,
  spacingFt: number,
  note: { joint: string | null },
): EntitySpec => ({
  id: `s${index}`,
  fields: {
    name: String(index - count + 4),
    disturbance: index === count - 2 ? 'disturbed' : 'undisturbed',
    joint: note.joint,
  },
  readings: [{ quantity: 'stationPosition', entered: `${written((index - count + 4) * spacingFt)} ft` }],
});

const recorder: fc.Arbitrary<RecorderAtPod> = fc
  .record({
    speedMs: fc.integer({ min: 40, max: 200 }).map((each) => each / 10),
    throttle: fc.integer({ min: 0, max: 8 }),
    dynamicBrakeShare: fc.constantFrom(0, 0, 0.5, 1),
    acceleration: fc.integer({ min: -30, max: 30 }).map((each) => ({ value: each / 100, u: 0.02 })),
    brakePipeReductionKpa: fc.constantFrom(0, 0, 70, 150),
  })
  .map((read) => ({
    ...read,
    runId: 'run-1',
    index: 80,
    timeS: 80,
    by: 'emergency',
    placedBy: [],
    remark: 'At the first emergency sample.',
    uMs: 0.13,
    tractiveEffortKn: NaN,
    brakeCylinderKpa: NaN,
    brakePipeKpa: 620 - read.brakePipeReductionKpa,
    emergency: true,
    slack: [],
  }));

const ALIGNMENTS = ['tangent', 'curveLeft', 'curveRight'] as const;

/** A case on tangent or on a curve of either hand, read in inches, with a train, a turnout, wheels and rails. */
export const wholeCase: fc.Arbitrary<WholeCase> = fc
  .record({
    alignment: fc.constantFrom(...ALIGNMENTS),
    trackClass: fc.constantFrom('1', '2', '3', '4', '5'),
    atPod: fc.option(recorder, { freq: 8 }),
    sheet: fc
      .record({
        joints: fc.array(fc.constantFrom('left', 'right', 'both', null), { minLength: 8, maxLength: 20 }),
        spacingFt: fc.constantFrom(15.5, 15.5, 10, 19.5),
      })
      .chain(({ joints, spacingFt }) =>
        withReadings(
          'station',
          joints.map((joint, index) => station(index, joints.length, spacingFt, { joint })),
        ),
      ),
    case: readingsFor('case', []),
    train: withReadings(
      'vehicle',
      Array.from({ length: VEHICLES }, (_, i) => vehicle(i + 1)),
    ),
    line: withReadings('lineStretch', [
      { id: 'line-1', fields: { name: 'foot of the grade', hand: 'left' } },
      { id: 'line-2', fields: { name: 'curve 12' } },
    ]),
    mark: withReadings('mark', [
      { id: 'm1', fields: { type: 'flangeOnHead', rail: 'right', isPod: true, ...UNDISTURBED } },
      { id: 'm2', fields: { type: 'dropGaugeSide', rail: 'left', ...UNDISTURBED } },
    ]),
    wheelset: withReadings('wheelset', [
      { id: 'w1', fields: { vehicle: `v${FIRST}`, axle: 1, firstDerailed: true, ...UNDISTURBED } },
      { id: 'w2', fields: { vehicle: `v${FIRST}`, axle: 2, ...UNDISTURBED } },
    ]),
    truck: withReadings('truck', [
      { id: 't1', fields: { vehicle: `v${FIRST}`, end: 'leading', ...UNDISTURBED } },
    ]),
    rail: withReadings('rail', [
      { id: 'r1', fields: { rail: 'right', where: 'POD', section: '136RE', ...UNDISTURBED } },
      { id: 'r2', fields: { rail: 'left', where: 'Station -2', section: '115RE', ...UNDISTURBED } },
      { id: 'r3', fields: { rail: 'right', where: '-46.5 ft', section: '136RE', ...UNDISTURBED } },
      { id: 'r4', fields: { rail: 'left', where: '40 ft before the POD', section: '115RE', ...UNDISTURBED } },
    ]),
    turnout: withReadings('turnout', [
      {
        id: 'x1',
        fields: { name: 'East', hand: 'left', movement: 'facing', pointRead: 'right', ...UNDISTURBED },
      },
    ]),
  })
  .map(({ alignment, trackClass, atPod, sheet, case: readings, line, train, ...kinds }): WholeCase => {
    const record = buildRecord({
      fields: { alignment, trackClass },
      readings: readings.filter(({ quantity }) => quantity !== 'sheetFacing'),
      station: sheet,
      vehicle: train,
      lineStretch: line,
      ...kinds,
    });
    return {
      record,
      options: {
        seed: 7,
        recorder:
          atPod === null
            ? null
            : {
                speedAtPod: {
                  runId: atPod.runId,
                  speedMs: atPod.speedMs,
                  uMs: atPod.uMs,
                  remark: atPod.remark,
                  placedBy: [],
                },
                atPod,
              },
      },
    };
  });
