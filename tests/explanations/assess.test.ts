import { describe, expect, it } from 'vitest';
import type { Sentence } from '~/lib/explanations/argument';
import { assess } from '~/lib/explanations/assess';
import { chosenExplanation, determinationCheck } from '~/lib/explanations/determination';
import { EXPLANATIONS } from '~/lib/explanations';
import { plain } from '~/lib/explanations/sentences';
import type { JudgementChange, Standing } from '~/lib/case/record';
import { buildRecord, type RecordSpec } from '../findings/record-builder';
import { CLIMB, climbRecord, observations } from './invented';

const of = (spec: RecordSpec) => assess({ record: buildRecord(spec), seed: 1 });

describe('with nothing recorded', () => {
  const { argument, findings } = of({});

  it('every weight is exactly 0 and the answer is "not measured"', () => {
    expect(argument.verdict.kind).toBe('notMeasured');
    for (const { decibans } of argument.order) expect(decibans).toBe(0);
    for (const { forFact, against, recorded } of argument.facts) {
      expect(forFact).toBe(0);
      expect(recorded).toBe(false);
      for (const { id } of EXPLANATIONS) expect(against[id]).toBe(0);
    }
    for (const { word } of argument.pairs) expect(word).toBe('none');
    expect(argument.contradictions).toEqual([]);
    expect(argument.whatWouldChange.deciding).toEqual([]);
    expect(findings.every(({ kind }) => kind === 'notMeasured')).toBe(true);
  });

  it('everything is on the list of what to look at, for every explanation', () => {
    for (const { id, characteristic } of EXPLANATIONS) {
      if (characteristic.length === 0) continue;
      expect(
        argument.lookNext.some(({ fact, most }) => characteristic.includes(fact) && most > 1),
        id,
      ).toBe(true);
    }
    expect(argument.coverage.every(({ recorded, of: all }) => recorded === 0 && all >= 6)).toBe(true);
    const most = argument.lookNext.map((item) => item.most);
    expect(most).toEqual([...most].sort((a, b) => b - a));
  });
});

describe('an empty hopper that climbed', () => {
  const record = climbRecord();
  const assessment = assess({ record, seed: 1 });
  const { argument } = assessment;

  it('is told from the others, in words that stop at moderately strong', () => {
    expect(argument.order[0]?.explanation).toBe('wheelClimb');
    expect(argument.lead).toBeGreaterThan(10);
    expect(argument.verdict.kind).toBe('distinguishable');
    expect(argument.whatWouldChange.widened.staysAhead).toBeGreaterThanOrEqual(0.9);
    for (const { word, cautious, decibans } of argument.pairs) {
      expect(['none', 'weak', 'moderate', 'moderatelyStrong']).toContain(word);
      expect(cautious).toBeLessThan(decibans);
      expect(decibans).toBeGreaterThanOrEqual(0);
    }
  });

  it('never names a cause or fault', () => {
    const sentences: readonly Sentence[] = [
      argument.verdict.sentence,
      ...argument.pairs.map(({ sentence }) => sentence),
      ...argument.contradictions.map(({ sentence }) => sentence),
      ...argument.caveats,
    ];
    for (const sentence of sentences)
      expect(plain(sentence)).not.toMatch(/\b(cause[ds]?|fault|blame|proves?)\b/i);
  });

  it('rests every sentence about a pair on readings or marks of the case', () => {
    const known = new Set(record.readings.map(({ id }) => id));
    for (const { sentence, decibans } of argument.pairs) {
      const refs = sentence.flatMap((part) => part.refs).filter(({ kind }) => kind === 'reading');
      if (decibans > 5) expect(refs.length).toBeGreaterThan(0);
      for (const { id } of refs) expect(known.has(id)).toBe(true);
    }
  });

  it('leads from a margin to the finding that shows it', () => {
    const witnesses = argument.facts.flatMap((weight) => weight.witnesses);
    const refs = witnesses.find(({ witness }) => witness === 'climbLimit')?.refs ?? [];
    const finding = assessment.findings.find(({ id }) =>
      refs.some((ref) => ref.kind === 'finding' && ref.id === id),
    );
    expect(finding).toMatchObject({ what: 'climbLimit', kind: 'measured' });
  });

  it('leaves out the recorder’s speed as it leaves out a reading', () => {
    const run = { runId: 'run-1', speedMs: 7.6, uMs: 0.5, remark: 'From the recorder.' };
    const recorderRuns = [
      {
        id: 'run-1',
        name: 'Lead unit',
        vehicleId: null,
        fileName: 'a.csv',
        sha256: '',
        rows: 1,
        channels: {},
        clockOffsetS: 0,
        note: '',
        removed: null,
        createdAt: '2026-05-06T14:00:00Z',
      },
    ];
    const recorded = assess({
      record: climbRecord({ recorderRuns }),
      seed: 1,
      recorder: { speedAtPod: run },
    });
    const left = recorded.argument.whatWouldChange.readingsLeftOut.find(({ id }) => id === 'run-1');
    expect(left?.refs).toEqual([{ kind: 'recorderRun', id: 'run-1' }]);
  });

  it('is the same for the same record and seed, whatever the order of its readings', () => {
    expect(assess({ record, seed: 1 })).toEqual(assessment);
    const turned = assess({ record: { ...record, readings: [...record.readings].reverse() }, seed: 1 });
    expect(turned.argument.order).toEqual(argument.order);
  });

  it('leaves out every reading that any witness rests on, and each witness on record', () => {
    const ids = argument.whatWouldChange.readingsLeftOut.map(({ id }) => id);
    for (const id of [
      'case-1.obsFlangeAcrossHead',
      'car.grossWeight',
      'high.gaugeFaceAngle',
      's-2.crosslevel',
    ]) {
      expect(ids).toContain(id);
    }
    const changed = argument.whatWouldChange.witnessesLeftOut.map(({ id }) => id);
    expect(changed).toContain('climbLimit');
    expect(changed).not.toContain('contactBand');
  });

  it('takes a margin anew when one reading behind it is left out', () => {
    const without = argument.whatWouldChange.readingsLeftOut.find(({ id }) => id === 'high.gaugeFaceAngle');
    expect(without!.lead).toBeLessThan(argument.lead - 0.2);
  });

  it('lays the investigator’s judgement over the tables and keeps both', () => {
    const change = (
      path: string,
      value: number,
      reason = 'Lubricators were out all week.',
    ): JudgementChange => ({
      path,
      value,
      reason,
      personId: null,
      at: '2026-05-08T10:00:00',
    });
    const path = 'expectation/somethingElse/flangeCrossedHead';
    const changed = assess({
      record: climbRecord({
        judgementChanges: [
          change(path, 0.3),
          change('expectation/nobody/nothing', 0.3),
          change('expectation/wheelClimb/wheelLight', 1),
          change('expectation/wheelClimb/sideForceHigh', 0.5, ' '),
        ],
      }),
      seed: 1,
    });
    expect(changed.baseline.order).toEqual(argument.order);
    expect(changed.argument.lead).toBeLessThan(argument.lead - 3);
    expect(changed.adjustedBy).toMatchObject([{ path, from: 0.04, to: 0.3 }]);
    expect(changed.refusedChanges.map(({ message }) => message)).toEqual([
      expect.stringContaining('table of judgements'),
      expect.stringContaining('between 0.001 and 0.999'),
      expect.stringContaining('reason'),
    ]);
    expect(assessment.baseline).toBe(assessment.argument);
  });
});

describe('what is not distinguishable', () => {
  it('is said so when little was looked at', () => {
    const { argument } = of({
      readings: observations({ obsRimMarkInside: 'seen', obsTiesClustered: 'seen' }),
    });
    expect(argument.order[0]?.explanation).toBe('wideGauge');
    expect(argument.verdict).toMatchObject({ kind: 'notDistinguishable', leader: 'wideGauge' });
    expect(plain(argument.verdict.sentence)).toContain('Not distinguishable on this evidence');
  });

  it('finds the one reading on which the answer turns', () => {
    // Everything speaks for a rollover but one observation of a flange mark on the point and split routes.
    const { argument } = of({
      readings: observations({
        obsFlangeOnPoint: 'seen',
        obsFirstMarkAtPoint: 'seen',
        obsRunningOnWeb: 'seen',
      }),
    });
    const reversing = argument.whatWouldChange.deciding.filter(({ changesLeader }) => changesLeader);
    expect(argument.order[0]?.explanation).toBe('switchPointPick');
    expect(reversing.map(({ id }) => id)).toContain('pointPicked');
    expect(argument.contradictions.map(({ fact }) => fact)).toContain('railRolledFirst');
  });

  it('does not hold an answer that one reading reverses', () => {
    const { argument } = of({
      readings: observations({ obsFlangeAcrossHead: 'seen', obsRunningOnWeb: 'seen' }),
    });
    const leader = argument.order[0]?.explanation;
    const reading = leader === 'railRollover' ? 'case-1.obsRunningOnWeb' : 'case-1.obsFlangeAcrossHead';
    const left = argument.whatWouldChange.readingsLeftOut.find(({ id }) => id === reading);
    expect(left?.changesLeader).toBe(true);
    expect(argument.whatWouldChange.deciding.map(({ id }) => id)).toContain(reading);
    expect(argument.verdict.kind).toBe('notDistinguishable');
  });
});

describe('leaving out a correction', () => {
  it('does not bring the corrected reading back', () => {
    const { argument } = of({
      readings: [
        { quantity: 'obsFlangeAcrossHead', state: 'notFound', examined: 1, id: 'first' },
        {
          quantity: 'obsFlangeAcrossHead',
          state: 'seen',
          id: 'second',
          replaces: 'first',
          reason: 'other rail',
        },
      ],
    });
    const left = argument.whatWouldChange.readingsLeftOut.find(({ id }) => id === 'second');
    expect(left?.lead).toBe(0);
  });
});

describe('explanations outside the four', () => {
  const standing = (explanation: string, kind: Standing['standing'], reason: string): Standing => ({
    explanation,
    standing: kind,
    reason,
    personId: null,
    at: '2026-05-08T10:00:00',
  });

  it('are not yet considered until somebody says, and what was seen for them is named', () => {
    const { argument } = assess({
      record: buildRecord({
        readings: observations({ obsOldBreak: 'seen' }),
        changes: { standings: [standing('overspeed', 'excluded', 'Recorder shows 17 mph.')] },
      }),
      seed: 1,
    });
    const state = (id: string) => argument.others.find((other) => other.id === id);
    expect(state('overspeed')).toMatchObject({ state: 'excluded', reason: 'Recorder shows 17 mph.' });
    expect(state('brokenRail')).toMatchObject({
      state: 'notConsidered',
      seen: [{ quantity: 'obsOldBreak' }],
    });
    const caveats = argument.caveats.map(plain).join('\n');
    expect(caveats).toContain('Not yet considered: broken rail or joint');
    expect(caveats).toContain('speaks for broken rail or joint');
    expect(caveats).not.toContain('overspeed');
  });

  it('let the determination be held against the evidence', () => {
    const climb = assess({ record: climbRecord(), seed: 1 }).argument;
    expect(determinationCheck(climb, 'wheelClimb').kind).toBe('carried');
    expect(determinationCheck(climb, 'wideGauge').kind).toBe('against');
    expect(determinationCheck(climb, 'brokenRail').kind).toBe('notWeighed');
    expect(determinationCheck(climb, null).kind).toBe('notSaid');
    expect(determinationCheck(of({}).argument, 'wheelClimb').kind).toBe('notCarried');
  });

  it('take as chosen the one explanation that is let stand', () => {
    const chosenWith = (standings: readonly Standing[]) => chosenExplanation(climbRecord({ standings }));
    expect(chosenWith([])).toBeNull();
    expect(chosenWith([standing('wheelClimb', 'stands', 'x'), standing('brokenRail', 'excluded', 'y')])).toBe(
      'wheelClimb',
    );
    expect(
      chosenWith([standing('wheelClimb', 'stands', 'x'), standing('brokenRail', 'stands', 'y')]),
    ).toBeNull();
    expect(
      chosenWith([standing('wheelClimb', 'stands', 'x'), standing('wheelClimb', 'excluded', 'y')]),
    ).toBeNull();
  });
});

it('names lopsided looking', () => {
  const { argument } = of({
    ...CLIMB,
    readings: observations({
      obsRimMarkInside: 'seen',
      obsMateHardAgainst: 'seen',
      obsTiesClustered: 'seen',
      obsFreshPlateSlide: 'seen',
      obsPlatesCutField: 'seen',
    }),
  });
  expect(argument.lopsided === null ? '' : plain(argument.lopsided)).toContain('wide gauge (drop-in)');
});
