import { parseMeasure } from './parse-measure';
import { parseChoice, parseCount, parseGoNoGo, parseObservation } from './parse-state';
import type { Quantity } from './quantity';
import { ok, type Result } from './result';
import type { UnitSystem } from './unit';

export { parseMeasure, writtenHalfWidth, exampleOf, type ParsedMeasure } from './parse-measure';
export { parseCount, parseGoNoGo, parseChoice, parseObservation } from './parse-state';

/**
 * A reading of any kind, ready for the record: a value in the canonical unit or a state, never
 * both; `unit` is '' for a state and '1' for a count.
 */
export type ParsedReading = {
  readonly value: number | null;
  readonly state: string | null;
  readonly unit: string;
  readonly resolution: number | null;
  readonly question: string | null;
};

const asState = (state: string): ParsedReading => ({
  value: null,
  state,
  unit: '',
  resolution: null,
  question: null,
});

const map = <A, B>(result: Result<A>, into: (value: A) => B): Result<B> =>
  result.ok ? ok(into(result.value)) : result;

/** What was typed for a quantity of any kind. Refusals say what to enter instead; never throws. */
export function parseReading(text: string, quantity: Quantity, system: UnitSystem): Result<ParsedReading> {
  switch (quantity.kind) {
    case 'measure':
      return map(parseMeasure(text, quantity, system), (measure) => ({ ...measure, state: null }));
    case 'count':
      return map(parseCount(text, quantity), (value) => ({
        value,
        state: null,
        unit: '1',
        resolution: null,
        question: null,
      }));
    case 'goNoGo':
      return map(parseGoNoGo(text, quantity), asState);
    case 'choice':
      return map(parseChoice(text, quantity), asState);
    case 'observation':
      return map(parseObservation(text, quantity), asState);
  }
}
