import type { Source } from '../../findings/finding';
import type { RuleCondition } from '../rule-set';

const reprint = (section: string): Source => ({
  text: `49 CFR ${section}, read in a public reprint of the Code with the amendments of 2020`,
  status: 'published',
});

const ALL = ['1', '2', '3', '4', '5'];
const FROM_3 = ['3', '4', '5'];

type Said = Pick<RuleCondition, 'id' | 'wants' | 'quantity' | 'notMet'> &
  Partial<Pick<RuleCondition, 'classes' | 'note'>>;

/** Conditions of one section, by paragraph. */
const of = (
  section: string,
  paragraphs: Readonly<Record<string, Said | readonly Said[]>>,
): readonly RuleCondition[] =>
  Object.entries(paragraphs)
    .flatMap(([paragraph, said]) => [said].flat().map((each) => [paragraph, each] as const))
    .map(([paragraph, said]) => ({
      classes: ALL,
      citation: `49 CFR ${section}${paragraph}`,
      source: reprint(section),
      ...said,
    }));

/** No reprint of the section was at hand. */
const CURVE_ELEVATION: Pick<RuleCondition, 'classes' | 'source'> = {
  classes: ALL,
  source: { text: '49 CFR 213.59 (no reprint of the section was at hand)', status: 'from memory' },
};

const geometry: readonly RuleCondition[] = [
  {
    ...CURVE_ELEVATION,
    id: 'elevation-throughout',
    wants: 'full elevation throughout an elevated curve, unless physical conditions do not permit it',
    quantity: 'elevationThroughout',
    notMet: ['no'],
    citation: '49 CFR 213.59(a)',
  },
  {
    ...CURVE_ELEVATION,
    id: 'elevation-runoff',
    wants: 'elevation runs off at a uniform rate and over the full length of the spirals at least',
    quantity: 'elevationRunoff',
    notMet: ['uneven', 'short'],
    citation: '49 CFR 213.59(b)',
    note: 'Where physical conditions do not permit a spiral long enough, part of the runoff may lie on tangent.',
  },
];

/** A track owner may call a segment excepted only where all of these hold. */
const excepted = of('213.4', {
  '(a)': {
    id: 'excepted-named',
    wants: 'the segment is named as excepted in timetable, instructions or orders',
    quantity: 'exceptedNamed',
    notMet: ['no'],
  },
  '(b)': {
    id: 'excepted-adjacent',
    wants: 'no track within 30 ft can be used at the same time at more than 10 mph',
    quantity: 'exceptedAdjacent',
    notMet: ['yes'],
  },
  '(c)': {
    id: 'excepted-inspected',
    wants: 'the segment is inspected as often as class 1 track',
    quantity: 'exceptedInspected',
    notMet: ['no'],
  },
  '(d)': {
    id: 'excepted-bridge-street',
    wants:
      'no placarded cars move over it where it lies on a bridge, within 100 ft of one, or on a public street',
    quantity: 'exceptedBridge',
    notMet: ['placarded'],
  },
  '(e)(2)': {
    id: 'excepted-passenger',
    wants: 'no occupied passenger train is run',
    quantity: 'exceptedPassenger',
    notMet: ['yes'],
  },
}).map((condition) => ({ ...condition, classes: ['excepted'] }));

const ties: readonly RuleCondition[] = [
  ...of('213.109', {
    '(e)': [
      {
        id: 'joint-tie-1-2',
        wants: 'a sound tie has its centreline within 24 in of the joint',
        quantity: 'jointTies',
        notMet: ['none'],
        classes: ['1', '2'],
      },
      {
        id: 'joint-tie-3-5',
        wants: 'a sound tie has its centreline within 18 in of the joint, or one on each side within 24 in',
        quantity: 'jointTies',
        notMet: ['none', 'oneWithin24'],
        classes: FROM_3,
      },
    ],
  }),
  ...of('213.123', {
    '(a)': {
      id: 'tie-plates',
      wants: 'tie plates lie under the running rails on at least eight of any ten timber ties in a row',
      quantity: 'tiePlates',
      notMet: ['fewer'],
      classes: FROM_3,
    },
  }),
  ...of('213.127', {
    '(a)': {
      id: 'fastenings-hold-gauge',
      wants: 'the fastenings together hold gauge within its limits',
      quantity: 'fasteningsHold',
      notMet: ['no'],
      note: 'Whether gauge is held is also measured: gauge with movement under load added.',
    },
  }),
];

const switches: readonly RuleCondition[] = [
  ...of('213.133', {
    '(a)': [
      {
        id: 'turnout-fastenings',
        wants: 'the fastenings are intact and keep the parts securely in place',
        quantity: 'turnoutFastenings',
        notMet: ['loose', 'missing'],
      },
      {
        id: 'turnout-clear',
        wants: 'switch, frog and guard rail are free of what may interfere with wheels',
        quantity: 'turnoutClear',
        notMet: ['obstructed'],
      },
    ],
    '(b)': {
      id: 'turnout-anchors',
      wants: 'rail anchors through the turnout and on each side of it restrain the rails',
      quantity: 'turnoutAnchors',
      notMet: ['few', 'none'],
      classes: FROM_3,
    },
  }),
  ...of('213.135', {
    '(a)': {
      id: 'stock-rail-seated',
      wants: 'the stock rail is securely seated in its plates',
      quantity: 'stockRailSeated',
      notMet: ['loose', 'lifted'],
    },
    '(b)': {
      id: 'point-fits',
      wants: 'the point fits its stock rail with the stand in its closed position',
      quantity: 'pointFits',
      notMet: ['standsOff', 'spoiledByMovement'],
    },
    '(b) with 213.113': {
      id: 'point-whole',
      wants: 'a broken or cracked point rail is dealt with as a defective rail',
      quantity: 'pointRail',
      notMet: ['cracked', 'broken'],
    },
    '(c)': {
      id: 'tread-clears-stock-rail',
      wants: 'the outer edge of a wheel tread cannot touch the gauge side of the stock rail',
      quantity: 'treadAtStockRail',
      notMet: ['touches'],
    },
    '(d)': {
      id: 'heel-secure',
      wants: 'the heel is secure and its bolts are tight',
      quantity: 'heelState',
      notMet: ['loose', 'broken'],
    },
    '(e)': {
      id: 'stand-and-rods',
      wants: 'stand and connecting rod are securely fastened, without excessive lost motion',
      quantity: 'switchLocked',
      notMet: ['loose', 'broken'],
    },
    '(f)': {
      id: 'throw-lever',
      wants: 'the throw lever cannot be moved with the lock or keeper in place',
      quantity: 'throwLever',
      notMet: ['moves'],
    },
    '(g)': {
      id: 'position-indicator',
      wants: 'the switch position indicator is clearly visible',
      quantity: 'positionIndicator',
      notMet: ['hidden'],
    },
    '(h)': {
      id: 'point-not-worn',
      wants: 'an unusually chipped or worn point is repaired or replaced, and metal flow removed',
      quantity: 'pointWorn',
      notMet: ['unusual', 'metalFlow'],
    },
  }),
];

const frogs: readonly RuleCondition[] = [
  ...of('213.139', {
    '(a)': {
      id: 'spring-wing-tread',
      wants: 'the outer edge of a wheel tread does not touch the gauge side of the spring wing rail',
      quantity: 'springWingTread',
      notMet: ['touches'],
    },
    '(b)': {
      id: 'spring-wing-toe',
      wants: 'the toe of each wing rail is solidly tamped and fully and tightly bolted',
      quantity: 'springWingToe',
      notMet: ['loose'],
    },
    '(c)': {
      id: 'spring-frog-whole',
      wants: 'a frog with a bolt-hole defect or head-web separation is replaced',
      quantity: 'springFrogBody',
      notMet: ['defect'],
    },
    '(d)': {
      id: 'spring-holds',
      wants: 'the spring holds the wing rail against the point rail',
      quantity: 'springHolds',
      notMet: ['no'],
    },
  }),
  ...of('213.141', {
    '(b)': {
      id: 'guarding-face-restored',
      wants: 'the guarding face is restored before a point is rebuilt in place',
      quantity: 'guardingFace',
      notMet: ['notRestored'],
    },
  }),
];

/**
 * What 49 CFR part 213 wants of curves, excepted track, ties, switches and frogs without giving a figure for
 * it: which answers to which question do not meet the rule.
 */
export const conditions: readonly RuleCondition[] = [
  ...geometry,
  ...excepted,
  ...ties,
  ...switches,
  ...frogs,
];
