import type { RuleClass, RuleSet } from './rule-set';
import { caFreightCar } from './sets/ca-freight-car';
import { en13848_5 } from './sets/en13848-5';
import { us49cfr213 } from './sets/us-49cfr213';
import { us49cfr215_229_230 } from './sets/us-49cfr215-229-230';

/** Every built-in rule set; adding one is a file in sets and a line here. */
export const RULE_SETS: readonly RuleSet[] = [us49cfr213, us49cfr215_229_230, en13848_5, caFreightCar];

export const ruleSetById = (id: string): RuleSet | undefined => RULE_SETS.find((each) => each.id === id);

/** The set of wheel and truck limits that goes with a track set; none where the set names none. */
export const equipmentSetOf = (trackSet: RuleSet): RuleSet | undefined =>
  trackSet.equipmentSet === undefined ? undefined : ruleSetById(trackSet.equipmentSet);

/** Which class of an equipment set covers a vehicle type (as in the case record); none: not covered. */
export const equipmentClassFor = (ruleSet: RuleSet, vehicleType: string): RuleClass | undefined =>
  ruleSet.classes.find((each) => each.vehicleTypes?.includes(vehicleType));

/**
 * The lowest class of track that allows a speed (m/s, > 0) for freight or passenger trains; none
 * where every class is slower. Classes that hold only by designation are passed over.
 */
export const classForSpeed = (
  ruleSet: RuleSet,
  speedMs: number,
  train: 'freight' | 'passenger',
): RuleClass | undefined =>
  ruleSet.classes.find((each) => {
    const allowed = train === 'freight' ? each.freightSpeedMs : each.passengerSpeedMs;
    return !each.designatedOnly && allowed !== null && allowed !== undefined && speedMs <= allowed + 1e-9;
  });
