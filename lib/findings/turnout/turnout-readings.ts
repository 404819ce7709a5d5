import { standing } from '../../case/current';
import { nameOfEntity } from '../../case/name-of';
import { quantityOf } from '../../readings/quantities';
import type { RuleQuantityId } from '../../rules/rule-quantity';
import { asReadMethod } from '../as-read';
import { distinct, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import { LEFT_OUT_WORDS } from '../reading-index';
import { checkAll, conditionRemarks } from '../rules-in-force';

const READINGS: readonly { readonly quantity: string; readonly limits: RuleQuantityId | null }[] = [
  { quantity: 'pointGap', limits: null },
  { quantity: 'tipThickness', limits: null },
  { quantity: 'tipDepth', limits: null },
  { quantity: 'chipLength', limits: null },
  { quantity: 'chipDepth', limits: null },
  { quantity: 'pointThrow', limits: null },
  { quantity: 'guardCheckGauge', limits: 'guardCheckGauge' },
  { quantity: 'guardFaceGauge', limits: 'guardFaceGauge' },
  { quantity: 'flangewayWidth', limits: 'flangewayWidth' },
  { quantity: 'flangewayDepth', limits: 'flangewayDepth' },
  { quantity: 'frogPointDown', limits: 'frogPointDown' },
  { quantity: 'frogTreadWear', limits: 'frogTreadWear' },
];

/** Point, frog and guard-rail readings of each turnout, against the limits that exist for them. */
export const turnoutReadingFindings = (context: Context): readonly Finding[] =>
  standing(context.record, 'turnout').flatMap((turnout) => {
    const name = nameOfEntity(context.record, 'turnout', turnout);
    return READINGS.flatMap(({ quantity, limits }): readonly Finding[] => {
      const { name: what } = quantityOf(quantity);
      const found = limits === null ? [] : context.rules.turnoutLimits(limits);
      const heading: Heading = {
        part: 'turnout',
        method: asReadMethod,
        what: quantity,
        title: `${what}, ${name}`,
        subject: { kind: 'turnout', id: turnout.id },
        remarks: distinct([
          ...conditionRemarks(found),
          ...found.flatMap(({ limit }) => limit.consequence?.text ?? []),
          ...(limits === null ? [] : context.rules.remarks),
        ]),
      };
      const taken = context.read.take('turnout', turnout.id, quantity);
      if (taken !== null) {
        return [measured(heading, 'crossLength', taken, checkAll(found, taken.value, taken.u))];
      }
      const why = context.read.leftOut('turnout', turnout.id, quantity);
      return why === null
        ? []
        : [notMeasured(heading, [`${what.toLowerCase()} undisturbed; read only ${LEFT_OUT_WORDS[why]}`])];
    });
  });
