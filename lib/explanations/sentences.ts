import type { Changed, FactWeight, NotLooked, PairStatement, Sentence, SentencePart } from './argument';
import { explanationOf } from '.';
import { factOf } from './facts';
import { timesText, wordText } from './words';
import type { ExplanationId } from './explanation';
import type { Ref, WitnessRecord } from './witness';

/** A part of a sentence with what it rests on. */
export const say = (text: string, ...refs: readonly Ref[]): SentencePart => ({ text, refs });

/** The sentence as plain text, references dropped. */
export const plain = (sentence: Sentence): string => sentence.map(({ text }) => text).join('');

const clause = (id: ExplanationId): string => explanationOf(id).clause;
const explanationRef = (id: ExplanationId): Ref => ({ kind: 'explanation', id });

/** Whole decibans: one is about the least change of belief a person can feel (Good, 1979). */
const round = (decibans: number): string => {
  const whole = Math.round(Math.abs(decibans));
  return whole === 1 ? '1 deciban' : `${whole} decibans`;
};

/** Always a named pair, never the probability that someone is right. */
export function sentenceForPair(pair: Omit<PairStatement, 'sentence'>, refs: readonly Ref[]): Sentence {
  const { first, second, decibans, cautious, word, capped } = pair;
  const times = timesText(decibans);
  return [
    say('These findings', ...refs),
    say(` are ${times} probable if `),
    say(clause(first), explanationRef(first)),
    say(times === 'about as' ? ' as if ' : ' than if '),
    say(clause(second), explanationRef(second)),
    say(` (${round(decibans)}); `),
    say(
      cautious <= 0
        ? 'with every judgement moved by up to a factor of two the order may turn round: '
        : `at the cautious end, with every judgement moved by up to a factor of two, ${round(cautious)}: `,
      { kind: 'method', id: 'widened-judgements' },
    ),
    say(`${wordText(word)}${capped ? ', the strongest word used' : ''}.`, {
      kind: 'method',
      id: 'verbal-scale',
    }),
  ];
}

/** What one witness has to say, in the words of its state. */
export function sentenceForWitness(record: WitnessRecord, name: string): Sentence {
  const { state, refs } = record;
  return [say(name), say(': '), say(stateText(state), ...refs), say('.')];
}

function stateText(state: WitnessRecord['state']): string {
  switch (state.kind) {
    case 'seen':
      return state.worstOfMany ? 'seen, as the worst of several' : 'seen';
    case 'notFound':
      return state.examinedSaid
        ? `looked for and not found, ${Math.round(state.examined * 100)} % of it examined`
        : 'looked for and not found, share examined not said';
    case 'couldNotTell':
      return `could not tell (${state.why})`;
    case 'notLooked':
      return 'not looked for';
    case 'notNeeded':
      return `not used, ${state.why}`;
    case 'outcome':
      return state.unmeasured.length > 0
        ? `${state.said}, with part of what it needs not measured`
        : state.said;
  }
}

/** What the evidence says of a fact, with everything it rests on. */
export function sentenceForFact(weight: FactWeight): Sentence {
  const refs = weight.witnesses.flatMap((witness) => witness.refs);
  const fact: Ref = { kind: 'fact', id: weight.fact };
  if (!weight.recorded) return [say(`${weight.name}: `, fact), say('nothing on record bears on it.')];
  if (Math.abs(weight.forFact) < 1) {
    return [say(`${weight.name}: `, fact), say('the evidence says nothing either way.', ...refs)];
  }
  return [
    say('The evidence speaks for this, by '),
    say(`${round(weight.forFact)}: `, ...refs),
    say(weight.forFact > 0 ? lowerFirst(weight.name) : factOf(weight.fact).negation, fact),
    say('.'),
  ];
}

/** What would happen to the answer if one thing were otherwise. */
export function sentenceForChange(change: Changed): Sentence {
  const start = {
    witnessLeftOut: 'Without ',
    readingLeftOut: 'Without the reading ',
    factFlipped: 'If in truth ',
  };
  const outcome = change.changesLeader
    ? 'the best supported explanation would be another: '
    : change.fallsBelow
      ? 'the lead would fall below 10 decibans, still with '
      : 'the answer would stay: ';
  return [
    say(start[change.kind]),
    say(change.kind === 'factFlipped' ? change.what : `“${change.what}”`, ...change.refs),
    say(`, ${outcome}`),
    say(explanationOf(change.leader).name.toLowerCase(), explanationRef(change.leader)),
    say(`, ${round(change.lead)} ahead of the next.`),
  ];
}

/** What to look at next, and why. */
export function sentenceForNotLooked(item: NotLooked): Sentence {
  const pair = item.mostBetween.map((id) => explanationOf(id).name.toLowerCase()).join(' and ');
  return [
    say(`${item.name}, for the fact `),
    say(`“${factOf(item.fact).name}”`, { kind: 'fact', id: item.fact }),
    say(
      `: expected to move the first two against each other by ${item.betweenTopTwo.toFixed(1)} decibans; most, by ${item.most.toFixed(1)}, ${pair}.`,
    ),
  ];
}

/** The name of a fact in the middle of a sentence. */
export const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
