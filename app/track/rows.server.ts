import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { caseFindings } from '~/app/findings/case-findings.server';
import { systemOf } from '~/app/readings/take.server';
import { standing } from '~/lib/case/current';
import type { Entity, Reading } from '~/lib/case/record';
import { classesMet } from './classes.server';
import { fieldCell, readingCell, readingKey, readingsAt } from './cell-text';
import { SHEET_COLUMNS, type SheetColumn } from './columns';

/** A station with what stands in its cells, in the order of SHEET_COLUMNS. */
export type SheetRow = {
  readonly id: string;
  readonly name: string;
  readonly cells: readonly string[];
  /** Limits that are exceeded here, by name; '' when none. */
  readonly beyond: string;
  /** Highest class of track its readings meet; '' where nothing was compared. */
  readonly meets: string;
  /** How many photos show it. */
  readonly photos: number;
};

type Cells = ReadonlyMap<string, readonly Reading[]>;

const readingsIn = (cells: Cells, station: Entity, column: SheetColumn): readonly Reading[] =>
  column.type === 'reading' ? (cells.get(readingKey(station.id, column.quantity.id, column.slot)) ?? []) : [];

/** What is found beyond a limit, by station: the findings' titles without the station's name. */
function beyondByStation(loaded: LoadedCase): ReadonlyMap<string, readonly string[]> {
  const map = new Map<string, string[]>();
  for (const finding of caseFindings(loaded)) {
    if (finding.part !== 'track' || finding.subject?.kind !== 'station' || finding.kind !== 'measured')
      continue;
    if (!finding.limits.some(({ exceeded }) => exceeded)) continue;
    const title = finding.title.replace(/,? (at )?station .*$/, '');
    const list = map.get(finding.subject.id);
    if (!list) map.set(finding.subject.id, [title]);
    else if (!list.includes(title)) list.push(title);
  }
  return map;
}

/** How many photos show each station; empty when none does. */
function photosByStation({ record }: LoadedCase): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { removed, subject } of record.photos) {
    if (removed !== null || subject?.kind !== 'station') continue;
    counts.set(subject.id, (counts.get(subject.id) ?? 0) + 1);
  }
  return counts;
}

/** All stations in order of position; those without one last, as entered. */
export const sheetRows = (loaded: LoadedCase): readonly SheetRow[] =>
  derived(loaded, 'station sheet', () => {
    const { record } = loaded;
    const system = systemOf(record.fields);
    const cells = readingsAt(record, record.readings.length);
    const beyond = beyondByStation(loaded);
    const photos = photosByStation(loaded);
    const met = new Map(classesMet(loaded).map((each) => [each.station.id, each.highest ?? 'none'] as const));
    return standing(record, 'station')
      .map((station) => ({
        station,
        at: cells.get(readingKey(station.id, 'stationPosition', ''))?.at(-1)?.value ?? Infinity,
      }))
      .sort((a, b) => (a.at === b.at ? a.station.order - b.station.order : a.at - b.at))
      .map(({ station }) => ({
        id: station.id,
        name: String(station.fields.name ?? ''),
        cells: SHEET_COLUMNS.map((column) => {
          const last = readingsIn(cells, station, column).at(-1);
          return column.type === 'field'
            ? fieldCell(column, station.fields)
            : last
              ? readingCell(last, column, system)
              : '';
        }),
        beyond: (beyond.get(station.id) ?? []).join(', '),
        meets: met.get(station.id) ?? '',
        photos: photos.get(station.id) ?? 0,
      }));
  });

/** Distance of each station from the POD, for laying out more of them. */
export function placedStations({ record }: LoadedCase) {
  const cells = readingsAt(record, record.readings.length);
  return standing(record, 'station').map(({ id, fields }) => ({
    name: String(fields.name ?? ''),
    positionM: cells.get(readingKey(id, 'stationPosition', ''))?.at(-1)?.value ?? null,
  }));
}

export type RemovedStation = { readonly id: string; readonly name: string; readonly reason: string };

/** Stations taken out of the case, with why; each can be put back from its record. */
export const removedStations = ({ record }: LoadedCase): readonly RemovedStation[] =>
  record.entities.station.flatMap(({ id, fields, removed }) =>
    removed === null ? [] : [{ id, name: String(fields.name ?? ''), reason: removed.reason }],
  );
