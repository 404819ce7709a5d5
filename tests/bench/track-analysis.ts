import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { createCase } from '~/db/cases';
import { addEntities } from '~/db/entities';
import { openDatabase } from '~/db/open';
import { addReadings, readReadings, type NewReading } from '~/db/readings';
import { readCase } from '~/db/cases';
import type { SubjectRef } from '~/lib/case/record';
import { buildContext } from '~/lib/findings/context';
import { trackFindings } from '~/lib/findings/track';
import { normalDraws } from '~/lib/readings/draws';
import { medianMs, type Measurement } from './measurement';

const ACTOR = { personId: null, name: 'Bench' };
const STATIONS = 10_000;
/** 15 ft 6 in, a quarter of the 62-ft chord. */
const SPACING_M = 4.7244;
/** Stations past the POD, which the derailment disturbed. */
const PAST = 200;
const ROUNDS = 9;
/** Before them, until both run as they do in a server that is up. */
const WARM_UP = 10;

const INCH = 25.4;
/** As a rule is read: to the nearest sixteenth. */
const sixteenths = (inches: number): number => Math.round(inches * 16) / 16;

function addSheet(db: ReturnType<typeof openDatabase>): string {
  const caseId = createCase(
    db,
    {
      number: 'B-2',
      title: 'Long sheet',
      trackClass: '3',
      alignment: 'curveLeft',
      units: 'us',
      ruleSet: 'us-49cfr213',
    },
    ACTOR,
  );
  const noise = normalDraws('long sheet', 1, 6 * STATIONS);
  const wobble = (i: number, k: number): number => noise[6 * i + k] ?? 0;
  const stations = addEntities(
    db,
    caseId,
    'station',
    Array.from({ length: STATIONS }, (_, i) => ({
      name: String(i - STATIONS + PAST),
      disturbance: i >= STATIONS - PAST ? 'disturbed' : 'undisturbed',
    })),
    ACTOR,
  );
  const inInches = (subject: SubjectRef, quantity: string, inches: number, slot = ''): NewReading => {
    const read = sixteenths(inches);
    return { ...BLANK, subject, quantity, slot, entered: String(read), unit: 'in', value: read * INCH };
  };
  addReadings(
    db,
    caseId,
    stations.flatMap((id, i): NewReading[] => {
      const at: SubjectRef = { kind: 'station', id };
      const positionM = (i - STATIONS + PAST) * SPACING_M;
      return [
        {
          ...BLANK,
          subject: at,
          quantity: 'stationPosition',
          slot: '',
          entered: String(positionM),
          unit: 'm',
          value: positionM,
        },
        inInches(at, 'gauge', 56.6 + 0.1 * wobble(i, 0)),
        inInches(at, 'crosslevel', 2.5 + 0.2 * wobble(i, 1)),
        inInches(at, 'midOrdinate62', 6 + 0.3 * wobble(i, 2)),
        inInches(at, 'profile62', 0.2 * wobble(i, 3), 'left'),
        inInches(at, 'profile62', 0.2 * wobble(i, 4), 'right'),
      ];
    }),
    ACTOR,
  );
  return caseId;
}

const BLANK = {
  state: null,
  examined: null,
  instrumentId: null,
  personId: null,
  takenAt: null,
  disturbance: 'notSaid',
  sampling: 'every',
  note: '',
} as const;

/** What one step leaves behind is not charged to the next. */
const collectGarbage = ((): (() => void) => {
  setFlagsFromString('--expose-gc');
  return runInNewContext('gc') as () => void;
})();

const timed = (work: () => unknown): number => {
  const start = performance.now();
  work();
  return performance.now() - start;
};

/**
 * Everything that is found about a track of 10,000 stations 15 ft 6 in apart (gauge, crosslevel,
 * alinement and profile of both rails: 60,000 readings) against reading its rows from SQLite, turn and
 * turn about.
 */
export function trackAnalysis(): readonly Measurement[] {
  const folder = mkdtempSync(join(tmpdir(), 'flangemark-bench-'));
  const db = openDatabase(folder);
  try {
    const caseId = addSheet(db);
    const record = readCase(db, caseId);
    if (record === null) throw new Error('The case is not there.');
    const reading: number[] = [];
    const analysing: number[] = [];
    for (let i = 0; i < WARM_UP + ROUNDS; i += 1) {
      collectGarbage();
      const rows = timed(() => readReadings(db, caseId));
      // The index of the readings serves every screen; what is measured is the track made of it.
      const context = buildContext(record, { seed: 1 });
      collectGarbage();
      const found = timed(() => trackFindings(context));
      if (i < WARM_UP) continue;
      reading.push(rows);
      analysing.push(found);
    }
    const [rowsMs, foundMs] = [medianMs(reading), medianMs(analysing)];
    return [
      {
        name: 'track-analysis',
        value: foundMs / rowsMs,
        floor: 1,
        unit: 'times reading the rows from SQLite',
        parts: [`10,000 stations ${foundMs.toFixed(0)} ms`, `60,000 rows ${rowsMs.toFixed(0)} ms`],
      },
      { name: 'track-analysis-ms', value: foundMs, floor: 200, unit: 'ms for 10,000 stations' },
    ];
  } finally {
    db.$client.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
