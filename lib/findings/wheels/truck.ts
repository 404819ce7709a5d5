import { standing } from '../../case/current';
import { nameOfEntity } from '../../case/name-of';
import type { Entity } from '../../case/record';
import { quantityOf } from '../../readings/quantities';
import type { RuleQuantityId } from '../../rules/rule-quantity';
import { asReadMethod } from '../as-read';
import { derive, distinct, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, Method } from '../finding';
import type { Taken } from '../reading-index';
import { LEFT_OUT_WORDS } from '../reading-state';
import { checkAll, conditionRemarks } from '../rules-in-force';
import { vehicleTypeOf, whereReadRemarks } from './wheel-title';

export const sideBearingSumMethod: Method = {
  ...asReadMethod,
  id: 'side-bearing-sum',
  name: 'Side-bearing clearances added',
  formula: 'sum of the clearances of the two bearings named',
  validRange: 'Car level, body on its centre plates. Constant-contact bearings have no clearance by design.',
  sources: [{ text: '49 CFR 215.119(c), 229.69(b)', status: 'published' }],
};

const SIDES = ['left', 'right'] as const;

/** Side-bearing clearances and wedge rise per truck, and the sums the rules limit. */
export function truckFindings(context: Context): readonly Finding[] {
  const trucks = standing(context.record, 'truck');
  return [
    ...trucks.flatMap((truck) => [...perSide(context, truck), ...acrossEnd(context, truck)]),
    ...[...context.vehicles.values()].flatMap((vehicle) =>
      diagonals(
        context,
        vehicle,
        trucks.filter(({ fields }) => fields.vehicle === vehicle.id),
      ),
    ),
  ];
}

const clearance = (context: Context, truck: Entity, side: string): Taken | null =>
  context.read.take('truck', truck.id, 'sideBearingClearance', side);

function perSide(context: Context, truck: Entity): readonly Finding[] {
  const name = nameOfEntity(context.record, 'truck', truck);
  return ['sideBearingClearance', 'wedgeRise'].flatMap((quantity) =>
    SIDES.flatMap((slot): readonly Finding[] => {
      const heading: Heading = {
        part: 'wheels',
        method: asReadMethod,
        what: quantity,
        title: `${quantityOf(quantity).name}, ${slot} side, ${name}`,
        subject: { kind: 'truck', id: truck.id },
        slot,
        remarks: whereReadRemarks(truck),
      };
      const taken = context.read.take('truck', truck.id, quantity, slot);
      if (taken !== null) return [measured(heading, 'crossLength', taken)];
      const why = context.read.leftOut('truck', truck.id, quantity, slot);
      return why === null
        ? []
        : [
            notMeasured(heading, [
              `${quantityOf(quantity).name.toLowerCase()} undisturbed; read only ${LEFT_OUT_WORDS[why]}`,
            ]),
          ];
    }),
  );
}

function acrossEnd(context: Context, truck: Entity): readonly Finding[] {
  const left = clearance(context, truck, 'left');
  const right = clearance(context, truck, 'right');
  if (left === null || right === null) return [];
  return [
    added(context, truck, [left, right], 'sideBearingClearanceEnd', {
      title: `Side-bearing clearance of both sides, ${nameOfEntity(context.record, 'truck', truck)}`,
      subject: { kind: 'truck', id: truck.id },
    }),
  ];
}

function diagonals(context: Context, vehicle: Entity, trucks: readonly Entity[]): readonly Finding[] {
  const leading = trucks.find(({ fields }) => fields.end === 'leading');
  const trailing = trucks.find(({ fields }) => fields.end === 'trailing');
  if (leading === undefined || trailing === undefined) return [];
  return SIDES.flatMap((side): readonly Finding[] => {
    const near = clearance(context, leading, side);
    const far = clearance(context, trailing, side === 'left' ? 'right' : 'left');
    if (near === null || far === null) return [];
    const name = nameOfEntity(context.record, 'vehicle', vehicle);
    return [
      added(context, leading, [near, far], 'sideBearingClearanceDiagonal', {
        title: `Side-bearing clearance, leading ${side} with the one diagonally opposite, ${name}`,
        subject: { kind: 'vehicle', id: vehicle.id },
        slot: side,
      }),
    ];
  });
}

function added(
  context: Context,
  truck: Entity,
  parts: readonly [Taken, Taken],
  what: Extract<RuleQuantityId, 'sideBearingClearanceEnd' | 'sideBearingClearanceDiagonal'>,
  about: Pick<Heading, 'title' | 'subject' | 'slot'>,
): Finding {
  const constantContact = truck.fields.sideBearings === 'constantContact';
  const limits = constantContact ? [] : context.rules.equipmentLimits(vehicleTypeOf(context, truck), what);
  const taken = derive((a, b) => a + b, parts);
  return measured(
    {
      part: 'wheels',
      method: sideBearingSumMethod,
      what,
      ...about,
      remarks: distinct([
        ...whereReadRemarks(truck),
        ...conditionRemarks(limits),
        ...(constantContact
          ? ['Constant-contact side bearings: not held against a limit on clearance.']
          : []),
      ]),
    },
    'crossLength',
    taken,
    checkAll(limits, taken.value, taken.u),
  );
}
