import type { QuantityGroup } from '../quantity';
import { crossLength, question } from './build';

const ask = (id: string, name: string, short: string, answers: readonly (readonly [string, string])[]) =>
  question('turnout', id, name, short, answers);

export const turnoutConditionGroup: QuantityGroup = {
  id: 'turnoutCondition',
  name: 'Condition of the switch',
  screen: 'turnout',
  subject: 'turnout',
  howTo: {
    take: 'Before anyone throws the switch. See how the point lies against the stock rail over its planed length, with the stand closed, and press it by hand and bar. Look at the tip and along the point for chips, wear and metal flow, for bright marks of tread edges on the gauge side of the stock rail, and at every fastening. Try the lever only after position and lock are on record and the railroad allows it.',
    why: 'The rules give no figure for these; each is seen and either holds or does not. A point that does not lie home is where a flange can take the wrong side.',
    bearsOn: ['switchPointPick', 'runThroughSwitch'],
    spoiledBy: 'The switch thrown, run through or repaired after the derailment.',
    figure: 'pointAndStockRail',
  },
  quantities: [
    ask('pointFits', 'Point against its stock rail', 'Fit of the point', [
      ['fits', 'Fits'],
      ['standsOff', 'Stands off'],
      ['spoiledByMovement', 'Fit spoiled by movement of stock rail or plates'],
    ]),
    ask('pointRail', 'Point rail', 'Point rail', [
      ['whole', 'Whole'],
      ['cracked', 'Cracked'],
      ['broken', 'Broken'],
    ]),
    ask('pointWorn', 'Wear of the point', 'Wear', [
      ['sound', 'Sound, or worn as usual'],
      ['unusual', 'Unusually chipped or worn'],
      ['metalFlow', 'Metal flow keeps it from closing'],
    ]),
    ask('treadAtStockRail', 'Tread edges on the gauge side of the stock rail', 'Tread at stock rail', [
      ['clear', 'No trace of them'],
      ['touches', 'They touch it'],
    ]),
    ask('throwLever', 'Throw lever with lock or keeper in place', 'Lever', [
      ['held', 'Held'],
      ['moves', 'Can be moved'],
    ]),
    ask('positionIndicator', 'Switch position indicator', 'Indicator', [
      ['visible', 'Clearly visible'],
      ['hidden', 'Not clearly visible'],
      ['none', 'None fitted'],
    ]),
    ask('turnoutFastenings', 'Fastenings of the turnout', 'Fastenings', [
      ['intact', 'Intact'],
      ['loose', 'Loose'],
      ['missing', 'Missing or broken'],
    ]),
    ask('turnoutClear', 'Obstructions in switch, frog or guard rail', 'Obstructions', [
      ['clear', 'None'],
      ['obstructed', 'In the way of wheels'],
    ]),
    ask('turnoutAnchors', 'Rail anchors through and beside the turnout', 'Anchors', [
      ['hold', 'Hold the rails'],
      ['few', 'Too few, or off the ties'],
      ['none', 'None'],
    ]),
  ],
};

export const frogConditionGroup: QuantityGroup = {
  id: 'frogCondition',
  name: 'Kind and condition of the frog',
  screen: 'turnout',
  subject: 'turnout',
  howTo: {
    take: 'Say which kind of frog it is. On a spring rail frog see that the spring holds the wing rail against the point rail, that its toe is tamped and bolted, look for tread marks on its gauge side, and measure the clearance between hold-down housing and horn. On a self-guarded frog lay a straightedge on the raised guard and measure its wear against the new height.',
    why: 'A wing rail that stands off, or a guard worn low, leaves the wheel to find its own way past the point.',
    bearsOn: ['switchPointPick', 'wideGauge'],
    spoiledBy: 'Parts struck by derailed wheels, frog taken apart since.',
    figure: 'frogAndGuard',
  },
  quantities: [
    ask('frogKind', 'Kind of frog', 'Kind', [
      ['rigid', 'Rigid, with guard rails'],
      ['springRail', 'Spring rail'],
      ['selfGuarded', 'Self-guarded'],
      ['movablePoint', 'Movable point'],
      ['flangeBearing', 'Flange-bearing'],
    ]),
    ask('heavyPointFrog', 'Heavy-point frog', 'Heavy point', [
      ['no', 'No'],
      ['equipped', 'Yes, marked, with plates, elastic fasteners and braces'],
      ['notEquipped', 'Yes, not marked or without them'],
    ]),
    ask('springWingTread', 'Tread edges on the gauge side of the wing rail', 'Tread at wing rail', [
      ['clear', 'No trace of them'],
      ['touches', 'They touch it'],
    ]),
    ask('springWingToe', 'Toe of the wing rail', 'Wing toe', [
      ['firm', 'Tamped and fully bolted'],
      ['loose', 'Not tamped, or bolts loose or missing'],
    ]),
    ask('springFrogBody', 'Bolt holes, head and web of the spring frog', 'Body', [
      ['sound', 'Sound'],
      ['defect', 'Bolt-hole defect or head-web separation'],
    ]),
    ask('springHolds', 'Spring holds the wing rail against the point rail', 'Spring', [
      ['yes', 'Yes'],
      ['no', 'No'],
    ]),
    crossLength('turnout', {
      id: 'springFrogHorn',
      name: 'Clearance between hold-down housing and horn',
      short: 'Horn clearance',
      possibleIn: [0, 3],
      usualIn: [0, 0.5],
      referenceIn: [0, 0.25],
      referenceSource: 'engineering judgement',
    }),
    crossLength('turnout', {
      id: 'raisedGuardWear',
      name: 'Wear of the raised guard of a self-guarded frog',
      short: 'Guard worn',
      possibleIn: [0, 2],
      usualIn: [0, 0.5],
      referenceIn: [0, 0.375],
      referenceSource: 'engineering judgement',
    }),
    ask('guardingFace', 'Self-guarded frog rebuilt in place', 'Guarding face', [
      ['notRebuilt', 'Not rebuilt'],
      ['restored', 'Guarding face restored first'],
      ['notRestored', 'Point rebuilt, guarding face not restored'],
    ]),
  ],
};
