import {
  OBSERVATION_LABELS,
  OBSERVATION_STATES,
  type Choice,
  type Count,
  type GoNoGo,
  type Observation,
  type ObservationState,
} from './quantity';
import { ok, refuse, type Result } from './result';

const word = (text: string): string => text.trim().replace(/\s+/g, ' ').toLowerCase();
const shown = (text: string): string => `“${text.trim().slice(0, 60)}”`;

/** A whole number of things, within what is possible. Refuses fractions, decimals and commas. */
export function parseCount(text: string, quantity: Count): Result<number> {
  const [low, high] = quantity.possible;
  const entered = text.trim();
  if (entered === '') return refuse(`${quantity.name}: enter a whole number, or leave the line out.`);
  if (!/^\+?\d{1,9}$/.test(entered)) {
    return refuse(
      `${quantity.name}: ${shown(text)} is not a whole number. Enter digits only, from ${low} to ${high}.`,
    );
  }
  const count = Number(entered);
  if (count < low || count > high) {
    return refuse(
      `${quantity.name} must be from ${low} to ${high}; ${count} is not. Count again or check the line.`,
    );
  }
  return ok(count);
}

const PASS = ['pass', 'passes', 'passed', 'go', 'ok', 'okay', 'ok.'];
const FAIL = ['fail', 'fails', 'failed', 'no-go', 'no go', 'nogo', 'not ok', 'not okay'];

/** The outcome of a go/no-go gauge in the words people use. Numbers are refused: it measures nothing. */
export function parseGoNoGo(text: string, quantity: GoNoGo): Result<'pass' | 'fail'> {
  const entered = word(text);
  if (PASS.includes(entered)) return ok('pass');
  if (FAIL.includes(entered)) return ok('fail');
  if (/\d/.test(entered)) {
    return refuse(`${quantity.name}: this gauge gives pass or fail, not a number. Enter pass or fail.`);
  }
  return refuse(`${quantity.name}: enter pass or fail (go or no-go).`);
}

/** The id of the choice named by id or by label. */
export function parseChoice(text: string, quantity: Choice): Result<string> {
  const entered = word(text);
  const found = quantity.choices.find(({ id, label }) => word(id) === entered || word(label) === entered);
  if (found) return ok(found.id);
  return refuse(
    `${quantity.name}: ${entered === '' ? 'nothing is chosen' : `${shown(text)} is not one of the choices`}. Choose ${quantity.choices.map(({ label }) => label).join(', ')}.`,
  );
}

/**
 * What became of looking for something, by id or by label. "Not looked for" is the absence of a
 * record, and a bare yes or no does not say whether anybody looked: both are refused.
 */
export function parseObservation(text: string, quantity: Observation): Result<ObservationState> {
  const entered = word(text);
  const found = OBSERVATION_STATES.find(
    (state) => word(state) === entered || word(OBSERVATION_LABELS[state]) === entered,
  );
  if (found) return ok(found);
  if (entered === word('notLooked') || entered === word(OBSERVATION_LABELS.notLooked)) {
    return refuse(
      `${quantity.name}: leave the line empty if nobody looked; it is then listed as not looked for.`,
    );
  }
  return refuse(
    `${quantity.name}: enter ${OBSERVATION_STATES.map((state) => OBSERVATION_LABELS[state].toLowerCase()).join(', or ')}.`,
  );
}
