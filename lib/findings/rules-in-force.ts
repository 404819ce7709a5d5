import type { CaseRecord } from '../case/record';
import type { LimitCheck } from './finding';
import { classForSpeed, equipmentClassFor, equipmentSetOf, isDesignated, ruleSetById } from '../rules';
import { RAILROAD_RULES, railroadRuleSet } from '../rules/railroad-lines';
import {
  checkLimit,
  isSurelyWithin,
  limitsFor,
  ruleClass,
  type AnswerTo,
  type ClassLimit,
} from '../rules/apply';
import type { RuleQuantityId } from '../rules/rule-quantity';
import type { Place, RuleClass, RuleSet } from '../rules/rule-set';

/** Which published limits the readings of this case are held against. */
export type RulesInForce = {
  readonly track: RuleSet | undefined;
  readonly trackClass: RuleClass | undefined;
  readonly equipment: RuleSet | undefined;
  /** Where the case's readings are compared, as far as the case itself says. */
  readonly place: Place;
  /** Why track readings are not compared, or how the class was come by; empty when nothing needs saying. */
  readonly remarks: readonly string[];
  readonly trackLimits: (quantity: RuleQuantityId) => readonly ClassLimit[];
  /** `answerTo`: what was answered of that turnout, on which some limits hang. */
  readonly turnoutLimits: (quantity: RuleQuantityId, answerTo?: AnswerTo) => readonly ClassLimit[];
  readonly equipmentLimits: (vehicleType: string, quantity: RuleQuantityId) => readonly ClassLimit[];
};

/**
 * Rule set and class from the case; a set of speed bands instead of classes takes the band of the
 * authorised speed. Limits that differ between tangent and curve are left away while the case
 * does not say which it is.
 */
export function rulesInForce(
  record: CaseRecord,
  alignment: 'tangent' | 'curve' | null,
  authorisedSpeedMs: number | null,
  qualifiedUnbalanceMm: number | null = null,
): RulesInForce {
  const track = trackSetOf(record);
  const equipment = track === undefined ? undefined : equipmentSetOf(track);
  const designated = record.fields.trackClass;
  const byDesignation =
    track === undefined || typeof designated !== 'string' ? undefined : ruleClass(track, designated);
  const bySpeed =
    track === undefined || byDesignation !== undefined || authorisedSpeedMs === null || isDesignated(track)
      ? undefined
      : classForSpeed(track, authorisedSpeedMs, 'freight');
  const trackClass = byDesignation ?? bySpeed;

  const place: Place = {
    onCurve: alignment === 'curve',
    ...(qualifiedUnbalanceMm === null ? {} : { qualifiedUnbalanceMm }),
  };
  const known = new Map<string, readonly ClassLimit[]>();
  const remember = (key: string, find: () => readonly ClassLimit[]): readonly ClassLimit[] => {
    const found = known.get(key) ?? find();
    known.set(key, found);
    return found;
  };

  return {
    track,
    trackClass,
    equipment,
    place,
    remarks:
      track === undefined && record.fields.ruleSet === RAILROAD_RULES
        ? ['The railroad’s own limits are chosen and none are entered: not compared with any.']
        : remarksOn(track, trackClass, bySpeed !== undefined, alignment),
    trackLimits: (quantity) =>
      remember(`track|${quantity}`, () =>
        track === undefined || trackClass === undefined
          ? []
          : limitsFor(track, trackClass.id, quantity, place).filter(
              ({ limit }) => alignment !== null || limit.applies === 'both',
            ),
      ),
    turnoutLimits: (quantity, answerTo) =>
      track === undefined || trackClass === undefined
        ? []
        : limitsFor(track, trackClass.id, quantity, { ...place, inTurnout: true }, answerTo),
    equipmentLimits: (vehicleType, quantity) =>
      remember(`${vehicleType}|${quantity}`, () => {
        const covered = equipment === undefined ? undefined : equipmentClassFor(equipment, vehicleType);
        return equipment === undefined || covered === undefined
          ? []
          : limitsFor(equipment, covered.id, quantity, { onCurve: false });
      }),
  };
}

/** The set the case is held against: one that is built in, or the railroad's own limits. */
const trackSetOf = ({ fields, railroadLimits }: CaseRecord): RuleSet | undefined =>
  fields.ruleSet === RAILROAD_RULES
    ? railroadRuleSet(railroadLimits ?? '')
    : ruleSetById(String(fields.ruleSet ?? ''));

function remarksOn(
  track: RuleSet | undefined,
  trackClass: RuleClass | undefined,
  bySpeed: boolean,
  alignment: 'tangent' | 'curve' | null,
): readonly string[] {
  if (track === undefined) return ['No set of limits is chosen for the case: not compared with any.'];
  if (trackClass === undefined) {
    return [
      isDesignated(track)
        ? 'The class of track is not recorded: not compared with limits.'
        : 'The authorised speed, which decides the limits, is not recorded: not compared with limits.',
    ];
  }
  return [
    ...(bySpeed ? [`Limits ${trackClass.label}, taken from the authorised speed.`] : []),
    ...(alignment === null
      ? [
          'Not recorded whether the POD lies on tangent or curve: limits that differ between them are left away.',
        ]
      : []),
  ];
}

/** Holds a value against limits; value and u in mm or counts. */
export function checkAll(limits: readonly ClassLimit[], value: number, u: number): readonly LimitCheck[] {
  if (limits.length === 0) return NO_CHECKS;
  const known = knownOf(limits);
  if (areSurelyWithin(limits, value, u))
    return (known.within ??= limits.map((limit) => checkLimit({ value, u, limit })));
  const before = known.byValue.get(value);
  if (before?.u === u) return before.checks;
  const checks = limits.map((limit) => checkLimit({ value, u, limit }));
  known.byValue.set(value, { u, checks });
  return checks;
}

function areSurelyWithin(limits: readonly ClassLimit[], value: number, u: number): boolean {
  for (let i = 0; i < limits.length; i += 1) if (!isSurelyWithin(value, u, limits[i]!)) return false;
  return true;
}

type Checked = { readonly u: number; readonly checks: readonly LimitCheck[] };

const NO_CHECKS: readonly LimitCheck[] = [];

/**
 * A sheet of thousands of stations is mostly well within its limits, where every check says the same,
 * and readings come in sixteenths, the same few values again and again.
 */
type Known = { within: readonly LimitCheck[] | null; readonly byValue: Map<number, Checked> };

const checked = new WeakMap<readonly ClassLimit[], Known>();

function knownOf(limits: readonly ClassLimit[]): Known {
  const before = checked.get(limits);
  if (before !== undefined) return before;
  const known: Known = { within: null, byValue: new Map() };
  checked.set(limits, known);
  return known;
}

/** What a reader must know before a limit with a condition is applied. */
export const conditionRemarks = (limits: readonly ClassLimit[]): readonly string[] => [
  ...new Set(
    limits.flatMap(({ limit }) =>
      limit.onlyWhere === undefined ? [] : [`${limit.citation} holds only where ${limit.onlyWhere}.`],
    ),
  ),
];
