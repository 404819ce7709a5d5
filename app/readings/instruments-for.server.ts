import { standing } from '~/lib/case/current';
import type { CaseRecord, Entity } from '~/lib/case/record';
import { findInstrumentKind } from '~/lib/readings/instrument';
import type { Quantity } from '~/lib/readings/quantity';

/** Kinds of instrument a quantity is usually read with, the usual one first; common practice, no source. */
const USUAL: Readonly<Record<string, readonly string[]>> = {
  stationPosition: ['tape'],
  gauge: ['trackGauge', 'tape', 'steelRule'],
  crosslevel: ['levelBoard'],
  midOrdinate62: ['stringLine'],
  midOrdinate31: ['stringLine'],
  profile62: ['stringLine'],
  lateralMovement: ['steelRule', 'tape'],
  verticalMovement: ['steelRule', 'tape'],
  grossWeight: ['scale'],
  lengthOverPullingFaces: ['tape'],
  truckCentres: ['tape'],
  axleSpacing: ['tape'],
};

export type InstrumentChoice = {
  readonly quantity: string;
  readonly name: string;
  readonly options: readonly { readonly id: string; readonly label: string }[];
  /** Id of the instrument chosen unless somebody says otherwise; '' for none named. */
  readonly usual: string;
};

const kindOf = (instrument: Entity) => findInstrumentKind(String(instrument.fields.kind ?? ''));

/** The instruments of the case that can read the quantity, and which of them is the usual one for it. */
export function instrumentChoice(record: CaseRecord, quantity: Quantity): InstrumentChoice | null {
  if (quantity.kind !== 'measure') return null;
  const able = standing(record, 'instrument').filter(
    (instrument) => kindOf(instrument)?.halfWidth[quantity.dimension] !== undefined,
  );
  const usual = (USUAL[quantity.id] ?? [])
    .flatMap((kind) => able.filter(({ fields }) => fields.kind === kind))
    .at(0);
  return {
    quantity: quantity.id,
    name: quantity.name,
    options: able.map(({ id, fields }) => ({ id, label: String(fields.name) })),
    usual: usual?.id ?? '',
  };
}
