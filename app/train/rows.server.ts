import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { fieldText } from '~/app/entities/table-rows';
import { caseContext } from '~/app/findings/case-findings.server';
import { readingsOf } from '~/app/readings/index.server';
import { systemOf } from '~/app/readings/take.server';
import { readingText } from '~/app/readings/wording';
import { vehicleKind } from '~/lib/case/kinds/vehicle';
import type { Entity } from '~/lib/case/record';
import { trailingByVehicle } from '~/lib/findings/train/make-up';
import { formatMeasure } from '~/lib/readings/format';

export type VehicleRow = {
  readonly id: string;
  readonly name: string;
  readonly type: string;
  readonly load: string;
  /** As read, with its unit; leads to the reading. */
  readonly weight: { readonly id: string; readonly text: string } | null;
  readonly length: { readonly id: string; readonly text: string } | null;
  /** Weight of the train behind it; '' where a weight behind it is missing. */
  readonly behind: string;
  readonly derailed: string;
  readonly first: boolean;
  readonly removed: { readonly reason: string } | null;
};

const FIELD = new Map(vehicleKind.fields.map((field) => [field.id, field]));

function rowOf(loaded: LoadedCase, vehicle: Entity, behindKg: number): VehicleRow {
  const { fields } = vehicle;
  const said = (id: string): string => {
    const field = FIELD.get(id);
    return field ? fieldText(loaded.record, field, fields[id]) : '';
  };
  const system = systemOf(loaded.record.fields);
  const readings = readingsOf(loaded, { kind: 'vehicle', id: vehicle.id });
  const read = (quantity: string) => {
    const latest = readings.filter((reading) => reading.quantity === quantity).at(-1);
    return latest ? { id: latest.id, text: readingText(latest) } : null;
  };
  const where = [
    said('derailedTrucks'),
    said('derailedAxles') && `axles ${said('derailedAxles')}`,
    said('derailedSide'),
  ]
    .filter(Boolean)
    .join(', ');
  return {
    id: vehicle.id,
    name: vehicleKind.describe(fields),
    type: said('type'),
    load: [said('load'), said('lading'), fields.hazmat === true ? 'hazardous material' : '']
      .filter(Boolean)
      .join(', '),
    weight: read('grossWeight'),
    length: read('lengthOverPullingFaces'),
    behind: Number.isFinite(behindKg)
      ? formatMeasure(behindKg, { dimension: 'mass', unit: system === 'us' ? 'ton' : 't' })
      : '',
    derailed: fields.derailed === true ? `Derailed${where && `: ${where}`}` : '',
    first: fields.firstDerailed === true,
    removed: vehicle.removed && { reason: vehicle.removed.reason },
  };
}

const positionOf = ({ fields }: Entity): number =>
  typeof fields.position === 'number' ? fields.position : Infinity;

/** The train from the head end; removed vehicles last. */
export const vehicleRows = (loaded: LoadedCase): readonly VehicleRow[] =>
  derived(loaded, 'vehicles', () => {
    const behind = trailingByVehicle(caseContext(loaded));
    return [...loaded.record.entities.vehicle]
      .sort(
        (a, b) => Number(a.removed !== null) - Number(b.removed !== null) || positionOf(a) - positionOf(b),
      )
      .map((vehicle) => rowOf(loaded, vehicle, behind.get(vehicle.id) ?? NaN));
  });
