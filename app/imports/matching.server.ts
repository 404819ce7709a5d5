import type { LoadedCase } from '~/app/case.server';
import { targetBox, unitBox } from './boxes';
import { systemOf } from '~/app/readings/take.server';
import { recallMapping, type ImportKind, type StagedImport } from '~/db/imports';
import type { CsvSheet } from '~/lib/case/imports/csv';
import {
  mappingProblems,
  proposeMapping,
  type ColumnMapping,
  type Matchable,
} from '~/lib/case/imports/mapping';
import { RECORDER_TARGETS, usualChannelUnit } from '~/lib/case/imports/recorder';
import { targetsOf, usualUnit } from '~/lib/case/imports/target';
import { unitLabel } from '~/lib/readings/spelling';
import type { UnitSystem } from '~/lib/readings/unit';

export type Target = Matchable & { readonly required: boolean };

export const importTargets = (kind: ImportKind): readonly Target[] =>
  kind === 'recorder' ? RECORDER_TARGETS : targetsOf(kind);

function usualUnitOf(kind: ImportKind, id: string, system: UnitSystem): string | null {
  if (kind === 'recorder') return usualChannelUnit(id, system);
  const target = targetsOf(kind).find((each) => each.id === id);
  return target ? usualUnit(target, system) : null;
}

/** What is chosen so far, else what the railroad chose before, else what the names say. */
export function mappingFor({ db, record }: LoadedCase, staged: StagedImport, sheet: CsvSheet): ColumnMapping {
  if (staged.mapping) return staged.mapping;
  const { railroad, units } = record.fields;
  const system = units === 'metric' ? 'metric' : 'us';
  const remembered =
    typeof railroad === 'string' && railroad !== '' ? recallMapping(db, railroad, staged.kind) : null;
  return proposeMapping(sheet.header, importTargets(staged.kind), remembered, (id) =>
    usualUnitOf(staged.kind, id, system),
  );
}

export type Matched = { readonly mapping: ColumnMapping; readonly problems: readonly string[] };

/** The matching as it was sent, and what is still wrong with it. */
export function readMatching(
  form: FormData,
  kind: ImportKind,
  sheet: CsvSheet,
  { record }: LoadedCase,
): Matched {
  const targets = importTargets(kind);
  const mapping: Record<string, ColumnMapping[string]> = {};
  const problems: string[] = [];
  sheet.header.forEach((name, index) => {
    const target = targets.find(({ id }) => id === form.get(targetBox(index)));
    if (!target) return;
    const asked = String(form.get(unitBox(index)) ?? '');
    const unit = target.units.find((each) => each === asked);
    if (asked !== '' && !unit && target.units.length > 0)
      problems.push(
        `“${target.label}” cannot be in “${asked}”. Choose one of: ${target.units.map(unitLabel).filter(Boolean).join(', ')}.`,
      );
    mapping[name] = {
      target: target.id,
      unit:
        target.units.length === 0 ? null : (unit ?? usualUnitOf(kind, target.id, systemOf(record.fields))),
    };
  });
  return { mapping, problems: [...mappingProblems(mapping, targets), ...problems] };
}

export type MatchingView = {
  readonly columns: readonly {
    readonly name: string;
    readonly samples: readonly string[];
    readonly target: string;
    readonly unit: string;
  }[];
  readonly targets: readonly {
    readonly id: string;
    readonly label: string;
    readonly units: readonly string[];
  }[];
  /** Every unit any of the targets can be in. */
  readonly units: readonly { readonly id: string; readonly label: string }[];
  readonly rows: number;
};

const SAMPLES = 3;

export function matchingView(kind: ImportKind, sheet: CsvSheet, mapping: ColumnMapping): MatchingView {
  const targets = importTargets(kind);
  const units = [...new Set(targets.flatMap((target) => target.units))].filter((unit) => unit !== '1');
  return {
    columns: sheet.header.map((name, index) => ({
      name,
      samples: sheet.rows
        .map((row) => (row[index] ?? '').trim())
        .filter((cell) => cell !== '')
        .slice(0, SAMPLES)
        .map((cell) => (cell.length > 40 ? `${cell.slice(0, 40)}…` : cell)),
      target: mapping[name]?.target ?? '',
      unit: mapping[name]?.unit ?? '',
    })),
    targets: targets.map(({ id, label, required, units: own }) => ({
      id,
      label: required ? `${label} (needed)` : label,
      units: own.filter((unit) => unit !== '1'),
    })),
    units: units.map((unit) => ({ id: unit, label: unitLabel(unit) })),
    rows: sheet.rows.length,
  };
}
