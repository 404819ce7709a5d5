import type { Sentence, Verdict, WhatWouldChange } from './argument';
import { explanationOf } from '.';
import { say } from './sentences';
import { ENOUGH, type Standing } from './what-would-change';

/** In nine of ten draws the leader must stay ahead. */
const STEADY = 0.9;

/**
 * "Distinguishable" is said only if the leader is 10 decibans ahead of the next, stays ahead in
 * nine of ten draws with every judgement moved by up to a factor of two, and no single reading
 * reverses it. Never a cause.
 */
export function verdictOf(standing: Standing, anything: boolean, change: WhatWouldChange): Verdict {
  const { leader, next, lead } = standing;
  if (!anything) {
    return {
      kind: 'notMeasured',
      sentence: [
        say(
          'Nothing that bears on these explanations was recorded: the evidence does not speak for any of them.',
        ),
      ],
    };
  }
  const because = reasons(standing, change);
  const leads: Sentence = [
    say(explanationOf(leader).name, { kind: 'explanation', id: leader }),
    say(` is best supported, ${Math.round(lead)} decibans ahead of `),
    say(explanationOf(next).name.toLowerCase(), { kind: 'explanation', id: next }),
  ];
  if (because.length === 0) {
    return {
      kind: 'distinguishable',
      leader,
      next,
      sentence: [
        ...leads,
        say(
          ', and the evidence tells it from the others. What happened is for the investigator to determine.',
        ),
      ],
    };
  }
  return {
    kind: 'notDistinguishable',
    leader,
    next,
    because,
    sentence: [say('Not distinguishable on this evidence: '), say(`${because.join('; ')}.`)],
  };
}

function reasons({ leader, next, lead }: Standing, change: WhatWouldChange): readonly string[] {
  const names = `${explanationOf(leader).name.toLowerCase()} and ${explanationOf(next).name.toLowerCase()}`;
  const { staysAhead, draws } = change.widened;
  const reversing = change.readingsLeftOut.filter(({ changesLeader }) => changesLeader);
  return [
    ...(lead >= ENOUGH
      ? []
      : [
          `${names} are ${lead < 0.05 ? 'level' : `only ${lead.toFixed(1)} decibans apart`}, and ${ENOUGH} are asked`,
        ]),
    ...(staysAhead >= STEADY
      ? []
      : [
          `with every judgement moved by up to a factor of two the order holds in only ${Math.round(staysAhead * 100)} of 100 draws (${draws} made), and 90 are asked`,
        ]),
    ...(reversing.length === 0
      ? []
      : [
          `leaving out ${reversing.length === 1 ? 'one reading' : `any one of ${reversing.length} readings`} would put another explanation first: ${reversing
            .slice(0, 3)
            .map(({ what }) => what)
            .join(', ')}`,
        ]),
  ];
}
