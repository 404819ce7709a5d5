import type { RuleQuantityId } from '../../rules/rule-quantity';
import { standing } from '../../case/current';
import { quantityOf } from '../../readings/quantities';
import { asReadMethod, passFailMethod } from '../as-read';
import { distinct, measured, notMeasured, passFail, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { LEFT_OUT_WORDS } from '../reading-state';
import { checkAll, conditionRemarks } from '../rules-in-force';
import { axleName, noLimitsRemarks, vehicleTypeOf, whereReadRemarks } from './wheel-title';

const MEASURES: readonly { readonly quantity: string; readonly limits: RuleQuantityId | null }[] = [
  { quantity: 'flangeThickness', limits: 'flangeThickness' },
  { quantity: 'flangeHeight', limits: 'flangeHeight' },
  { quantity: 'flangeAngle', limits: null },
  { quantity: 'climbLength', limits: null },
  { quantity: 'rimThickness', limits: 'rimThickness' },
  { quantity: 'rimWidth', limits: null },
  { quantity: 'treadHollow', limits: 'treadHollow' },
];

const CHECKS = ['flangeThicknessCheck', 'flangeHeightCheck', 'rimThicknessCheck', 'hollowCheck'] as const;

const SIDES = ['left', 'right'] as const;

/** Shape of every wheel measured, against the limits for its kind of vehicle, and go/no-go checks as such. */
export const wheelLimitFindings = (context: Context): readonly Finding[] =>
  standing(context.record, 'wheelset').flatMap((wheelset) => {
    const subject = { kind: 'wheelset', id: wheelset.id } as const;
    const name = axleName(context, wheelset);
    const type = vehicleTypeOf(context, wheelset);
    const where = whereReadRemarks(wheelset);
    const values = MEASURES.flatMap(({ quantity, limits }) =>
      SIDES.flatMap((slot): readonly Finding[] => {
        const { name: what } = quantityOf(quantity);
        const found = limits === null ? [] : context.rules.equipmentLimits(type, limits);
        const heading: Heading = {
          part: 'wheels',
          method: asReadMethod,
          what: quantity,
          title: `${what}, ${slot} wheel, ${name}`,
          subject,
          slot,
          remarks: distinct([
            ...where,
            ...conditionRemarks(found),
            ...(limits === null ? [] : noLimitsRemarks(context, wheelset)),
          ]),
        };
        const taken = context.read.take('wheelset', wheelset.id, quantity, slot);
        if (taken !== null) {
          return [
            measured(
              { ...heading, method: taken.method ?? asReadMethod },
              quantityDimension(quantity),
              taken,
              checkAll(found, taken.value, taken.u),
            ),
          ];
        }
        const why = context.read.leftOut('wheelset', wheelset.id, quantity, slot);
        return why === null
          ? []
          : [notMeasured(heading, [`${what.toLowerCase()} undisturbed; read only ${LEFT_OUT_WORDS[why]}`])];
      }),
    );
    return [
      ...values,
      ...CHECKS.flatMap((check) =>
        SIDES.flatMap((slot) => gauged(context, subject, check, slot, name, where)),
      ),
    ];
  });

function quantityDimension(id: string) {
  const quantity = quantityOf(id);
  return quantity.kind === 'measure' ? quantity.dimension : 'count';
}

function gauged(
  context: Context,
  subject: { readonly kind: 'wheelset'; readonly id: string },
  quantityId: string,
  slot: string,
  name: string,
  where: readonly string[],
): readonly Finding[] {
  const quantity = quantityOf(quantityId);
  if (quantity.kind !== 'goNoGo') return [];
  const heading: Heading = {
    part: 'wheels',
    method: passFailMethod,
    what: quantityId,
    title: `${quantity.name}, ${slot} wheel, ${name}`,
    subject,
    slot,
    remarks: where,
  };
  const taken = context.read.state('wheelset', subject.id, quantityId, slot);
  if (taken !== null && (taken.state === 'pass' || taken.state === 'fail')) {
    return [
      passFail(
        { ...heading, remarks: distinct([...where, ...taken.remarks]) },
        { pass: taken.state === 'pass', check: quantity.check, readings: taken.readings },
      ),
    ];
  }
  const why = context.read.leftOut('wheelset', subject.id, quantityId, slot);
  return why === null
    ? []
    : [
        notMeasured(heading, [
          `${quantity.name.toLowerCase()} undisturbed; done only ${LEFT_OUT_WORDS[why]}`,
        ]),
      ];
}
