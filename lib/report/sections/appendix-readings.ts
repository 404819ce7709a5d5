import { nameOf } from '../../case/name-of';
import { standing } from '../../case/current';
import type { Reading } from '../../case/record';
import { GROUPS } from '../../readings/quantities';
import type { Quantity } from '../../readings/quantity';
import { absent } from '../pieces/absent';
import { tracesTable } from '../pieces/traces-table';
import type { Report, Section } from '../report';
import type { Row, Table } from '../table/table';
import { faint, mono, type Run } from '../type/inline';
import type { Writer } from '../writer';
import {
  DISTURBANCE_WORDS,
  enteredText,
  fieldOf,
  nameOfPerson,
  quantityText,
  shortTime,
  together,
  valueText,
} from '../words';

const SAMPLING: Readonly<Record<Reading['sampling'], string>> = {
  every: '',
  worst: 'the worst found',
  picked: 'picked out',
  notSaid: '',
};

type SheetColumn = { readonly quantity: Quantity; readonly slot: string; readonly head: string };

function sheetColumns(readings: readonly Reading[]): readonly SheetColumn[] {
  const read = new Set(readings.map(({ quantity, slot }) => `${quantity}|${slot}`));
  return GROUPS.flatMap(({ quantities }) => quantities)
    .filter(({ subject, kind }) => subject === 'station' && kind !== 'observation')
    .flatMap((quantity) => {
      const slots = quantity.slots.length === 0 ? [{ id: '', label: '' }] : quantity.slots;
      return slots
        .filter(({ id }) => read.has(`${quantity.id}|${id}`))
        .map(({ id, label }) => ({
          quantity,
          slot: id,
          head: label === '' ? quantity.short : `${quantity.short}, ${label.toLowerCase()}`,
        }));
    });
}

/** Most columns of readings that can be read side by side on a page. */
const MOST_COLUMNS = 14;

/** The columns in as few parts of about one size as a page can hold. */
function inParts<T>(all: readonly T[]): readonly (readonly T[])[] {
  const parts = Math.max(1, Math.ceil(all.length / MOST_COLUMNS));
  const size = Math.ceil(all.length / parts);
  return Array.from({ length: parts }, (_, i) => all.slice(i * size, (i + 1) * size));
}

/**
 * The stations as the sheet they were read on: one row each, in order along the track. A sheet wider
 * than a page is printed in parts; state, joint and note stand in the last.
 */
function stationSheets(report: Report): readonly Table[] {
  const { record } = report;
  const stations = standing(record, 'station').map((station) => ({
    station,
    readings: report.readingsOf({ kind: 'station', id: station.id }),
  }));
  const columns = sheetColumns(stations.flatMap(({ readings }) => readings));
  const last = (readings: readonly Reading[], quantity: string, slot: string): Reading | undefined =>
    readings.findLast((each) => each.quantity === quantity && each.slot === slot);
  const at = (readings: readonly Reading[]): number =>
    last(readings, 'stationPosition', '')?.value ?? Infinity;
  const sorted = [...stations].sort((a, b) => at(a.readings) - at(b.readings));
  const parts = inParts(columns);
  return parts.map((part, index) => {
    const isLast = index === parts.length - 1;
    return {
      size: 7,
      columns: [
        { head: 'Station' },
        ...part.map(({ head }) => ({ head, align: 'right' as const })),
        ...(isLast ? [{ head: 'State' }, { head: 'Joint' }, { head: 'Note' }] : []),
      ],
      rows: sorted.map(({ station, readings }): Row => ({
        faint: station.fields.disturbance === 'disturbed',
        cells: [
          String(station.fields.name ?? ''),
          ...part.map(({ quantity, slot }) => {
            const reading = last(readings, quantity.id, slot);
            return reading === undefined
              ? ''
              : reading.state === null
                ? together(reading.entered)
                : enteredText(reading);
          }),
          ...(isLast
            ? [
                DISTURBANCE_WORDS[(station.fields.disturbance ?? 'notSaid') as Reading['disturbance']] ?? '',
                fieldOf(record, 'station', station, 'joint').toLowerCase(),
                String(station.fields.note ?? ''),
              ]
            : []),
        ],
      })),
    };
  });
}

/** What the uncertainties rest on, each said once and referred to by a letter and number. */
function basisIndex() {
  const numbers = new Map<string, string>();
  return {
    of(basis: string): string {
      if (basis === '') return '';
      const known = numbers.get(basis);
      if (known !== undefined) return known;
      const next = `u${numbers.size + 1}`;
      numbers.set(basis, next);
      return next;
    },
    all: () => [...numbers],
  };
}

function correctionRuns(
  reading: Reading,
  replacedBy: ReadonlyMap<string, Reading>,
  report: Report,
): readonly Run[] {
  const number = (id: string): Run => {
    const text = report.refs.ofReading(id) ?? '?';
    return { text, ink: 'link', goTo: text };
  };
  const after = replacedBy.get(reading.id);
  return [
    ...(reading.replaces === null
      ? []
      : [
          { text: reading.withdrawn ? 'Withdraws ' : 'Corrects ' },
          number(reading.replaces),
          { text: reading.reason === null ? '. ' : `: ${reading.reason}. ` },
        ]),
    ...(after === undefined
      ? []
      : [{ text: after.withdrawn ? 'Withdrawn by ' : 'Corrected by ' }, number(after.id), { text: '. ' }]),
  ];
}

function everyReading(report: Report, basis: ReturnType<typeof basisIndex>): Table {
  const { record, refs, system } = report;
  const replacedBy = new Map(
    record.readings.flatMap((reading) =>
      reading.replaces === null ? [] : [[reading.replaces, reading] as const],
    ),
  );
  return {
    size: 7,
    columns: [
      { head: 'No.', width: 34 },
      { head: 'Of', share: 0.12 },
      { head: 'Reading', share: 0.2 },
      { head: 'As entered', share: 0.115 },
      { head: `Value, ${together('± U (k = 2)')}`, align: 'right' },
      { head: 'u', width: 24 },
      { head: 'Taken by' },
      { head: 'Taken at' },
      { head: 'Instrument' },
      { head: 'State' },
      { head: 'Remarks' },
    ],
    rows: record.readings.map((reading): Row => {
      const number = refs.ofReading(reading.id) ?? '';
      const instrument = report.instrument(reading.instrumentId);
      const value = valueText(reading, instrument, system);
      const replaced = replacedBy.has(reading.id);
      const notes = [SAMPLING[reading.sampling], reading.note].filter(Boolean).join('. ');
      return {
        anchor: number,
        faint: replaced || reading.withdrawn,
        cells: [
          number,
          nameOf(record, reading.subject),
          quantityText(reading.quantity, reading.slot),
          enteredText(reading),
          value.text,
          [faint(basis.of(value.basis))],
          together(nameOfPerson(record, reading.personId) ?? '–'),
          reading.takenAt === null ? '–' : shortTime(reading.takenAt),
          instrument === undefined ? '–' : String(instrument.fields.name ?? ''),
          DISTURBANCE_WORDS[reading.disturbance],
          [...correctionRuns(reading, replacedBy, report), { text: notes }],
        ],
      };
    }),
  };
}

export const appendixReadings: Section = {
  id: 'readings',
  title: 'Every reading',
  kind: 'appendix',
  startsPage: true,
  orientation: 'landscape',
  async build(report, writer) {
    const { record } = report;
    if (record.readings.length === 0) absent(writer, 'Any reading');
    else await readings(report, writer);
    if (record.traces.length === 0) return;
    writer.heading('Every outline');
    writer.text(
      'The line of an outline is never changed: a correction of how it lies is kept beside it, with its reason. Its file is kept with the case under the hash given here.',
    );
    writer.table('Outlines of wheels, rails and points', tracesTable(report));
  },
};

async function readings(report: Report, writer: Writer): Promise<void> {
  const { record } = report;
  if (standing(record, 'station').length > 0) {
    writer.heading('Track stations as a sheet');
    writer.anchorNext('stations');
    const units = report.system === 'us' ? 'inches and feet' : 'millimetres and metres';
    const sheets = stationSheets(report);
    for (const [index, sheet] of sheets.entries()) {
      const part = sheets.length > 1 ? `, part ${index + 1} of ${sheets.length}` : '';
      writer.table(
        `Standing readings of the stations as entered${part}, in ${units} unless written; pale rows were disturbed by the derailment`,
        sheet,
      );
      await writer.breathe();
    }
  }
  writer.heading('Every reading, in the order of entry');
  writer.text(
    'Nothing is overwritten: a correction or a withdrawal is a reading of its own, and both stay here. The value is what was entered, converted once; its uncertainty rests on what is said under the same u at the end of the table. A dash: not recorded, or no instrument named.',
  );
  const basis = basisIndex();
  writer.table('Readings with person, time, instrument, uncertainty and state', everyReading(report, basis));
  await writer.breathe();
  writer.table('What the uncertainties rest on', {
    columns: [{ head: 'u', width: 30 }, { head: 'Standard uncertainty' }],
    rows: basis.all().map(([words, number]) => ({ cells: [number, words] })),
  });
  if (record.recorderRuns.length > 0) {
    writer.text([
      faint('Samples of the event recorder are kept with the case and not printed. Files: '),
      ...record.recorderRuns.flatMap((run): Run[] => [
        {
          text: `${report.refs.ofReading(run.id) ?? ''} `,
          ink: 'link',
          goTo: report.refs.ofReading(run.id),
        },
        faint(`${run.fileName}, ${run.rows} rows, SHA-256 `),
        mono(run.sha256),
        { text: '. ' },
      ]),
    ]);
  }
}
