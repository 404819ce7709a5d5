import { standing } from '../../case/current';
import { nameOf } from '../../case/name-of';
import type { Entity, Reading } from '../../case/record';
import { trailingByVehicle } from '../../findings/train/make-up';
import { formatMeasure } from '../../readings/format';
import { absentMany } from '../pieces/absent';
import { consistDrawing } from '../pieces/drawings';
import type { Report, Section } from '../report';
import type { Table } from '../table/table';
import type { Writer } from '../writer';
import { enteredText, fieldOf, plainValue, quantityText, roleOf, together } from '../words';

const people = ({ record }: Report): Table => ({
  columns: [{ head: 'Name' }, { head: 'Role and organisation' }, { head: 'How to reach them' }],
  rows: standing(record, 'person').map((person) => ({
    cells: [String(person.fields.name ?? ''), roleOf(record, person), String(person.fields.contact ?? '')],
  })),
});

const instruments = ({ record }: Report): Table => ({
  columns: [
    { head: 'Instrument' },
    { head: 'Kind' },
    { head: 'Smallest division' },
    { head: 'Stated u (k = 1)' },
    { head: 'Last calibrated' },
    { head: 'Note' },
  ],
  rows: standing(record, 'instrument').map((each) => ({
    cells: ['name', 'kind', 'resolution', 'standardUncertainty', 'calibratedOn', 'note'].map(
      (id) => fieldOf(record, 'instrument', each, id) || '–',
    ),
  })),
});

const nameOfVehicle = ({ fields }: Entity): string => [fields.mark, fields.number].filter(Boolean).join(' ');

function derailedWords(report: Report, vehicle: Entity): string {
  if (vehicle.fields.derailed !== true) return '';
  const text = (id: string): string => fieldOf(report.record, 'vehicle', vehicle, id);
  return [
    vehicle.fields.firstDerailed === true ? 'First to derail' : 'Derailed',
    text('derailedTrucks') && `trucks: ${text('derailedTrucks').toLowerCase()}`,
    text('derailedAxles') && `axles ${text('derailedAxles')}`,
    text('derailedSide') && `to: ${text('derailedSide').toLowerCase()}`,
  ]
    .filter(Boolean)
    .join('; ');
}

function consist(report: Report): Table {
  const { record, system } = report;
  const value = (vehicle: Entity, quantity: string): string => {
    const reading = report
      .readingsOf({ kind: 'vehicle', id: vehicle.id })
      .findLast((each) => each.quantity === quantity && each.value !== null);
    return reading?.value == null
      ? ''
      : plainValue(quantity, reading.value, system).replace(/ (lb|kg|ft|m)$/, '');
  };
  const behind = trailingByVehicle(report.context);
  const heavy = system === 'us' ? ('ton' as const) : ('t' as const);
  const behindText = (id: string): string => {
    const kg = behind.get(id) ?? NaN;
    return Number.isFinite(kg) ? formatMeasure(kg, { dimension: 'mass', unit: heavy, withUnit: false }) : '';
  };
  const unit = system === 'us' ? { mass: 'lb', length: 'ft' } : { mass: 'kg', length: 'm' };
  return {
    columns: [
      { head: 'No.', align: 'right' },
      { head: 'Vehicle' },
      { head: 'Type' },
      { head: 'Load' },
      { head: `Gross, ${unit.mass}`, align: 'right' },
      { head: `Length, ${unit.length}`, align: 'right' },
      { head: `Behind, ${heavy}`, align: 'right' },
      { head: 'Axles', align: 'right' },
      { head: 'Derailed, remarks' },
    ],
    rows: standing(record, 'vehicle').map((vehicle) => {
      const text = (id: string): string => fieldOf(record, 'vehicle', vehicle, id);
      return {
        cells: [
          String(vehicle.fields.position ?? ''),
          together(nameOfVehicle(vehicle)),
          text('type'),
          [text('load'), text('lading')].filter(Boolean).join(', '),
          value(vehicle, 'grossWeight'),
          value(vehicle, 'lengthOverPullingFaces'),
          behindText(vehicle.id),
          value(vehicle, 'axleCount'),
          [
            derailedWords(report, vehicle),
            vehicle.fields.hazmat === true ? 'Hazardous material' : '',
            text('note'),
          ]
            .filter(Boolean)
            .join('. '),
        ],
      };
    }),
  };
}

const observations = (report: Report, readings: readonly Reading[]): Table => ({
  columns: [{ head: 'No.', width: 34 }, { head: 'Of' }, { head: 'What' }, { head: 'Found' }],
  rows: readings.map((reading) => {
    const number = report.refs.ofReading(reading.id) ?? '';
    return {
      cells: [
        [{ text: number, ink: 'link' as const, goTo: number }],
        nameOf(report.record, reading.subject),
        quantityText(reading.quantity, reading.slot),
        [enteredText(reading), reading.note].filter(Boolean).join('. '),
      ],
    };
  }),
});

function theTrain(report: Report, writer: Writer): void {
  const { record } = report;
  const vehicles = standing(record, 'vehicle');
  if (vehicles.length === 0) return absentMany(writer, 'The vehicles of the train');
  const derailed = vehicles.filter(({ fields }) => fields.derailed === true);
  const first = derailed.find(({ fields }) => fields.firstDerailed === true);
  writer.text(
    `${vehicles.length} vehicles are recorded, ${derailed.length} of them derailed. ${
      first === undefined
        ? 'Which was the first to derail was not recorded.'
        : `The first to derail is recorded as no. ${first.fields.position ?? '?'}, ${nameOfVehicle(first)}.`
    }`,
  );
  consistDrawing(report, writer);
  writer.table('The train from the head end', consist(report));
  const observed = vehicles.flatMap(({ id }) =>
    report.readingsOf({ kind: 'vehicle', id }).filter(({ state }) => state !== null),
  );
  if (observed.length > 0) writer.table('Observations on vehicles', observations(report, observed));
}

export const trainSection: Section = {
  id: 'train',
  title: 'Site and train',
  kind: 'numbered',
  build(report, writer) {
    const { record } = report;
    writer.heading('The train');
    theTrain(report, writer);
    writer.heading('People');
    if (standing(record, 'person').length === 0) absentMany(writer, 'The people who took part');
    else writer.table('People who took readings, gave statements or were on the train', people(report));
    writer.heading('Instruments');
    if (standing(record, 'instrument').length === 0) {
      absentMany(writer, 'Instruments');
      writer.text(
        'Readings without a named instrument are taken with the ordinary one for that reading (appendix A).',
      );
    } else writer.table('Instruments', instruments(report));
  },
};
