import {
  DROP_IN_PARTS,
  dropInMargin,
  dropInMethod,
  dropInShares,
  NEW_NARROW_FLANGE,
  type DropIn,
  type DropInPart,
} from '../../mechanics/drop-in';
import { toCanonical } from '../../readings/convert';
import { standardUncertaintyFromHalfWidth } from '../../readings/uncertainty';
import { derive, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import { draw, notBelowZero } from '../draw';
import type { Finding, Method, Source } from '../finding';
import { keyInputsOf } from '../key-inputs';
import type { Taken } from '../reading-index';
import { allOf, takenFrom } from './from-key-input';

/** Overlap of tread on rail that is needed: 1/2 to 1 in. Engineering judgement. */
export const OVERLAP = {
  key: 'assumed overlap',
  value: toCanonical(0.75, 'in', 'crossLength'),
  u: standardUncertaintyFromHalfWidth(toCanonical(0.25, 'in', 'crossLength')),
} as const;

const OVERLAP_REMARK = 'Overlap needed taken as 3/4 in, anywhere from 1/2 to 1 in.';
const THICKNESS_REMARK =
  'Flange thickness is read 3/8 in above the tread; at the gauge point, 5/8 in below the top of the rail, it is less.';

const NO_SUPPORT: Source = {
  text: 'Margin of zero: the tread has no support left',
  status: 'published',
};

const SHARE_TITLES: Readonly<Record<DropInPart, string>> = {
  flangeWear: 'worn flange',
  narrowBackToBack: 'narrow back-to-back',
  narrowRim: 'narrow rim',
  staticGauge: 'standing gauge',
  movement: 'movement under load',
};

export const dropInShareMethod: Method = {
  ...dropInMethod,
  id: 'drop-in-share',
  name: 'Share of the drop-in margin taken',
};

/** What is left before the far wheel drops between the rails, standing and under load, and what took it. */
export function dropInFindings(context: Context): readonly Finding[] {
  const inputs = keyInputsOf(context);
  const read = {
    backToBack: takenFrom(inputs.backToBackMin),
    flange: takenFrom(inputs.flangeThickness),
    rim: takenFrom(inputs.rimWidth),
    gauge: takenFrom(inputs.gaugeStanding),
    movement: takenFrom(inputs.lateralMovement),
  };
  const still = {
    backToBack: [read.backToBack, 'back-to-back of the first derailed wheelset'],
    flange: [read.flange, 'flange thickness of the flanging wheel'],
    rim: [read.rim, 'rim width of the opposite wheel'],
    gauge: [read.gauge, 'gauge at an undisturbed station within 62 ft before the POD'],
  } as const;
  return [
    margin(context, 'dropInMarginStanding', 'Drop-in margin with the track standing', allOf(still)),
    margin(
      context,
      'dropInMargin',
      'Drop-in margin under load',
      allOf({
        ...still,
        movement: [read.movement, 'sideways movement under load within 62 ft before the POD'],
      }),
    ),
    ...shares(read),
  ];
}

type Needed = ReturnType<typeof allOf<'backToBack' | 'flange' | 'rim' | 'gauge' | 'movement'>>;
type Still = ReturnType<typeof allOf<'backToBack' | 'flange' | 'rim' | 'gauge'>>;

function margin(context: Context, what: string, title: string, needed: Needed | Still): Finding {
  const heading: Heading = {
    part: 'mechanics',
    method: dropInMethod,
    what,
    title,
    subject: null,
    remarks: [OVERLAP_REMARK, THICKNESS_REMARK],
  };
  if ('missing' in needed) return notMeasured(heading, needed.missing);
  const { backToBack, flange, rim, gauge } = needed.all;
  const movement = 'movement' in needed.all ? [needed.all.movement] : [];
  const drawn = draw(
    (v) =>
      dropInMargin({
        backToBackMm: v[0] ?? NaN,
        flangeThicknessMm: v[1] ?? NaN,
        rimWidthMm: v[2] ?? NaN,
        staticGaugeMm: v[3] ?? NaN,
        movementMm: movement.length === 0 ? 0 : (v[4] ?? NaN),
        overlapMm: v[4 + movement.length] ?? NaN,
      }),
    [backToBack, flange, rim, gauge, ...movement],
    context.seed,
    [OVERLAP],
  );
  return measured(heading, 'crossLength', drawn.taken, [
    notBelowZero('Tread still carried by the rail', drawn, NO_SUPPORT),
  ]);
}

const AS_NEW: DropIn = { ...NEW_NARROW_FLANGE, overlapMm: OVERLAP.value, movementMm: 0 };

/** Each part by itself, against a new wheelset on standard gauge: known as soon as its one reading is. */
function shares(read: {
  readonly backToBack: Taken | null;
  readonly flange: Taken | null;
  readonly rim: Taken | null;
  readonly gauge: Taken | null;
  readonly movement: Taken | null;
}): readonly Finding[] {
  const parts: Readonly<Record<DropInPart, readonly [Taken | null, keyof DropIn]>> = {
    flangeWear: [read.flange, 'flangeThicknessMm'],
    narrowBackToBack: [read.backToBack, 'backToBackMm'],
    narrowRim: [read.rim, 'rimWidthMm'],
    staticGauge: [read.gauge, 'staticGaugeMm'],
    movement: [read.movement, 'movementMm'],
  };
  return DROP_IN_PARTS.flatMap((part): readonly Finding[] => {
    const [taken, field] = parts[part];
    if (taken === null) return [];
    return [
      measured(
        {
          part: 'mechanics',
          method: dropInShareMethod,
          what: 'dropInShare',
          title: `Share of the drop-in margin taken by ${SHARE_TITLES[part]}`,
          subject: null,
          slot: part,
          remarks: ['Against a new narrow-flange wheelset on standard gauge; negative gives back.'],
        },
        'crossLength',
        derive((value) => dropInShares({ ...AS_NEW, [field]: value }, NEW_NARROW_FLANGE)[part], [taken]),
      ),
    ];
  });
}
