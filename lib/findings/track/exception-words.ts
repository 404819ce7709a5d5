import { RULE_QUANTITIES } from '../../rules/rule-quantity';
import { answerLabel } from '../rules/conditions';
import { quantityOf } from '../../readings/quantities';
import type { ClassException } from './class-met';

/** An exception as a list of them prints it; amounts as numbers, so that each list may choose its units. */
export type ExceptionWords = {
  readonly what: string;
  readonly section: string;
  /** What the rule allows or wants. */
  readonly limit: string;
  /** The answer that does not meet it; null where a value does not, which the finding has. */
  readonly answer: string | null;
  /** How far beyond, mm or a number; null where there is no figure. */
  readonly excess: number | null;
  readonly unit: 'mm' | 'count';
  /** How probable it is, given the uncertainty of the reading, that it lies beyond; null without a figure. */
  readonly probability: number | null;
};

export function exceptionWords(each: ClassException): ExceptionWords {
  if (each.kind === 'condition') {
    const { condition, answer } = each;
    return {
      what: quantityOf(condition.quantity).name,
      section: condition.citation,
      limit: [condition.wants, condition.consequence?.text].filter(Boolean).join('; '),
      answer: answerLabel(condition.quantity, answer),
      excess: null,
      unit: 'count',
      probability: null,
    };
  }
  const { quantity, limit, excess, probability } = each.exception;
  const { sense, consequence, citation } = limit.limit;
  const bound = `${sense === 'max' ? 'at most' : 'at least'} ${limit.printed}`;
  return {
    what: RULE_QUANTITIES[quantity].name,
    section: citation,
    limit: consequence === undefined ? bound : `${bound}; ${consequence.text}`,
    answer: null,
    excess,
    unit: RULE_QUANTITIES[quantity].unit,
    probability,
  };
}
