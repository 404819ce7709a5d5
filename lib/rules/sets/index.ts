import type { RuleSet } from '../rule-set';
import { caFreightCar } from './ca-freight-car';
import { en13848_5 } from './en13848-5';
import { us49cfr213 } from './us-49cfr213';
import { us49cfr215_229_230 } from './us-49cfr215-229-230';

/** Every built-in rule set; adding one is a file beside this one and a line here. */
export const RULE_SETS: readonly RuleSet[] = [us49cfr213, us49cfr215_229_230, en13848_5, caFreightCar];
