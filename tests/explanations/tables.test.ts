import { describe, expect, it } from 'vitest';
import { EXPLANATIONS } from '~/lib/explanations';
import { FACT_IDS } from '~/lib/explanations/fact';
import { EXPLANATION_IDS, OTHER_EXPLANATION_IDS } from '~/lib/explanations/explanation';
import { FACTS } from '~/lib/explanations/facts';
import { judgedOutcomes, judgementTable } from '~/lib/explanations/judgement-table';
import { OTHER_EXPLANATIONS } from '~/lib/explanations/others';
import type { Witness } from '~/lib/explanations/witness';
import { markKind } from '~/lib/case/kinds/ground';
import { GROUPS, findQuantity, quantityOf } from '~/lib/readings/quantities';

const witnesses = FACTS.flatMap((fact) => fact.witnesses.map((witness) => ({ fact: fact.id, witness })));

/** Everything of the case a witness rests on. */
const restsOn = (witness: Witness): readonly string[] => {
  switch (witness.kind) {
    case 'margin':
      return witness.inputs;
    case 'mark':
      return witness.markTypes.map((type) => `mark:${type}`);
    case 'observation':
      return [witness.quantity, ...witness.orMarks.map((type) => `mark:${type}`)];
    default:
      return [witness.quantity];
  }
};

describe('the tables', () => {
  it('hold every fact and explanation once', () => {
    expect(FACTS.map(({ id }) => id).sort()).toEqual([...FACT_IDS].sort());
    expect(EXPLANATIONS.map(({ id }) => id)).toEqual([...EXPLANATION_IDS]);
    expect(OTHER_EXPLANATIONS.map(({ id }) => id)).toEqual([...OTHER_EXPLANATION_IDS]);
  });

  it('give each of the four at least six witnesses of its own facts', () => {
    for (const { id, characteristic } of EXPLANATIONS) {
      if (id === 'somethingElse') continue;
      const own = witnesses.filter(({ fact }) => characteristic.includes(fact));
      expect(own.length, id).toBeGreaterThanOrEqual(6);
    }
  });

  it('call a fact characteristic only where the explanation expects it at least twice as often as the background', () => {
    const background = EXPLANATIONS.at(-1)!;
    for (const { characteristic, expectations } of EXPLANATIONS) {
      for (const fact of characteristic) {
        expect(expectations[fact].probability / background.expectations[fact].probability).toBeGreaterThan(2);
      }
    }
  });

  it('give way only to a choice of the same fact', () => {
    const giving = witnesses.flatMap(({ fact, witness }) =>
      witness.kind === 'observation' && witness.unlessChosen !== null
        ? [{ fact, to: witness.unlessChosen }]
        : [],
    );
    expect(giving.length).toBeGreaterThan(0);
    for (const { fact, to } of giving) {
      const other = witnesses.find(({ witness }) => witness.id === to);
      expect(other).toMatchObject({ fact, witness: { kind: 'choice' } });
    }
  });

  it('let no reading, mark or key input feed two witnesses', () => {
    const fed = new Map<string, string>();
    for (const { witness } of witnesses) {
      for (const each of restsOn(witness)) {
        expect(fed.get(each), `${each} feeds ${fed.get(each)} and ${witness.id}`).toBeUndefined();
        fed.set(each, witness.id);
      }
    }
  });

  it('name witnesses once and hold every judgement between 0 and 1, with a reason', () => {
    expect(new Set(witnesses.map(({ witness }) => witness.id)).size).toBe(witnesses.length);
    const table = judgementTable();
    expect(new Set(table.map(({ path }) => path)).size).toBe(table.length);
    for (const { path, value, reason, what } of table) {
      expect(value, path).toBeGreaterThanOrEqual(0.001);
      expect(value, path).toBeLessThanOrEqual(0.999);
      expect(reason.length, path).toBeGreaterThan(15);
      expect(what, path).not.toBe('');
    }
  });

  it('let the outcomes of one witness sum to one in either state of the fact', () => {
    for (const { witness } of witnesses) {
      if (!('outcomes' in witness)) continue;
      const outcomes = judgedOutcomes(witness);
      expect(
        outcomes.reduce((sum, { ifTrue }) => sum + ifTrue, 0),
        witness.id,
      ).toBeCloseTo(1, 9);
      expect(
        outcomes.reduce((sum, { ifFalse }) => sum + ifFalse, 0),
        witness.id,
      ).toBeCloseTo(1, 9);
    }
  });

  it('ask only for quantities, choices and marks that can be recorded', () => {
    const markTypes = markKind.fields.flatMap((field) =>
      field.id === 'type' && field.type === 'choice' ? field.choices.map(({ id }) => id) : [],
    );
    for (const { witness } of witnesses) {
      if (witness.kind === 'mark') expect(markTypes).toEqual(expect.arrayContaining([...witness.markTypes]));
      if (witness.kind === 'observation') {
        expect(quantityOf(witness.quantity).kind).toBe('observation');
        expect(markTypes).toEqual(expect.arrayContaining([...witness.orMarks]));
      }
      if (witness.kind === 'passFail') expect(quantityOf(witness.quantity).kind).toBe('goNoGo');
      if (witness.kind === 'count') expect(quantityOf(witness.quantity).kind).toBe('count');
      if (witness.kind === 'choice') {
        const quantity = quantityOf(witness.quantity);
        expect(quantity.kind === 'choice' ? quantity.choices.map(({ id }) => id) : []).toEqual(
          witness.outcomes.map(({ id }) => id),
        );
      }
      if (witness.kind === 'margin') expect(witness.outcomes.length).toBe(witness.upTo.length + 1);
    }
    for (const other of OTHER_EXPLANATIONS) {
      for (const id of other.observations) expect(findQuantity(id)?.kind, id).toBe('observation');
      for (const id of other.readings) expect(findQuantity(id), id).toBeDefined();
      expect(other.speaksFor.length).toBeGreaterThan(0);
      expect(other.toExclude.length).toBeGreaterThan(0);
    }
  });

  it('leave no question of the catalogue without use', () => {
    const used = new Set([
      ...witnesses.flatMap(({ witness }) => restsOn(witness)),
      ...OTHER_EXPLANATIONS.flatMap(({ observations }) => observations),
    ]);
    const asked = GROUPS.flatMap(({ quantities }) => quantities).filter(({ kind }) => kind === 'observation');
    for (const { id } of asked) expect(used.has(id), id).toBe(true);
  });
});
