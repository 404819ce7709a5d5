import { currentReadings } from '../case/current';
import type { CaseRecord, Standing } from '../case/record';
import { findQuantity } from '../readings/quantities';
import type { FourStanding, OtherState, Sentence } from './argument';
import { EXPLANATIONS } from '.';
import { OTHER_EXPLANATIONS } from './others';
import { say } from './sentences';

/** The standing last given to an explanation. */
export function standingFor(record: CaseRecord, explanation: string): Standing | undefined {
  return record.standings.findLast((standing) => standing.explanation === explanation);
}

/** The explanations that are not weighed: excluded, standing or not yet considered, and what bears on each. */
export function otherStates(record: CaseRecord): readonly OtherState[] {
  const readings = currentReadings(record);
  return OTHER_EXPLANATIONS.map(({ id, name, observations, readings: bearing }) => {
    const standing = standingFor(record, id);
    const read = (quantity: string) => readings.filter((reading) => reading.quantity === quantity);
    return {
      id,
      name,
      state: standing?.standing ?? 'notConsidered',
      reason: standing?.reason ?? '',
      personId: standing?.personId ?? null,
      at: standing?.at ?? null,
      seen: observations.flatMap((quantity) =>
        read(quantity)
          .filter(({ state }) => state === 'seen')
          .map((reading) => ({ quantity, question: questionOf(quantity), reading: reading.id })),
      ),
      notLooked: [...observations, ...bearing].filter((quantity) => read(quantity).length === 0),
    };
  });
}

const questionOf = (id: string): string => {
  const quantity = findQuantity(id);
  return quantity?.kind === 'observation' ? quantity.question : (quantity?.name ?? id);
};

/** Where the investigator differs from the weighing on the explanations that are weighed. */
export const fourStandings = (record: CaseRecord): readonly FourStanding[] =>
  EXPLANATIONS.map(({ id }) => {
    const standing = standingFor(record, id);
    return { explanation: id, standing: standing?.standing ?? 'notSaid', reason: standing?.reason ?? '' };
  });

/** What must be said with any answer about explanations outside the four. */
export function caveatsOf(others: readonly OtherState[]): readonly Sentence[] {
  const open = others.filter(({ state }) => state === 'notConsidered');
  const spokenFor = others.filter(({ state, seen }) => seen.length > 0 && state === 'notConsidered');
  const contradicted = others.filter(({ state, seen }) => seen.length > 0 && state === 'excluded');
  return [
    ...(open.length === 0
      ? []
      : [
          [
            say('Not yet considered: '),
            ...listed(open),
            say('. Until each is excluded with a reason or let stand, “something else” covers them.'),
          ],
        ]),
    ...[...spokenFor, ...contradicted].map((other): Sentence => [
      say(
        other.seen.map(({ question }) => question).join('; '),
        ...other.seen.map(({ reading }) => ({ kind: 'reading' as const, id: reading })),
      ),
      say(' was seen, which speaks for '),
      say(other.name.toLowerCase(), { kind: 'explanation', id: other.id }),
      say(
        other.state === 'excluded'
          ? `; it is recorded as excluded: ${other.reason}`
          : '; it is neither excluded nor weighed here.',
      ),
    ]),
  ];
}

function listed(others: readonly OtherState[]): Sentence {
  return others.map(({ id, name }, i) =>
    say(`${i === 0 ? '' : ', '}${name.toLowerCase()}`, { kind: 'explanation', id }),
  );
}
