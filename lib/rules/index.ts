import type { RuleClass, RuleSet } from './rule-set';
import { RULE_SETS } from './sets';

export { RULE_SETS };

/** The sets a case can be held against. */
export const TRACK_SETS: readonly RuleSet[] = RULE_SETS.filter(({ kind }) => kind === 'track');

/** Whether the owner designates a class of the set, rather than the speed deciding a band. */
export const isDesignated = ({ classBy }: RuleSet): boolean => classBy !== 'speed';

/** Every class of track that an owner can designate, each once. */
export const DESIGNATED_CLASSES: readonly RuleClass[] = [
  ...new Map(
    TRACK_SETS.filter(isDesignated).flatMap(({ classes }) => classes.map((each) => [each.id, each] as const)),
  ).values(),
];

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
