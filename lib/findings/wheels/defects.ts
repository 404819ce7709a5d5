import { standing } from '../../case/current';
import type { Entity } from '../../case/record';
import { toCanonical } from '../../readings/convert';
import type { RuleQuantityId } from '../../rules/rule-quantity';
import { wheelDefectKind } from '../../case/kinds/running-gear';
import { asReadMethod } from '../as-read';
import { distinct, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, LimitCheck } from '../finding';
import { limitCheck } from '../limit-check';
import type { Taken } from '../reading-index';
import { LEFT_OUT_WORDS } from '../reading-state';
import { checkAll, conditionRemarks } from '../rules-in-force';
import { axleName, vehicleTypeOf } from './wheel-title';

/** Which limit speaks of the length of which defect. */
const LENGTH_LIMITS: Readonly<Record<string, RuleQuantityId>> = {
  slidFlat: 'flatSpot',
  shelled: 'shelledSpot',
  spalled: 'shelledSpot',
  chippedFlange: 'flangeChipLength',
};

const ADJOINING = 'Two adjoining spots have a smaller limit; whether spots adjoin is not recorded here.';

/** A chip counts only with this width too. */
const CHIP_WIDTH_MM = toCanonical(0.5, 'in', 'crossLength');
const SHELL_WIDTH_MM = toCanonical(1, 'in', 'crossLength');

/** Sizes of wheel defects against the limits for the kind of vehicle. */
export const defectFindings = (context: Context): readonly Finding[] =>
  standing(context.record, 'wheelDefect').flatMap((defect) => {
    const wheelset = context.wheelsets.get(String(defect.fields.wheelset));
    const width = context.read.take('wheelDefect', defect.id, 'defectWidth');
    const type = String(defect.fields.type ?? '');
    const rule = LENGTH_LIMITS[type];
    const tooNarrow = type === 'chippedFlange' && width !== null && width.value < CHIP_WIDTH_MM;
    const limits =
      rule === undefined || wheelset === undefined || tooNarrow
        ? []
        : context.rules.equipmentLimits(vehicleTypeOf(context, wheelset), rule);
    const name = nameOf(context, defect, wheelset);
    return [
      ...sized(
        context,
        defect,
        'defectLength',
        `Length of ${name}`,
        (taken) => checkAll(limits, taken.value, taken.u),
        [
          ...conditionRemarks(limits),
          ...(limits.length > 0 && type !== 'chippedFlange' ? [ADJOINING] : []),
          ...(tooNarrow ? ['Narrower than 1/2 in: the limit on the length of a chip does not apply.'] : []),
        ],
      ),
      ...sized(context, defect, 'defectWidth', `Width of ${name}`, (taken) => shelledWidth(type, taken), []),
    ];
  });

function sized(
  context: Context,
  defect: Entity,
  quantity: string,
  title: string,
  limits: (taken: Taken) => readonly LimitCheck[],
  remarks: readonly string[],
): readonly Finding[] {
  const heading: Heading = {
    part: 'wheels',
    method: asReadMethod,
    what: quantity,
    title,
    subject: { kind: 'wheelDefect', id: defect.id },
    remarks: distinct(remarks),
  };
  const taken = context.read.take('wheelDefect', defect.id, quantity);
  if (taken !== null) return [measured(heading, 'crossLength', taken, limits(taken))];
  const why = context.read.leftOut('wheelDefect', defect.id, quantity);
  if (why === null) return [];
  const fresh = defect.fields.appearance === 'fresh';
  return [
    notMeasured(heading, [
      fresh
        ? 'a size that was there before: the metal is fresh and may be damage from the derailment'
        : `size of the defect undisturbed; read only ${LEFT_OUT_WORDS[why]}`,
    ]),
  ];
}

const shelledWidth = (type: string, taken: Taken): readonly LimitCheck[] =>
  type === 'shelled' || type === 'spalled'
    ? [
        limitCheck({
          name: 'Width of a shelled spot treated as condemnable in interchange',
          citation: 'Common practice',
          sense: 'max',
          limit: SHELL_WIDTH_MM,
          source: { text: 'A shelled spot wider than 1 in', status: 'common practice, no source' },
          value: taken.value,
          u: taken.u,
        }),
      ]
    : [];

function nameOf(context: Context, defect: Entity, wheelset: Entity | undefined): string {
  const field = wheelDefectKind.fields.find(({ id }) => id === 'type');
  const label =
    field?.type === 'choice' ? field.choices.find(({ id }) => id === defect.fields.type)?.label : undefined;
  const side = defect.fields.side === 'right' ? 'right' : 'left';
  const on = wheelset === undefined ? '' : `, ${axleName(context, wheelset)}`;
  return `${(label ?? 'defect').toLowerCase()}, ${side} wheel${on}`;
}
