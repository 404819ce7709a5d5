import { DIMENSIONS, type Unit } from '../../readings/unit';

/** Column of the file (its own name) → what it holds, and the unit of its bare numbers. */
export type ColumnMatch = { readonly target: string; readonly unit: string | null };
export type ColumnMapping = Readonly<Record<string, ColumnMatch>>;

/** What a match can be made to; import targets and recorder channels both are. */
export type Matchable = {
  readonly id: string;
  readonly label: string;
  readonly units: readonly Unit[];
  /** Other names such a column is found under, in lower case. */
  readonly alsoCalled?: readonly string[];
};

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();

const UNITS = new Set<string>(
  Object.values(DIMENSIONS).flatMap((dimension) => dimension.units as readonly string[]),
);

/** "Gauge (in)" or "speed_mph" → the unit its name states, when the target can be in it. */
function statedUnit(header: string, units: readonly Unit[]): Unit | null {
  const words = header.match(/[A-Za-z°%/]+/g) ?? [];
  for (const word of words.reverse()) {
    const unit = units.find((candidate) => candidate.toLowerCase() === word.toLowerCase());
    if (unit !== undefined && UNITS.has(unit)) return unit;
  }
  // "Radius (m)": the words of the unit stand apart.
  const said = new Set(words.map((word) => word.toLowerCase()));
  return (
    units.find(
      (unit) => unit.includes(' ') && unit.split(' ').every((word) => said.has(word.toLowerCase())),
    ) ?? null
  );
}

const withoutUnit = (header: string, units: readonly Unit[]): string => {
  const unit = statedUnit(header, units);
  if (unit?.includes(' ')) return plain(header.replace(/[[(][^\])]*[\])]\s*$/, ''));
  return plain(
    unit === null
      ? header
      : header.replace(new RegExp(`[\\[(_\\s]*${unit.replace('/', '\\/')}[\\])]*\\s*$`, 'i'), ''),
  );
};

/**
 * A first match of a file's columns: the names remembered for this railroad where they are still
 * there, then names that equal a target's id, label or other name. Columns it does not know stay
 * unmatched, for the user to say; no target is used twice.
 */
export function proposeMapping(
  header: readonly string[],
  targets: readonly Matchable[],
  remembered: ColumnMapping | null,
  usualUnit: (targetId: string) => string | null,
): ColumnMapping {
  const used = new Set<string>();
  const mapping: Record<string, ColumnMatch> = {};
  const take = (column: string, match: ColumnMatch): void => {
    used.add(match.target);
    mapping[column] = match;
  };
  for (const column of header) {
    const known = remembered?.[column];
    if (
      known !== undefined &&
      !used.has(known.target) &&
      targets.some((target) => target.id === known.target)
    ) {
      take(column, known);
    }
  }
  for (const column of header) {
    if (mapping[column] !== undefined) continue;
    const named = targets.filter(
      (target) =>
        !used.has(target.id) &&
        [plain(target.id), plain(target.label), ...(target.alsoCalled ?? [])].includes(
          withoutUnit(column, target.units),
        ),
    );
    // "Dynamic brake (%)" is a share and no notch: the unit it states decides between two of one name.
    const match = named.find(({ units }) => statedUnit(column, units) !== null) ?? named[0];
    if (match === undefined) continue;
    take(column, { target: match.id, unit: statedUnit(column, match.units) ?? usualUnit(match.id) });
  }
  return mapping;
}

/** What is wrong with a mapping, in words for the person choosing; empty when it can be used. */
export function mappingProblems(
  mapping: ColumnMapping,
  targets: readonly (Matchable & { readonly required: boolean })[],
): readonly string[] {
  const used = Object.values(mapping).map((match) => match.target);
  const missing = targets
    .filter((target) => target.required && !used.includes(target.id))
    .map((target) => `Say which column holds “${target.label}”.`);
  const twice = [...new Set(used.filter((id, index) => used.indexOf(id) !== index))].map(
    (id) =>
      `“${targets.find((target) => target.id === id)?.label ?? id}” is matched to two columns. Keep one of them.`,
  );
  return [...missing, ...twice];
}
