import { standing } from '../../case/current';
import type { Entity } from '../../case/record';
import { nameOfEntity } from '../../case/name-of';
import { inches } from '../../readings/quantities/build';
import { quantityOf } from '../../readings/quantities';
import type { RuleQuantityId } from '../../rules/rule-quantity';
import type { ClassLimit } from '../../rules/apply';
import { asReadMethod } from '../as-read';
import { distinct, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { LEFT_OUT_WORDS } from '../reading-state';
import { checkAll, conditionRemarks } from '../rules-in-force';

const READINGS: readonly { readonly quantity: string; readonly limits: RuleQuantityId | null }[] = [
  { quantity: 'pointPlace', limits: null },
  { quantity: 'pointGap', limits: null },
  { quantity: 'tipThickness', limits: null },
  { quantity: 'tipDepth', limits: null },
  { quantity: 'chipFrom', limits: null },
  { quantity: 'chipLength', limits: null },
  { quantity: 'chipDepth', limits: null },
  { quantity: 'pointThrow', limits: null },
  { quantity: 'gapBehind', limits: null },
  { quantity: 'thicknessBehind', limits: null },
  { quantity: 'depthBehind', limits: null },
  { quantity: 'pointFaceAngle', limits: null },
  { quantity: 'heelSpread', limits: null },
  { quantity: 'guardCheckGauge', limits: 'guardCheckGauge' },
  { quantity: 'guardFaceGauge', limits: 'guardFaceGauge' },
  { quantity: 'flangewayWidth', limits: 'flangewayWidth' },
  { quantity: 'flangewayDepth', limits: 'flangewayDepth' },
  { quantity: 'frogPointDown', limits: 'frogPointDown' },
  { quantity: 'frogPointBack', limits: null },
  { quantity: 'frogTreadWear', limits: 'frogTreadWear' },
  { quantity: 'springFrogHorn', limits: 'springFrogHorn' },
  { quantity: 'raisedGuardWear', limits: 'raisedGuardWear' },
];

/** Point, frog and guard-rail readings of each turnout, against the limits that exist for them. */
export const turnoutReadingFindings = (context: Context): readonly Finding[] =>
  standing(context.record, 'turnout').flatMap((turnout) =>
    READINGS.flatMap(({ quantity, limits }) => {
      const { slots } = quantityOf(quantity);
      const places = slots.length === 0 ? [{ id: '', label: '' }] : slots;
      return places.flatMap((slot) => ofReading(context, turnout, { quantity, limits, slot }));
    }),
  );

function ofReading(
  context: Context,
  turnout: Entity,
  {
    quantity,
    limits,
    slot,
  }: (typeof READINGS)[number] & { readonly slot: { readonly id: string; readonly label: string } },
): readonly Finding[] {
  const of = quantityOf(quantity);
  const answerTo = (choice: string): string | null =>
    context.read.state('turnout', turnout.id, choice)?.state ?? null;
  const inForce = limits === null ? [] : context.rules.turnoutLimits(limits, answerTo);
  const { found, remark } = withinScope(context, turnout, quantity, inForce);
  const what = slot.label === '' ? of.name : `${of.name}, ${slot.label}`;
  const heading: Heading = {
    part: 'turnout',
    method: asReadMethod,
    what: quantity,
    title: `${what}, ${nameOfEntity(context.record, 'turnout', turnout)}`,
    subject: { kind: 'turnout', id: turnout.id },
    slot: slot.id,
    remarks: distinct([
      remark,
      ...conditionRemarks(found),
      ...found.flatMap(({ limit }) => limit.consequence?.text ?? []),
      ...(limits === null ? [] : context.rules.remarks),
    ]),
  };
  const taken = context.read.take('turnout', turnout.id, quantity, slot.id);
  if (taken !== null && of.kind === 'measure') {
    return [measured(heading, of.dimension, taken, checkAll(found, taken.value, taken.u))];
  }
  const why = context.read.leftOut('turnout', turnout.id, quantity, slot.id);
  return why === null
    ? []
    : [notMeasured(heading, [`${what.toLowerCase()} undisturbed; read only ${LEFT_OUT_WORDS[why]}`])];
}

/** A frog point counts as worn down only when it is worn back as far as the rule says too. */
const FROG_POINT_BACK_MM = inches(6);

function withinScope(
  context: Context,
  turnout: Entity,
  quantity: string,
  limits: readonly ClassLimit[],
): { readonly found: readonly ClassLimit[]; readonly remark: string } {
  const back =
    quantity === 'frogPointDown' && limits.length > 0
      ? context.read.take('turnout', turnout.id, 'frogPointBack')
      : null;
  return back !== null && back.value < FROG_POINT_BACK_MM
    ? {
        found: limits.filter(({ limit }) => limit.onlyWhere === undefined),
        remark: 'Worn or chipped less than 6 in back: the limit on how far down does not apply.',
      }
    : { found: limits, remark: '' };
}
