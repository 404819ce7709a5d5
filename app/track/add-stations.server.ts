import { z } from 'zod';
import type { LoadedCase } from '~/app/case.server';
import { systemOf } from '~/app/readings/take.server';
import { readSharedEntry } from '~/app/readings/shared-entry';
import { instrumentChoice } from '~/app/readings/instruments-for.server';
import type { Actor } from '~/db/actor';
import { saveStationSheet } from '~/db/station-sheet';
import { quantityOf } from '~/lib/readings/quantities';
import type { Result } from '~/lib/readings/result';
import { layOut, SIDES, type LaidOut } from './lay-out';
import { placedStations } from './rows.server';

export type LaidOutAnswer = { readonly message: string; readonly values: Readonly<Record<string, string>> };

const text = (form: FormData, name: string): string => String(form.get(name) ?? '').trim();

/** Adds the stations that were laid out, with their distances; or says what to enter instead. */
export function addStations(form: FormData, loaded: LoadedCase, actor: Actor): Result<readonly LaidOut[]> {
  const { db, caseId, record } = loaded;
  const laid = layOut(
    placedStations(loaded),
    {
      count: text(form, 'count'),
      spacing: text(form, 'spacing'),
      side: z.enum(SIDES).catch('before').parse(text(form, 'side')),
    },
    systemOf(record.fields),
  );
  if (!laid.ok) return laid;
  const { entry } = readSharedEntry(form, record);
  const instrumentId = instrumentChoice(record, quantityOf('stationPosition'))?.usual || null;
  const saved = saveStationSheet(
    db,
    caseId,
    {
      added: laid.value.map(({ name, entered, unit, value }) => ({
        fields: { name, disturbance: entry.disturbance },
        readings: [
          {
            ...entry,
            quantity: 'stationPosition',
            slot: '',
            entered,
            unit,
            value,
            state: null,
            examined: null,
            instrumentId,
            note: `Laid out every ${text(form, 'spacing')} from the POD`,
          },
        ],
      })),
      fields: [],
      readings: [],
      corrections: [],
      withdrawals: [],
      reason: '',
    },
    actor,
  );
  return saved.ok ? laid : saved;
}
