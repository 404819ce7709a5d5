import { currentReadings, standing } from '../case/current';
import type { Entity, Reading } from '../case/record';
import type { Context } from '../findings/context';
import type { KeyInputs } from '../findings/key-input';
import type { Fact } from './fact';
import { marginText } from './margin-text';
import { unmeasuredInputs, type MarginSampler } from './margin-sampler';
import {
  speaks,
  type ChoiceWitness,
  type CountWitness,
  type MarginWitness,
  type MarkWitness,
  type ObservationWitness,
  type PassFailWitness,
  type Ref,
  type Witness,
  type WitnessRecord,
} from './witness';

/** What a case holds, as witnesses ask for it. */
export type Source = {
  readonly context: Context;
  readonly keyInputs: KeyInputs;
  readonly sample: MarginSampler;
};

/** The state of every witness in a case, by witness id. */
export function gather(facts: readonly Fact[], source: Source): ReadonlyMap<string, WitnessRecord> {
  const byQuantity = new Map<string, Reading[]>();
  for (const reading of currentReadings(source.context.record)) {
    const group = byQuantity.get(reading.quantity);
    if (group === undefined) byQuantity.set(reading.quantity, [reading]);
    else group.push(reading);
  }
  const read = (quantity: string): readonly Reading[] => byQuantity.get(quantity) ?? [];
  const marks = standing(source.context.record, 'mark');
  const recordOf = (witness: Witness): Omit<WitnessRecord, 'witness'> => {
    switch (witness.kind) {
      case 'observation':
        return observed(witness, read(witness.quantity), marks);
      case 'mark':
        return onMarks(witness, marks);
      case 'choice':
        return chosenOf(witness, read(witness.quantity), source.context);
      case 'count':
        return countOf(witness, read(witness.quantity), source.context);
      case 'passFail':
        return gaugedOf(witness, read(witness.quantity), source);
      case 'margin':
        return marginOf(witness, source);
    }
  };
  const witnesses = facts.flatMap((fact) => fact.witnesses);
  const records = new Map<string, WitnessRecord>(
    witnesses.map((witness) => [witness.id, { witness: witness.id, ...recordOf(witness) }] as const),
  );
  for (const witness of witnesses) {
    const own = records.get(witness.id);
    if (witness.kind !== 'observation' || own === undefined || !speaks(own)) continue;
    const better = witnesses.find(({ id }) => id === witness.unlessChosen);
    if (better === undefined || records.get(better.id)?.state.kind !== 'outcome') continue;
    const why = `the same thing was read on the spot as “${better.name}”`;
    records.set(witness.id, { ...own, state: { kind: 'notNeeded', why } });
  }
  return records;
}

type Found = Omit<WitnessRecord, 'witness'>;

const NOT_LOOKED: Found = { state: { kind: 'notLooked' }, refs: [], remarks: [] };

const couldNotTell = (why: string, refs: readonly Ref[]): Found => ({
  state: { kind: 'couldNotTell', why },
  refs,
  remarks: [],
});

const readingRefs = (readings: readonly Reading[]): readonly Ref[] =>
  readings.map(({ id }) => ({ kind: 'reading', id }));

const DISTURBED = 'read where the derailment or a repair had changed it';
const DISAGREE = 'the records disagree: settle which one stands, and withdraw the other';

const spoiled = (reading: Reading): boolean =>
  reading.disturbance === 'disturbed' || reading.disturbance === 'repaired';

const isWorst = (readings: readonly Reading[]): boolean =>
  readings.some(({ sampling }) => sampling === 'worst');

function observed(
  witness: ObservationWitness,
  readings: readonly Reading[],
  marks: readonly Entity[],
): Found {
  const ofMarks = onMarks(witness, marks, witness.orMarks);
  if (readings.length === 0) return ofMarks;
  const refs = readingRefs(readings);
  const usable = witness.needsUndisturbed ? readings.filter((each) => !spoiled(each)) : readings;
  const seen = usable.filter(({ state }) => state === 'seen');
  const notFound = usable.filter(({ state }) => state === 'notFound');
  if (seen.length > 0 && notFound.length > 0) return couldNotTell(DISAGREE, refs);
  if (seen.length > 0) {
    return { state: { kind: 'seen', worstOfMany: isWorst(seen) }, refs, remarks: [] };
  }
  if (notFound.length > 0) {
    if (ofMarks.state.kind === 'seen') return couldNotTell(DISAGREE, [...refs, ...ofMarks.refs]);
    const said = notFound.flatMap(({ examined }) => (examined === null ? [] : [examined]));
    return {
      state: { kind: 'notFound', examined: Math.max(0, ...said), examinedSaid: said.length > 0 },
      refs,
      remarks: said.length > 0 ? [] : ['How much of it could be examined was not said; half is taken.'],
    };
  }
  if (ofMarks.state.kind === 'seen') return ofMarks;
  return couldNotTell(usable.length === 0 ? DISTURBED : noteOf(usable), refs);
}

const noteOf = (readings: readonly Reading[]): string =>
  readings.map(({ note }) => note.trim()).find((note) => note !== '') ?? 'destroyed, covered or unclear';

function onMarks(
  witness: ObservationWitness | MarkWitness,
  marks: readonly Entity[],
  types: readonly string[] = witness.kind === 'mark' ? witness.markTypes : [],
): Found {
  const ofType = marks.filter(({ fields }) => types.includes(String(fields.type)));
  const fresh = ofType.filter(({ fields }) => fields.appearance !== 'old');
  if (fresh.length === 0) {
    const remarks =
      ofType.length === 0
        ? []
        : ['Only marks with rust, grease or dirt in them are on record: not of this train.'];
    return { ...NOT_LOOKED, remarks };
  }
  return {
    state: { kind: 'seen', worstOfMany: false },
    refs: fresh.map(({ id }) => ({ kind: 'mark', id })),
    remarks: witness.kind === 'mark' ? [] : ['Taken from the mark on record.'],
  };
}

/** Readings of the quantity that stand for the place or the equipment, and those left out as disturbed. */
function placed(
  quantity: string,
  readings: readonly Reading[],
  context: Context,
  fits: (reading: Reading) => boolean,
): { readonly usable: readonly Reading[]; readonly leftOut: readonly Reading[] } {
  const fitting = readings.filter(fits);
  const isUsable = ({ id, subject, slot }: Reading): boolean =>
    context.read.state(subject.kind, subject.id, quantity, slot)?.readings.includes(id) ??
    context.read.take(subject.kind, subject.id, quantity, slot)?.readings.includes(id) ??
    false;
  return { usable: fitting.filter(isUsable), leftOut: fitting.filter((each) => !isUsable(each)) };
}

/** Each usable reading counts alike: weights are the shares of the readings that say so. */
function shares(
  usable: readonly Reading[],
  leftOut: readonly Reading[],
  outcomeOf: (reading: Reading) => { readonly id: string; readonly label: string } | undefined,
): Found {
  const said = usable.flatMap((reading) => {
    const outcome = outcomeOf(reading);
    return outcome === undefined ? [] : [{ reading, outcome }];
  });
  if (said.length === 0) {
    return leftOut.length === 0 ? NOT_LOOKED : couldNotTell(DISTURBED, readingRefs(leftOut));
  }
  const weights: Record<string, number> = {};
  for (const { outcome } of said) weights[outcome.id] = (weights[outcome.id] ?? 0) + 1 / said.length;
  return {
    state: {
      kind: 'outcome',
      weights,
      worstOfMany: isWorst(said.map(({ reading }) => reading)),
      said: [...new Set(said.map(({ outcome }) => outcome.label))].join('; '),
      unmeasured: [],
    },
    refs: readingRefs(said.map(({ reading }) => reading)),
    remarks: [
      ...(leftOut.length === 0 ? [] : ['Readings not said to be undisturbed are left out.']),
      ...(said.length === 1 ? [] : [`${said.length} readings, each counted alike.`]),
    ],
  };
}

function chosenOf(witness: ChoiceWitness, readings: readonly Reading[], context: Context): Found {
  const { usable, leftOut } = placed(witness.quantity, readings, context, fitting(witness.on, context));
  return shares(usable, leftOut, ({ state }) => witness.outcomes.find(({ id }) => id === state));
}

function fitting(on: ChoiceWitness['on'], context: Context): (reading: Reading) => boolean {
  if (on === 'firstDerailedTruck') {
    const truck = context.first.truck?.entity.id;
    return ({ subject }) => subject.id === truck;
  }
  const side = on === 'outerRail' ? context.sides.outer : context.sides.inner;
  const rails = new Set(
    standing(context.record, 'rail')
      .filter(({ fields }) => side === null || fields.rail === side)
      .map(({ id }) => id),
  );
  return ({ subject }) => rails.has(subject.id);
}

function countOf(witness: CountWitness, readings: readonly Reading[], context: Context): Found {
  const { usable, leftOut } = placed(witness.quantity, readings, context, () => true);
  const most = usable.reduce<Reading | null>(
    (greatest, each) => ((each.value ?? -1) > (greatest?.value ?? -1) ? each : greatest),
    null,
  );
  return shares(most === null ? [] : [most], leftOut, ({ value }) => {
    const band = witness.from.findLastIndex((from) => (value ?? -1) >= from);
    return witness.outcomes[band];
  });
}

/** The gauge applied to the first derailed wheelset: one wheel that fails is a fail. */
function gaugedOf(witness: PassFailWitness, readings: readonly Reading[], source: Source): Found {
  const { context, keyInputs } = source;
  const wheelset = context.first.wheelset?.entity.id;
  const { usable, leftOut } = placed(
    witness.quantity,
    readings,
    context,
    ({ subject }) => subject.id === wheelset,
  );
  if (usable.length > 0 && witness.unlessMeasured !== null && keyInputs[witness.unlessMeasured].measured) {
    return {
      state: { kind: 'notNeeded', why: 'measured as a number, which says more than the gauge' },
      refs: readingRefs(usable),
      remarks: [],
    };
  }
  const failed = usable.filter(({ state }) => state === 'fail');
  return shares(failed.length > 0 ? failed : usable, leftOut, ({ state }) =>
    state === 'fail' ? { id: 'fail', label: 'Failed' } : { id: 'pass', label: 'Passed' },
  );
}

function marginOf(witness: MarginWitness, { context, keyInputs, sample }: Source): Found {
  const measured = witness.inputs.flatMap((id) => keyInputs[id].measured ?? []);
  if (measured.length === 0) return NOT_LOOKED;
  const { weights, spread } = sample(witness, keyInputs);
  const unmeasured = unmeasuredInputs(witness, keyInputs);
  const runs = new Set(context.record.recorderRuns.map(({ id }) => id));
  const traces = new Set(context.record.traces.map(({ id }) => id));
  return {
    state: {
      kind: 'outcome',
      weights,
      worstOfMany: false,
      said: marginText(spread, witness.unit),
      unmeasured,
    },
    refs: [...new Set(measured.flatMap(({ readings }) => readings))].map((id) => ({
      kind: runs.has(id) ? 'recorderRun' : traces.has(id) ? 'trace' : 'reading',
      id,
    })),
    remarks: [...new Set(measured.map(({ remark }) => remark).filter((remark) => remark !== ''))],
  };
}
