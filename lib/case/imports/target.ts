import type { Field } from '../kind';
import type { Measure, Quantity } from '../../readings/quantity';
import { DIMENSIONS, type Unit, type UnitSystem } from '../../readings/unit';
import { KINDS } from '../kinds';
import { groupsFor } from '../../readings/quantities';

/** What a column of a file can be matched to: a field of the record, or a reading about it. */
export type ImportTarget = {
  readonly id: string;
  readonly label: string;
  readonly required: boolean;
  /** Units a bare number of this column can be in; empty where there is none to choose. */
  readonly units: readonly Unit[];
  /** Other names such a column is found under, in lower case without punctuation. */
  readonly alsoCalled: readonly string[];
  readonly about:
    | { readonly type: 'field'; readonly field: Field }
    | { readonly type: 'reading'; readonly quantity: Quantity; readonly slot: string };
};

export const TABLE_IMPORTS = {
  consist: { kind: 'vehicle', screen: 'train', name: 'Consist' },
  stations: { kind: 'station', screen: 'track', name: 'Track stations' },
  line: { kind: 'lineStretch', screen: 'train', name: 'Grades and curves of the line' },
} as const;
export type TableImportKind = keyof typeof TABLE_IMPORTS;

/** Names that clerks and field books give these columns; common practice, no source. */
const OTHER_NAMES: Readonly<Record<string, readonly string[]>> = {
  position: ['position', 'pos', 'seq', 'sequence'],
  mark: ['mark', 'initial', 'initials', 'car initial'],
  number: ['car number', 'unit number', 'road number'],
  type: ['car type', 'equipment type'],
  load: ['load empty', 'loaded or empty', 'l e'],
  lading: ['commodity', 'contents'],
  hazmat: ['hazmat', 'hazardous'],
  firstDerailed: ['first derailed'],
  grossWeight: ['gross weight', 'weight', 'gross'],
  lengthOverPullingFaces: ['length'],
  truckCentres: ['truck centers', 'truck ctrs'],
  axleSpacing: ['axle spacing', 'axle spc'],
  axleCount: ['axle count', 'number of axles'],
  name: ['station', 'sta', 'milepost', 'mp'],
  disturbance: ['state'],
  note: ['note', 'notes', 'remarks', 'comment'],
  lineFrom: ['from', 'distance', 'from pod', 'distance from pod', 'dist from pod', 'start', 'begin'],
  lineTo: ['to', 'end'],
  lineGrade: ['grade', 'gradient', 'slope'],
  lineCurvature: ['curve', 'curve deg', 'curve degrees', 'degree of curve', 'degrees of curve', 'radius'],
  hand: ['hand', 'direction', 'left or right', 'l r'],
  stationPosition: ['distance', 'from pod', 'dist from pod', 'position'],
  gauge: ['gauge', 'gage'],
  crosslevel: ['crosslevel', 'cross level', 'xl'],
  midOrdinate62: ['62 ft offset', '62 ft mid ordinate', 'mid ordinate 62 ft'],
  midOrdinate31: ['31 ft offset', '31 ft mid ordinate', 'mid ordinate 31 ft'],
  'profile62.left': ['profile left', 'profile l'],
  'profile62.right': ['profile right', 'profile r'],
  'lateralMovement.left': ['sideways left', 'movement left', 'move l'],
  'lateralMovement.right': ['sideways right', 'movement right', 'move r'],
  'verticalMovement.left': ['down left'],
  'verticalMovement.right': ['down right'],
  defectiveTies: ['bad ties', 'defective ties'],
  'fasteningsLoose.left': ['loose fastenings left', 'loose left', 'loose l'],
  'fasteningsLoose.right': ['loose fastenings right', 'loose right', 'loose r'],
};

/** Readings without which a row says nothing of a place. */
const NEEDED: ReadonlySet<string> = new Set(['stationPosition', 'lineFrom']);

const unitsOf = (quantity: Quantity): readonly Unit[] =>
  quantity.kind === 'measure' ? DIMENSIONS[quantity.dimension].units : [];

/** Every field and reading of the kind of record the file is about, in the catalogue's order. */
export function targetsOf(importKind: TableImportKind): readonly ImportTarget[] {
  const { kind, screen } = TABLE_IMPORTS[importKind];
  const fields = KINDS[kind].fields
    .filter((field) => field.type !== 'ref')
    .map((field): ImportTarget => ({
      id: field.id,
      label: field.label,
      required: field.required === true && field.id !== 'disturbance',
      units: [],
      alsoCalled: OTHER_NAMES[field.id] ?? [],
      about: { type: 'field', field },
    }));
  const readings = groupsFor(screen, kind)
    .flatMap((group) => group.quantities)
    .flatMap((quantity): readonly ImportTarget[] => {
      const target = (slot: string, suffix: string): ImportTarget => {
        const id = slot === '' ? quantity.id : `${quantity.id}.${slot}`;
        return {
          id,
          label: `${quantity.name}${suffix}`,
          required: NEEDED.has(quantity.id),
          units: unitsOf(quantity),
          alsoCalled: OTHER_NAMES[id] ?? [],
          about: { type: 'reading', quantity, slot },
        };
      };
      return quantity.slots.length === 0
        ? [target('', '')]
        : quantity.slots.map((slot) => target(slot.id, `, ${slot.label.toLowerCase()}`));
    });
  return [...fields, ...readings];
}

/** The quantity with bare numbers taken in the column's unit, whatever the case is worked in. */
export const inUnit = (quantity: Measure, unit: Unit): Measure => ({
  ...quantity,
  bareUnit: { us: unit, metric: unit },
});

export const usualUnit = (target: ImportTarget, system: UnitSystem): Unit | null =>
  target.about.type === 'reading' && target.about.quantity.kind === 'measure'
    ? target.about.quantity.bareUnit[system]
    : null;
