import type { LoadedCase } from '~/app/case.server';
import { systemOf } from '~/app/readings/take.server';
import type { ImportKind } from '~/db/imports';
import { standing } from '~/lib/case/current';
import type { CsvSheet } from '~/lib/case/imports/csv';
import type { ColumnMapping } from '~/lib/case/imports/mapping';
import { lineProblems } from '~/lib/case/imports/line-problems';
import { previewRecorder, type RecorderPreview } from '~/lib/case/imports/recorder';
import { previewTable, type RowProblem, type TablePreview } from '~/lib/case/imports/table';
import type { TableImportKind } from '~/lib/case/imports/target';
import { standingLineRows } from '~/lib/case/line-rows';
import { recorderChannel } from '~/lib/case/recorder';
import { formatMeasure } from '~/lib/readings/format';
import { ok, type Result } from '~/lib/readings/result';
import { unitLabel } from '~/lib/readings/spelling';
import { DIMENSIONS, type Unit } from '~/lib/readings/unit';
import type { About } from './about';
import { importTargets } from './matching.server';

export type Preview =
  | { readonly type: 'table'; readonly kind: TableImportKind; readonly table: TablePreview }
  | { readonly type: 'recorder'; readonly run: RecorderPreview };

const KEY = {
  consist: { entity: 'vehicle', field: 'position' },
  stations: { entity: 'station', field: 'name' },
} as const;

const columnOf = (mapping: ColumnMapping, wanted: string): string =>
  Object.entries(mapping).find(([, { target }]) => target === wanted)?.[0] ?? wanted;

/** Rows for something the case has already: importing them would make two records of one thing. */
function alreadyThere(
  kind: TableImportKind,
  { rows }: TablePreview,
  mapping: ColumnMapping,
  { record }: LoadedCase,
): readonly RowProblem[] {
  if (kind === 'line') return lineProblems(rows, columnOf(mapping, 'lineFrom'), standingLineRows(record));
  const { entity, field } = KEY[kind];
  const there = new Set(standing(record, entity).map(({ fields }) => String(fields[field])));
  const column = columnOf(mapping, field);
  return rows.flatMap(({ row, fields }) => {
    const value = String(fields[field]);
    if (!there.has(value)) return [];
    const what = kind === 'consist' ? `a vehicle at position ${value}` : `a station ${value}`;
    return [
      {
        row,
        column,
        message: `The case already has ${what}. Take the row out of the file, or remove that one first.`,
      },
    ];
  });
}

/** What confirming would record, with every problem named by row and column. */
export function previewImport(
  kind: ImportKind,
  sheet: CsvSheet,
  mapping: ColumnMapping,
  about: About,
  loaded: LoadedCase,
): Result<Preview> {
  const system = systemOf(loaded.record.fields);
  if (kind === 'recorder') {
    const run = previewRecorder(sheet, mapping, system);
    return run.ok ? ok({ type: 'recorder', run: run.value }) : run;
  }
  const table = previewTable(
    kind,
    sheet,
    mapping,
    system,
    kind === 'stations' ? { disturbance: about.disturbance } : {},
  );
  const problems = [...table.problems, ...alreadyThere(kind, table, mapping, loaded)];
  return ok({ type: 'table', kind, table: { ...table, problems: problems.sort((a, b) => a.row - b.row) } });
}

export const problemsOf = (preview: Preview): readonly RowProblem[] =>
  preview.type === 'table' ? preview.table.problems : preview.run.problems;

export type PreviewView = {
  /** "46 stations with 512 readings". */
  readonly summary: string;
  readonly problems: readonly RowProblem[];
  readonly moreProblems: number;
  readonly questions: readonly RowProblem[];
  readonly moreQuestions: number;
  readonly notes: readonly string[];
  readonly header: readonly string[];
  readonly rows: readonly { readonly row: number; readonly cells: readonly string[] }[];
  readonly channels: readonly {
    readonly label: string;
    readonly unit: string;
    readonly range: string;
    readonly empty: number;
  }[];
};

const MOST_LISTED = 100;
const FIRST_ROWS = 8;

const plural = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

const ROW_NAMES: Readonly<Record<TableImportKind, readonly [one: string, many: string]>> = {
  consist: ['vehicle', 'vehicles'],
  stations: ['station', 'stations'],
  line: ['row of the line', 'rows of the line'],
};

function summaryOf(preview: Preview): string {
  if (preview.type === 'recorder') {
    const time = preview.run.series.find(({ channel }) => channel === 'time')?.values;
    const seconds = time ? (time.at(-1) ?? 0) - (time[0] ?? 0) : 0;
    return `${plural(preview.run.rows, 'sample', 'samples')} over ${formatMeasure(seconds, { dimension: 'time', unit: 's' })}`;
  }
  const { rows } = preview.table;
  const readings = rows.reduce((sum, row) => sum + row.readings.length, 0);
  const [one, many] = ROW_NAMES[preview.kind];
  return `${plural(rows.length, one, many)} with ${plural(readings, 'reading', 'readings')}`;
}

function channelViews({ series }: RecorderPreview): PreviewView['channels'] {
  return series.flatMap(({ channel, unit, values }) => {
    const about = recorderChannel(channel);
    if (!about) return [];
    const known = values.filter((value) => !Number.isNaN(value));
    const isUnit = (text: string): text is Unit =>
      (DIMENSIONS[about.dimension].units as readonly string[]).includes(text);
    const show = (value: number) =>
      isUnit(unit)
        ? formatMeasure(value, { dimension: about.dimension, unit, form: 'decimal' })
        : String(value);
    const low = known.reduce((least, value) => Math.min(least, value), Infinity);
    const high = known.reduce((most, value) => Math.max(most, value), -Infinity);
    return [
      {
        label: about.label,
        unit: isUnit(unit) ? unitLabel(unit) : unit,
        range: known.length === 0 ? 'nothing' : `${show(low)} to ${show(high)}`,
        empty: values.length - known.length,
      },
    ];
  });
}

/** The preview in words, with the first rows as they stand in the file under what they were matched to. */
export function previewView(
  kind: ImportKind,
  sheet: CsvSheet,
  mapping: ColumnMapping,
  preview: Preview,
): PreviewView {
  const targets = importTargets(kind);
  const matched = sheet.header.flatMap((name, index) => {
    const match = mapping[name];
    const target = targets.find(({ id }) => id === match?.target);
    return match && target ? [{ name, index, label: target.label, unit: match.unit }] : [];
  });
  const problems = problemsOf(preview);
  const questions = preview.type === 'table' ? preview.table.questions : [];
  return {
    summary: summaryOf(preview),
    problems: problems.slice(0, MOST_LISTED),
    moreProblems: Math.max(0, problems.length - MOST_LISTED),
    questions: questions.slice(0, MOST_LISTED),
    moreQuestions: Math.max(0, questions.length - MOST_LISTED),
    notes: preview.type === 'recorder' ? preview.run.notes : [],
    header: matched.map(({ label, unit }) => (unit && unit !== '1' ? `${label}, ${unit}` : label)),
    rows: sheet.rows.slice(0, FIRST_ROWS).map((cells, index) => ({
      row: index + 2,
      cells: matched.map((column) => cells[column.index] ?? ''),
    })),
    channels: preview.type === 'recorder' ? channelViews(preview.run) : [],
  };
}
