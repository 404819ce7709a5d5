import { standing } from '../../case/current';
import { nameOfEntity } from '../../case/name-of';
import type { Entity, EntityKind } from '../../case/record';
import { absentMany } from '../pieces/absent';
import { wheelClockDrawing } from '../pieces/drawings';
import { findingsTable } from '../pieces/findings-table';
import { readingsTable } from '../pieces/readings-table';
import type { Report, Section } from '../report';
import type { Writer } from '../writer';
import { fieldOf } from '../words';

type GearKind = 'wheelset' | 'wheelDefect' | 'truck' | 'rail';

/** Fields that are told in the record's name already. */
const IN_NAME = new Set(['vehicle', 'axle', 'wheelset', 'end', 'rail', 'where']);

function recordText(report: Report, kind: GearKind, entity: Entity, fields: readonly string[]): string {
  return fields
    .filter((id) => !IN_NAME.has(id))
    .flatMap((id) => {
      const text = fieldOf(report.record, kind, entity, id);
      return text === '' ? [] : [`${LABELS[id] ?? id}: ${text}`];
    })
    .map((sentence) => (sentence.endsWith('.') ? sentence : `${sentence}.`))
    .join(' ');
}

const LABELS: Readonly<Record<string, string>> = {
  wheelDesign: 'Design',
  measuredWhere: 'Read',
  disturbance: 'State when read',
  note: 'Note',
  firstDerailed: 'First to derail',
  side: 'Wheel',
  type: 'Defect',
  appearance: 'Appearance',
  design: 'Design',
  sideBearings: 'Side bearings',
  section: 'Section',
  stockRailOf: 'Stock rail of',
  rolled: 'Rolled',
  joint: 'Joint',
};

const FIELDS: Readonly<Record<GearKind, readonly string[]>> = {
  wheelset: ['wheelDesign', 'measuredWhere', 'disturbance', 'note'],
  wheelDefect: ['side', 'type', 'appearance', 'note'],
  truck: ['design', 'sideBearings', 'measuredWhere', 'disturbance', 'note'],
  rail: ['section', 'stockRailOf', 'rolled', 'joint', 'disturbance', 'note'],
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function gear(
  report: Report,
  writer: Writer,
  kind: GearKind,
  what: string,
  after?: (entity: Entity) => void,
): void {
  const entities = standing(report.record, kind as EntityKind);
  if (entities.length === 0) return absentMany(writer, what);
  for (const entity of entities) {
    const first = kind === 'wheelset' && entity.fields.firstDerailed === true;
    const name =
      kind === 'wheelDefect' ? defectName(report, entity) : nameOfEntity(report.record, kind, entity);
    writer.lead(`${capital(name)}${first ? ' (thought to be the first to derail)' : ''}`);
    const words = recordText(
      report,
      kind,
      entity,
      kind === 'wheelDefect' ? ['appearance', 'note'] : FIELDS[kind],
    );
    if (words !== '') writer.text(words, { leadsTo: true });
    const readings = report.readingsOf({ kind, id: entity.id });
    if (readings.length === 0) writer.text('No reading of it was recorded.');
    else writer.table(`Readings: ${name}`, readingsTable(readings, report));
    after?.(entity);
  }
}

function defectName(report: Report, defect: Entity): string {
  const wheelset = report.record.entities.wheelset.find(({ id }) => id === defect.fields.wheelset);
  const type = fieldOf(report.record, 'wheelDefect', defect, 'type');
  const side = fieldOf(report.record, 'wheelDefect', defect, 'side').toLowerCase();
  const where = wheelset === undefined ? '' : `, ${nameOfEntity(report.record, 'wheelset', wheelset)}`;
  return `${type}, ${side} wheel${where}`;
}

export const wheelsSection: Section = {
  id: 'wheels',
  title: 'Wheels, trucks and rails',
  kind: 'numbered',
  build(report, writer) {
    const findings = report.findings.filter(({ part }) => part === 'wheels' || part === 'rails');
    if (findings.length > 0) {
      writer.heading('Findings');
      writer.table('Findings on wheels, trucks and rails', findingsTable(findings, report));
    }
    writer.heading('Wheelsets');
    gear(report, writer, 'wheelset', 'Wheelsets', (entity) => wheelClockDrawing(report, writer, entity));
    writer.heading('Wheel defects');
    gear(report, writer, 'wheelDefect', 'Wheel defects');
    writer.heading('Trucks');
    gear(report, writer, 'truck', 'Trucks');
    writer.heading('Rails');
    gear(report, writer, 'rail', 'Rails at or before the POD');
  },
};
