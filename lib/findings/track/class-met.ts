import { standing } from '../../case/current';
import { nameOfEntity } from '../../case/name-of';
import type { SubjectKind } from '../../readings/quantity';
import { quantityOf } from '../../readings/quantities';
import { ruleClass } from '../../rules/apply';
import {
  highestClassMet,
  type ClassMet,
  type NamedAnswer,
  type NamedValue,
  type RuleException,
  type Unmet,
} from '../../rules/class-met';
import { isRuleQuantityId, type RuleQuantityId } from '../../rules/rule-quantity';
import type { Place, RuleCondition, RuleSet } from '../../rules/rule-set';
import { degreesOfCurve } from '../../track/curvature';
import type { Context, Station } from '../context';
import type { Finding } from '../finding';
import { conditionWhat } from '../rules/conditions';
import { stationCurvatures } from './station-curvatures';
import { stationTwists } from './twist';

type Measured = Extract<Finding, { kind: 'measured' }>;
type PassFail = Extract<Finding, { kind: 'passFail' }>;

/** A limit or a condition of the class in force that is not met, with the finding that says so. */
export type ClassException =
  | { readonly kind: 'limit'; readonly finding: Measured; readonly exception: RuleException }
  | {
      readonly kind: 'condition';
      readonly finding: PassFail;
      readonly condition: RuleCondition;
      /** The answer, by its id. */
      readonly answer: string;
    };

type Met = {
  /** Label of the highest class met; null: not even the lowest. */
  readonly highest: string | null;
  readonly exceptions: readonly ClassException[];
};

/** What one station meets, as far as it was read. */
export type StationClass = Met & { readonly station: Station };

/** What a turnout, or the segment as a whole, meets. */
export type OtherClass = Met & {
  readonly of: 'turnout' | 'segment';
  readonly id: string;
  readonly name: string;
};

/** What is found at a station → what the rules limit. Crosslevel depends on the line and stands below. */
const LIMITED: Readonly<Record<string, RuleQuantityId>> = {
  gauge: 'gauge',
  gaugeUnderLoad: 'gaugeUnderLoad',
  alinement62: 'alinement62',
  alinement31: 'alinement31',
  profile62Left: 'profile62',
  profile62Right: 'profile62',
  profile31Left: 'profile31',
  profile31Right: 'profile31',
  warp: 'crosslevelDifference62',
  twist: 'twist3m',
  runoff31Left: 'runoff31',
  runoff31Right: 'runoff31',
  soundTies: 'tiesPer39ft',
  mismatchTreadLeft: 'railEndMismatchTread',
  mismatchTreadRight: 'railEndMismatchTread',
  mismatchGaugeLeft: 'railEndMismatchGauge',
  mismatchGaugeRight: 'railEndMismatchGauge',
};

/** Limits on these differ between tangent and curve: not compared while the case does not say which. */
const BY_LINE: ReadonlySet<RuleQuantityId> = new Set(['alinement62', 'alinement31', 'tiesPer39ft']);

type Named = NamedValue & { readonly finding: Measured };

function namedValues(context: Context, finding: Measured): readonly Named[] {
  const { alignment } = context;
  const { value, u } = finding;
  if (finding.what === 'crosslevel') {
    if (alignment === 'tangent') return [{ quantity: 'crosslevelTangent', value, u, finding }];
    // Reverse elevation counts the outer rail low; crosslevel is positive with it high.
    return alignment === 'curve'
      ? [
          { quantity: 'crosslevelReverseOnCurve', value: -value, u, finding },
          { quantity: 'elevationMax', value, u, finding },
        ]
      : [];
  }
  const quantity = LIMITED[finding.what];
  if (quantity === undefined || (alignment === null && BY_LINE.has(quantity))) return [];
  const twist = finding.what === 'twist' ? stationTwists(context).get(finding.subject?.id ?? '') : undefined;
  return [{ quantity, value, u, finding, baseM: twist?.baseM, bend: twist?.bend }];
}

/** Values by place, for findings about one kind of subject. */
function valuesBy(
  findings: readonly Finding[],
  part: Finding['part'],
  kind: SubjectKind,
  named: (finding: Measured) => readonly Named[],
): ReadonlyMap<string, readonly Named[]> {
  const byPlace = new Map<string, Named[]>();
  for (const finding of findings) {
    if (finding.kind !== 'measured' || finding.part !== part || finding.subject?.kind !== kind) continue;
    const values = named(finding);
    if (values.length === 0) continue;
    const known = byPlace.get(finding.subject.id);
    if (known) known.push(...values);
    else byPlace.set(finding.subject.id, [...values]);
  }
  return byPlace;
}

/** Answers to what the conditions and limits of a set ask, by subject. */
function answersOf(
  context: Context,
  set: RuleSet,
  kind: SubjectKind,
): (id: string) => readonly NamedAnswer[] {
  const asked = [
    ...(set.conditions ?? []).flatMap(({ quantity, onlyIf }) => [
      quantity,
      ...(onlyIf ? [onlyIf.quantity] : []),
    ]),
    ...set.limits.flatMap(({ onlyIf, notIf }) => [onlyIf, notIf].flatMap((each) => each?.quantity ?? [])),
  ];
  const quantities = [...new Set(asked)]
    .map(quantityOf)
    .filter((quantity) => quantity.subject === kind && context.read.anyRead(quantity.id));
  return (id) =>
    quantities.flatMap(({ id: quantity, slots }) =>
      (slots.length === 0 ? [''] : slots.map((slot) => slot.id)).flatMap((slot) => {
        const answer = context.read.state(kind, id, quantity, slot)?.state ?? null;
        return answer === null ? [] : [{ quantity, answer, slot }];
      }),
    );
}

/** Findings that fail, by their id: what an unmet condition leads to. */
const failing = (findings: readonly Finding[]): ReadonlyMap<string, PassFail> =>
  new Map(
    findings.flatMap((finding) =>
      finding.kind === 'passFail' && !finding.pass ? [[finding.id, finding] as const] : [],
    ),
  );

const unmetException = (
  { condition, answer }: Unmet,
  subjectId: string | null,
  failed: ReadonlyMap<string, PassFail>,
): readonly ClassException[] => {
  const id = [conditionWhat(condition.id), subjectId, answer.slot].filter(Boolean).join(':');
  const finding = failed.get(id);
  return finding === undefined ? [] : [{ kind: 'condition', finding, condition, answer: answer.answer }];
};

function exceptionsOf(
  met: ClassMet,
  classId: string | undefined,
  values: readonly Named[],
  subjectId: string | null,
  failed: ReadonlyMap<string, PassFail>,
): readonly ClassException[] {
  const own = met.classes.find((each) => each.classId === classId);
  return [
    ...[...(own?.exceptions ?? []), ...(own === undefined ? [] : met.speedExceptions)].flatMap(
      (exception) => {
        const from = values.find(
          ({ quantity, value }) => quantity === exception.quantity && value === exception.value,
        );
        return from === undefined ? [] : [{ kind: 'limit' as const, finding: from.finding, exception }];
      },
    ),
    ...(own?.unmet ?? []).flatMap((unmet) => unmetException(unmet, subjectId, failed)),
  ];
}

const labelOf = (set: RuleSet, classId: string | null): string | null =>
  classId === null ? null : (ruleClass(set, classId)?.label ?? classId);

/** A class that holds by designation alone counts only while the conditions of that designation hold. */
const designatedOf = (context: Context, segment: ClassMet | null): { readonly designated?: string } => {
  const { trackClass } = context.rules;
  if (trackClass === undefined) return {};
  const own = segment?.classes.find(({ classId }) => classId === trackClass.id);
  const lost = trackClass.designatedOnly && own !== undefined && own.exceptions.length + own.unmet.length > 0;
  return lost ? {} : { designated: trackClass.id };
};

/** The segment as a whole: what is asked of the case and not of one place. */
function segmentMet(context: Context, findings: readonly Finding[]) {
  const { track, trackClass, place } = context.rules;
  if (track === undefined) return null;
  const values = findings.flatMap((finding): readonly Named[] =>
    finding.kind === 'measured' && finding.subject === null && finding.what === 'placardedCars'
      ? [{ quantity: 'placardedCars', value: finding.value, u: finding.u, finding }]
      : [],
  );
  const answers = answersOf(context, track, 'case')(context.record.id);
  if (values.length + answers.length === 0) return null;
  const met = highestClassMet(track, values, place, {
    answers,
    ...(trackClass === undefined ? {} : { designated: trackClass.id }),
  });
  return { met, values };
}

/**
 * For every station the highest class whose limits and conditions it meets as far as it was read, and
 * those of the class in force it does not. Each condition is taken alone, as 49 CFR 213.1(a) has it; a
 * combination of conditions is the reader's to judge. `findings`: those of the same context. A warp
 * belongs to the later of its two stations. Empty while no set of limits is chosen; of the class in
 * force nothing is said while it is not known.
 */
export function stationClasses(context: Context, findings: readonly Finding[]): readonly StationClass[] {
  const { track, trackClass, place } = context.rules;
  if (track === undefined) return [];
  const byStation = valuesBy(findings, 'track', 'station', (finding) => namedValues(context, finding));
  const answersAt = answersOf(context, track, 'station');
  const failed = failing(findings);
  const designated = designatedOf(context, segmentMet(context, findings)?.met ?? null);
  const curvatures = stationCurvatures(context);
  return context.stations.flatMap((station, index): readonly StationClass[] => {
    const values = byStation.get(station.id) ?? [];
    const answers = answersAt(station.id);
    if (values.length + answers.length === 0) return [];
    const curvature = curvatures[index];
    const here: Place = {
      ...place,
      ...(curvature ? { curveDegrees: Math.abs(degreesOfCurve(curvature.value)) } : {}),
    };
    const met = highestClassMet(track, values, here, { ...designated, answers });
    if (met.compared.length + met.answered === 0) return [];
    return [
      {
        station,
        highest: labelOf(track, met.highest),
        exceptions: exceptionsOf(met, trackClass?.id, values, station.id, failed),
      },
    ];
  });
}

/**
 * What the turnouts, and the segment as a whole, meet of the rules, in the way of `stationClasses`.
 * A frog that restricts speed and not the class is among the exceptions.
 */
export function otherClasses(context: Context, findings: readonly Finding[]): readonly OtherClass[] {
  const { track, trackClass, place } = context.rules;
  if (track === undefined) return [];
  const failed = failing(findings);
  const segment = segmentMet(context, findings);
  const byTurnout = valuesBy(findings, 'turnout', 'turnout', (finding) =>
    // A frog point counts as worn down only where it was also found worn back: its limits say so.
    isRuleQuantityId(finding.what) && (finding.what !== 'frogPointDown' || finding.limits.length > 0)
      ? [{ quantity: finding.what, value: finding.value, u: finding.u, finding }]
      : [],
  );
  const answersAt = answersOf(context, track, 'turnout');
  const turnouts = standing(context.record, 'turnout').flatMap((turnout): readonly OtherClass[] => {
    const values = byTurnout.get(turnout.id) ?? [];
    const answers = answersAt(turnout.id);
    const met = highestClassMet(
      track,
      values,
      { ...place, inTurnout: true },
      { ...designatedOf(context, segment?.met ?? null), answers },
    );
    if (met.compared.length + met.answered === 0) return [];
    return [
      {
        of: 'turnout',
        id: turnout.id,
        name: nameOfEntity(context.record, 'turnout', turnout),
        highest: labelOf(track, met.highest),
        exceptions: exceptionsOf(met, trackClass?.id, values, turnout.id, failed),
      },
    ];
  });
  if (segment === null || segment.met.compared.length + segment.met.answered === 0) return turnouts;
  return [
    {
      of: 'segment',
      id: context.record.id,
      name: 'Whole segment',
      highest: labelOf(track, segment.met.highest),
      exceptions: exceptionsOf(segment.met, trackClass?.id, segment.values, null, failed),
    },
    ...turnouts,
  ];
}
