import type { RuleLimit, RuleSet } from './rule-set';

/** A limit of the railroad's own, with the classes it names: those with an amount, and those with none said. */
export type OwnLimit = { readonly limit: RuleLimit; readonly named: readonly string[] };

const LINES = ['tangent', 'curve'] as const;
type Line = (typeof LINES)[number];

const on = ({ applies }: RuleLimit, line: Line): boolean => applies === 'both' || applies === line;

/** Classes of a base limit that no own line names on tangent, or on curves. */
function silentIn(own: readonly OwnLimit[], base: RuleLimit, line: Line): readonly string[] {
  if (!on(base, line)) return [];
  const same = own.filter(
    ({ limit }) => limit.quantity === base.quantity && limit.sense === base.sense && on(limit, line),
  );
  return Object.keys(base.asPrinted).filter((id) => !same.some(({ named }) => named.includes(id)));
}

const sameMembers = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((each) => b.includes(each));

/** The limit for these classes alone, on this kind of line. */
function part(
  base: RuleLimit,
  classes: readonly string[],
  applies: RuleLimit['applies'],
  id: string,
): RuleLimit {
  return {
    ...base,
    id,
    applies,
    perClass: Object.fromEntries(
      Object.entries(base.perClass).map(([each, value]) => [each, classes.includes(each) ? value : null]),
    ),
    asPrinted: Object.fromEntries(Object.entries(base.asPrinted).filter(([each]) => classes.includes(each))),
  };
}

/**
 * The limits of a base set that the railroad's own lines do not name, each saying where it is from. An
 * own line names a quantity and a sense for the classes it gives an amount, or a dash, on the kind of
 * line it holds for; all else is the base's.
 */
export function silentLimits(own: readonly OwnLimit[], base: RuleSet): readonly RuleLimit[] {
  return base.limits.flatMap((limit): readonly RuleLimit[] => {
    const from = { ...limit, from: base.name };
    const tangent = silentIn(own, limit, 'tangent');
    const curve = silentIn(own, limit, 'curve');
    if (limit.applies !== 'both' || sameMembers(tangent, curve)) {
      const classes = limit.applies === 'curve' ? curve : tangent;
      return classes.length === 0 ? [] : [part(from, classes, limit.applies, limit.id)];
    }
    return (
      [
        ['tangent', tangent],
        ['curve', curve],
      ] as const
    ).flatMap(([line, classes]) =>
      classes.length === 0 ? [] : [part(from, classes, line, `${limit.id}.${line}`)],
    );
  });
}

/** How an own amount stands to the base's; `dropped`: own says none where the base has one. */
export type Standing = 'stricter' | 'looser' | 'same' | 'dropped' | 'alone';

export type BesideBase = {
  readonly classId: string;
  readonly own: string;
  readonly base: string;
  readonly standing: Standing;
};

function standingOf(own: RuleLimit, base: RuleLimit, classId: string): Standing {
  const [mine, theirs] = [own.perClass[classId] ?? null, base.perClass[classId] ?? null];
  if (mine === null) return theirs === null ? 'same' : 'dropped';
  if (theirs === null) return 'alone';
  if (mine === theirs) return own.strict === base.strict ? 'same' : own.strict ? 'looser' : 'stricter';
  return mine < theirs === (own.sense === 'max') ? 'stricter' : 'looser';
}

/**
 * An own limit beside each limit of the base set on the same thing, class by class. It is shown and
 * not decided which of the two counts; the text in force does.
 */
export function besideBase(
  own: RuleLimit,
  base: RuleSet,
): readonly { readonly limit: RuleLimit; readonly classes: readonly BesideBase[] }[] {
  return base.limits
    .filter(
      (limit) =>
        limit.quantity === own.quantity &&
        limit.sense === own.sense &&
        LINES.some((line) => on(limit, line) && on(own, line)),
    )
    .map((limit) => ({
      limit,
      classes: base.classes.flatMap(({ id }) => {
        const standing = standingOf(own, limit, id);
        const nothing = own.perClass[id] == null && limit.perClass[id] == null;
        return nothing
          ? []
          : [{ classId: id, own: own.asPrinted[id] ?? '–', base: limit.asPrinted[id] ?? '–', standing }];
      }),
    }));
}

/** One line of a comparison with the base set: classes with the same amounts together. */
export type BesideRow = {
  readonly own: RuleLimit;
  readonly base: RuleLimit;
  readonly classIds: readonly string[];
  readonly ownPrinted: string;
  readonly basePrinted: string;
  readonly standing: Standing;
};

const isFilled = (set: RuleSet, base: RuleLimit, classId: string): boolean =>
  set.limits.some(
    ({ from, quantity, sense, perClass }) =>
      from !== set.name &&
      quantity === base.quantity &&
      sense === base.sense &&
      typeof perClass[classId] === 'number',
  );

/** Every own limit of a set beside the base's on the same thing. */
export function besideRows(set: RuleSet, base: RuleSet): readonly BesideRow[] {
  const rows = new Map<string, BesideRow>();
  for (const own of set.limits.filter(({ from }) => from === set.name)) {
    for (const { limit, classes } of besideBase(own, base)) {
      for (const each of classes) {
        // Not named here, and the base's holds: there is nothing to compare.
        if (own.perClass[each.classId] === null && isFilled(set, limit, each.classId)) continue;
        const key = [own.id, limit.id, each.own, each.base].join('|');
        const before = rows.get(key);
        rows.set(key, {
          own,
          base: limit,
          classIds: [...(before?.classIds ?? []), each.classId],
          ownPrinted: each.own,
          basePrinted: each.base,
          standing: each.standing,
        });
      }
    }
  }
  return [...rows.values()];
}
