import type { LoadedCase } from '~/app/case.server';
import { instrumentChoice } from '~/app/readings/instruments-for.server';
import type { Actor } from '~/db/actor';
import {
  commitConsist,
  commitLine,
  commitStations,
  rememberMapping,
  StagedImportGone,
  type ImportRow,
  type StagedImport,
} from '~/db/imports';
import { addRecorderRun } from '~/db/recorder';
import { DISTURBANCES, type Disturbance } from '~/lib/case/record';
import type { ImportedRow } from '~/lib/case/imports/table';
import { quantityOf } from '~/lib/readings/quantities';
import { ok, refuse, type Result } from '~/lib/readings/result';
import { BY_COLUMN, type About } from './about';
import { offsetOf, sharedEntry, vehicleOf } from './about.server';
import { problemsOf, type Preview } from './preview.server';

/** How many records and how many readings or samples were recorded. */
export type Imported = { readonly records: number; readonly readings: number };

const isDisturbance = (value: unknown): value is Disturbance =>
  (DISTURBANCES as readonly unknown[]).includes(value);

function importRows(rows: readonly ImportedRow[], about: About, loaded: LoadedCase): readonly ImportRow[] {
  const shared = sharedEntry(about, loaded);
  const usual = new Map<string, string | null>();
  const instrumentOf = (quantity: string): string | null => {
    if (about.instrument !== BY_COLUMN) return shared.instrumentId;
    const known = usual.get(quantity);
    if (known !== undefined) return known;
    const found = instrumentChoice(loaded.record, quantityOf(quantity))?.usual || null;
    usual.set(quantity, found);
    return found;
  };
  return rows.map(({ fields, readings }) => ({
    fields,
    readings: readings.map(({ quantity, slot, entered, unit, value, state }) => ({
      ...shared,
      quantity,
      slot,
      entered,
      unit,
      value,
      state,
      examined: null,
      instrumentId: instrumentOf(quantity),
      disturbance: isDisturbance(fields.disturbance) ? fields.disturbance : shared.disturbance,
    })),
  }));
}

const COMMITS = { consist: commitConsist, stations: commitStations, line: commitLine } as const;

function record(
  preview: Preview,
  staged: StagedImport,
  about: About,
  loaded: LoadedCase,
  actor: Actor,
): Imported {
  const { db, caseId } = loaded;
  if (preview.type === 'recorder') {
    addRecorderRun(
      db,
      caseId,
      {
        name: about.name || staged.fileName,
        vehicleId: vehicleOf(about, loaded),
        fileName: staged.fileName,
        sha256: staged.sha256,
        clockOffsetS: offsetOf(about),
        note: about.note,
        stagedImportId: staged.id,
      },
      preview.run.series,
      actor,
    );
    return { records: 1, readings: preview.run.rows };
  }
  const rows = importRows(preview.table.rows, about, loaded);
  const { ids, readingIds } = COMMITS[preview.kind](db, caseId, staged.id, rows, actor);
  return { records: ids.length, readings: readingIds.length };
}

/** Records everything the preview shows, or nothing; remembers the railroad's column names. */
export function confirmImport(
  preview: Preview,
  staged: StagedImport,
  about: About,
  loaded: LoadedCase,
  actor: Actor,
): Result<Imported> {
  if (problemsOf(preview).length > 0)
    return refuse('Rows of the file cannot be read yet. Put them right in the file and choose it again.');
  try {
    const imported = record(preview, staged, about, loaded, actor);
    const { railroad } = loaded.record.fields;
    if (staged.mapping && typeof railroad === 'string' && railroad !== '')
      rememberMapping(loaded.db, railroad, staged.kind, staged.mapping);
    return ok(imported);
  } catch (error) {
    if (error instanceof StagedImportGone) return refuse(error.message);
    throw error;
  }
}
