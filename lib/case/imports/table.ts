import { parseReading } from '../../readings/parse';
import type { UnitSystem } from '../../readings/unit';
import { DIMENSIONS, type Unit } from '../../readings/unit';
import { parseFields } from '../fields';
import type { Kind } from '../kind';
import { KINDS } from '../kinds';
import type { Entity } from '../record';
import type { CsvSheet } from './csv';
import type { ColumnMapping } from './mapping';
import { inUnit, TABLE_IMPORTS, targetsOf, type ImportTarget, type TableImportKind } from './target';

export type ImportedReading = {
  readonly quantity: string;
  readonly slot: string;
  readonly entered: string;
  readonly unit: string;
  readonly value: number | null;
  readonly state: string | null;
};

/** One row of the file as it would be recorded. `row` counts the header as row 1. */
export type ImportedRow = {
  readonly row: number;
  readonly fields: Entity['fields'];
  readonly readings: readonly ImportedReading[];
};

export type RowProblem = { readonly row: number; readonly column: string; readonly message: string };

export type TablePreview = {
  readonly rows: readonly ImportedRow[];
  /** Any entry here: nothing of the file may be recorded. */
  readonly problems: readonly RowProblem[];
  /** Possible but unusual values, to be looked at before confirming. */
  readonly questions: readonly RowProblem[];
};

const isUnit = (text: string | null): text is Unit =>
  text !== null && Object.values(DIMENSIONS).some((d) => (d.units as readonly string[]).includes(text));

type Column = {
  readonly index: number;
  readonly name: string;
  readonly target: ImportTarget;
  readonly unit: string | null;
};

/** Columns the mapping uses, with what each is matched to. */
function matchedColumns(
  sheet: CsvSheet,
  mapping: ColumnMapping,
  targets: readonly ImportTarget[],
): readonly Column[] {
  return sheet.header.flatMap((name, index) => {
    const match = mapping[name];
    const target = match && targets.find((candidate) => candidate.id === match.target);
    return match && target ? [{ index, name, target, unit: match.unit }] : [];
  });
}

function readRow(
  kind: Kind,
  columns: readonly Column[],
  cells: readonly string[],
  system: UnitSystem,
  row: number,
  common: Readonly<Record<string, string>>,
): {
  readonly imported: ImportedRow | null;
  readonly problems: RowProblem[];
  readonly questions: RowProblem[];
} {
  const problems: RowProblem[] = [];
  const questions: RowProblem[] = [];
  const readings: ImportedReading[] = [];
  const input: Record<string, string> = { ...common };
  for (const { index, name, target, unit } of columns) {
    const cell = (cells[index] ?? '').trim();
    if (target.about.type === 'field') {
      if (cell !== '') input[target.about.field.id] = cell;
      continue;
    }
    if (cell === '') {
      if (target.required)
        problems.push({ row, column: name, message: `${target.label} is empty. Enter it in the file.` });
      continue;
    }
    const { quantity, slot } = target.about;
    const asked = quantity.kind === 'measure' && isUnit(unit) ? inUnit(quantity, unit) : quantity;
    const parsed = parseReading(cell, asked, system);
    if (!parsed.ok) {
      problems.push({ row, column: name, message: parsed.message });
      continue;
    }
    if (parsed.value.question !== null) questions.push({ row, column: name, message: parsed.value.question });
    const { value, state } = parsed.value;
    readings.push({ quantity: quantity.id, slot, entered: cell, unit: parsed.value.unit, value, state });
  }
  const fields = parseFields(kind, input);
  if (!fields.ok) {
    for (const [field, message] of Object.entries(fields.errors)) {
      const column = columns.find((candidate) => candidate.target.id === field)?.name ?? field;
      problems.push({ row, column, message });
    }
    return { imported: null, problems, questions };
  }
  return { imported: { row, fields: fields.fields, readings }, problems, questions };
}

/** The field that tells one row from another; rows of a line are told apart by their places. */
export const KEY_FIELDS: Readonly<Record<TableImportKind, string | null>> = {
  consist: 'position',
  stations: 'name',
  line: null,
};

/** Positions and station names that stand twice would make two records of one thing. */
function repeated(rows: readonly ImportedRow[], importKind: TableImportKind): readonly RowProblem[] {
  const key = KEY_FIELDS[importKind];
  if (key === null) return [];
  const firstAt = new Map<string, number>();
  return rows.flatMap(({ row, fields }) => {
    const value = String(fields[key]);
    const first = firstAt.get(value);
    if (first === undefined) {
      firstAt.set(value, row);
      return [];
    }
    return [{ row, column: key, message: `${value} is already in row ${first}. Each may stand only once.` }];
  });
}

/**
 * What a consist or station file would record, row by row, with every problem named. Recording is
 * all or nothing: the caller records `rows` only when `problems` is empty and the user confirms.
 *
 * @param common fields given once for all rows, such as the state of the track when read
 */
export function previewTable(
  importKind: TableImportKind,
  sheet: CsvSheet,
  mapping: ColumnMapping,
  system: UnitSystem,
  common: Readonly<Record<string, string>>,
): TablePreview {
  const kind = KINDS[TABLE_IMPORTS[importKind].kind];
  const columns = matchedColumns(sheet, mapping, targetsOf(importKind));
  const results = sheet.rows.map((cells, index) => readRow(kind, columns, cells, system, index + 2, common));
  const rows = results.flatMap((result) => (result.imported === null ? [] : [result.imported]));
  return {
    rows,
    problems: [...results.flatMap((result) => result.problems), ...repeated(rows, importKind)].sort(
      (a, b) => a.row - b.row,
    ),
    questions: results.flatMap((result) => result.questions),
  };
}
