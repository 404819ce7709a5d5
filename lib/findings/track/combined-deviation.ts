import type { CombinedLimit } from '../../rules/rule-set';
import type { ClassLimit } from '../../rules/apply';
import { combinedDeviationMethod, combinedShare } from '../../track/combined-deviation';
import { distinct, measured, notMeasured, readingsOf, remarked, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, LimitCheck } from '../finding';
import { limitCheck } from '../limit-check';
import type { Taken } from '../reading-index';
import { stationColumn } from '../station-column';
import { atStations } from './at-station';
import { QUARTER_31_M, QUARTER_62_M } from './chord-deviation';
import { columnDeviations } from './uniform';
import { largestOf } from './worst';

const CHORDS = {
  alinement62: { name: '62-ft chord', quantity: 'midOrdinate62', pointsM: QUARTER_62_M },
  alinement31: { name: '31-ft chord', quantity: 'midOrdinate31', pointsM: QUARTER_31_M },
} as const;

/** Alinement and profile of the outer rail taken together, where the rules in force limit that. */
export function combinedDeviationFindings(context: Context): readonly Finding[] {
  const { track, place } = context.rules;
  return (track?.combined ?? []).flatMap((combined) =>
    place.onCurve && (place.qualifiedUnbalanceMm ?? 0) > combined.unbalanceOverMm
      ? combinedFindings(context, combined)
      : [],
  );
}

function combinedFindings(context: Context, combined: CombinedLimit): readonly Finding[] {
  const { alinement, profile, unbalanceOverMm } = combined;
  const limitOn = (quantity: typeof alinement | typeof profile): ClassLimit | undefined =>
    context.rules.trackLimits(quantity).find(({ limit }) => limit.unbalanceOverMm === unbalanceOverMm);
  const [onAlinement, onProfile] = [limitOn(alinement), limitOn(profile)];
  // A class without a limit on one of them has none on both.
  if (onAlinement === undefined || onProfile === undefined) return [];
  const chord = CHORDS[alinement];
  const taken = sharesOf(context, combined, {
    alinementMm: onAlinement.value,
    profileMm: onProfile.value,
  });
  const name = `Alinement and profile together, ${chord.name}`;
  const heading: Heading = {
    part: 'track',
    method: combinedDeviationMethod,
    what: `${combined.id}Worst`,
    title: `${name}, greatest share of what is allowed`,
    subject: null,
    remarks: distinct([combined.note ?? '', ...context.rules.remarks]),
  };
  const worst = largestOf(taken, (value) => value);
  if (worst === null)
    return [
      notMeasured(heading, [
        `alinement and profile of the outer rail, ${chord.name}, at three or more undisturbed stations in a row`,
      ]),
    ];
  const checks = ({ value, u }: Taken): readonly LimitCheck[] => [checkOf(combined, value, u)];
  return [
    measured(
      heading,
      'ratio',
      remarked(worst.taken, `At station ${context.stations[worst.index]?.name ?? '?'}.`),
      checks(worst.taken),
    ),
    ...atStations(
      {
        what: combined.id,
        title: `${name}, share of what is allowed, station `,
        method: combinedDeviationMethod,
        dimension: 'ratio',
      },
      context,
      (index) => taken[index],
      checks,
    ),
  ];
}

const checkOf = ({ citation, source }: CombinedLimit, value: number, u: number): LimitCheck =>
  limitCheck({ name: 'Alinement and profile together', citation, source, sense: 'max', limit: 1, value, u });

/** At each station of the context; null where one of the two was not read on the outer rail. */
function sharesOf(
  context: Context,
  { alinement, profile, factor }: CombinedLimit,
  limits: { readonly alinementMm: number; readonly profileMm: number },
): readonly (Taken | null)[] {
  const { outer } = context.sides;
  const { quantity, pointsM } = CHORDS[alinement];
  if (outer === null) return [];
  const line = columnDeviations(context, stationColumn(context, quantity), pointsM);
  const level = columnDeviations(context, stationColumn(context, profile, outer), pointsM);
  return context.stations.map((_, index) => {
    const [a, p] = [line.taken(index), level.taken(index)];
    if (a === null || p === null) return null;
    return {
      value: combinedShare({ alinementMm: a.value, profileMm: p.value }, limits, factor),
      u: factor * Math.hypot(a.u / limits.alinementMm, p.u / limits.profileMm),
      readings: readingsOf(a, p),
      remarks: distinct([...a.remarks, ...p.remarks]),
    };
  });
}
