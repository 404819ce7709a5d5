import { ruleClass } from '../../rules/apply';
import { highestClassMet, type NamedValue, type RuleException } from '../../rules/class-met';
import type { RuleQuantityId } from '../../rules/rule-quantity';
import { degreesOfCurve } from '../../track/curvature';
import type { Context, Station } from '../context';
import type { Finding } from '../finding';
import { stationCurvatures } from './station-curvatures';

type Measured = Extract<Finding, { kind: 'measured' }>;

/** A limit of the class in force that a station does not meet, with the finding it was held against. */
export type StationException = { readonly finding: Measured; readonly exception: RuleException };

/** What one station meets, as far as it was read. */
export type StationClass = {
  readonly station: Station;
  /** Label of the highest class met; null: not even the lowest. */
  readonly highest: string | null;
  readonly exceptions: readonly StationException[];
};

/** What is found at a station → what the rules limit. Crosslevel depends on the line and stands below. */
const LIMITED: Readonly<Record<string, RuleQuantityId>> = {
  gauge: 'gauge',
  gaugeUnderLoad: 'gaugeUnderLoad',
  alinement62: 'alinement62',
  alinement31: 'alinement31',
  profile62Left: 'profile62',
  profile62Right: 'profile62',
  warp: 'crosslevelDifference62',
  runoff31Left: 'runoff31',
  runoff31Right: 'runoff31',
  soundTies: 'tiesPer39ft',
};

/** Limits on these differ between tangent and curve: not compared while the case does not say which. */
const BY_LINE: ReadonlySet<RuleQuantityId> = new Set(['alinement62', 'alinement31', 'tiesPer39ft']);

type Named = NamedValue & { readonly finding: Measured };

function namedValues({ alignment }: Context, finding: Measured): readonly Named[] {
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
  return quantity === undefined || (alignment === null && BY_LINE.has(quantity))
    ? []
    : [{ quantity, value, u, finding }];
}

/**
 * For every station the highest class whose limits all its values meet, and the limits of the class
 * in force it does not. Each condition is taken alone, as 49 CFR 213.1(a) has it; a combination of
 * conditions is the reader's to judge. `findings`: those of the same context. A warp belongs to the
 * later of its two stations. Empty while no set of limits is chosen; of the class in force nothing
 * is said while it is not known.
 */
export function stationClasses(context: Context, findings: readonly Finding[]): readonly StationClass[] {
  const { track, trackClass } = context.rules;
  if (track === undefined) return [];
  const byStation = new Map<string, Named[]>();
  for (const finding of findings) {
    if (finding.kind !== 'measured' || finding.part !== 'track' || finding.subject?.kind !== 'station')
      continue;
    const named = namedValues(context, finding);
    if (named.length === 0) continue;
    const known = byStation.get(finding.subject.id);
    if (known) known.push(...named);
    else byStation.set(finding.subject.id, [...named]);
  }
  const curvatures = stationCurvatures(context);
  return context.stations.flatMap((station, index): readonly StationClass[] => {
    const values = byStation.get(station.id);
    if (values === undefined) return [];
    const curvature = curvatures[index];
    const met = highestClassMet(
      track,
      values,
      {
        onCurve: context.alignment === 'curve',
        ...(curvature ? { curveDegrees: Math.abs(degreesOfCurve(curvature.value)) } : {}),
      },
      trackClass === undefined ? {} : { designated: trackClass.id },
    );
    if (met.compared.length === 0) return [];
    const own = met.classes.find(({ classId }) => classId === trackClass?.id);
    return [
      {
        station,
        highest: met.highest === null ? null : (ruleClass(track, met.highest)?.label ?? met.highest),
        exceptions: (own?.exceptions ?? []).flatMap((exception) => {
          const from = values.find(
            ({ quantity, value }) => quantity === exception.quantity && value === exception.value,
          );
          return from === undefined ? [] : [{ finding: from.finding, exception }];
        }),
      },
    ];
  });
}
