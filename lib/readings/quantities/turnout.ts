import type { Choice, QuantityGroup, Slot } from '../quantity';
import { ALONG, crossLength, degrees, feet, TAPE } from './build';

const point = (
  id: string,
  name: string,
  short: string,
  possibleIn: [number, number],
  usualIn: [number, number],
  referenceIn: [number, number],
  slots: readonly Slot[] = [],
) =>
  crossLength('turnout', {
    id,
    name,
    short,
    slots,
    possibleIn,
    usualIn,
    referenceIn,
    referenceSource: 'switches in freight service; engineering judgement',
  });

const state = (
  id: string,
  name: string,
  short: string,
  choices: readonly (readonly [string, string])[],
): Choice => ({
  kind: 'choice',
  id,
  name,
  short,
  subject: 'turnout',
  slots: [],
  choices: [
    ...choices.map(([choice, label]) => ({ id: choice, label })),
    { id: 'couldNotTell', label: 'Could not tell' },
  ],
});

/** Feet behind the tip at which a point is read, with the slots they are kept under. */
export const BEHIND_TIP: readonly (Slot & { readonly feet: number })[] = [1, 2, 3, 4, 5].map((n) => ({
  id: `ft${n}`,
  label: `${n} ft`,
  feet: n,
}));

const BEHIND_SLOTS: readonly Slot[] = BEHIND_TIP.map(({ id, label }) => ({ id, label }));

export const switchStateGroup: QuantityGroup = {
  id: 'switchState',
  name: 'Place, throw and lock',
  screen: 'turnout',
  subject: 'turnout',
  howTo: {
    take: 'Before anyone throws the switch. Tape along the rail from the POD to the tip of the point: before the POD is negative, in the direction of travel. See whether the point is thrown home, whether stand, lock and rods are fast, whether the heel is tight and the stock rail seated. Heel spread is between the gauge lines of stock rail and point rail at the heel.',
    why: 'A flange that takes the wrong side does so at the point: only a turnout close to the POD can have to do with it. A loose rod, heel or stock rail lets the point open under load.',
    bearsOn: ['switchPointPick', 'runThroughSwitch'],
    spoiledBy: 'The switch thrown, spiked or run through after the derailment.',
    figure: 'pointAndStockRail',
  },
  quantities: [
    {
      kind: 'measure',
      id: 'pointPlace',
      name: 'Tip of the point from the POD',
      short: 'From POD',
      subject: 'turnout',
      slots: [],
      dimension: 'alongTrack',
      bareUnit: ALONG,
      possible: [feet(-20_000), feet(20_000)],
      usual: [feet(-2_000), feet(2_000)],
      defaultResolution: TAPE,
      reference: { low: feet(-200), high: feet(50), source: 'engineering judgement' },
    },
    state('pointThrown', 'Point as found', 'Point', [
      ['home', 'Home against the stock rail'],
      ['open', 'Not home'],
      ['between', 'Neither point closed'],
    ]),
    state('switchLocked', 'Stand, lock and rods', 'Lock and rods', [
      ['fast', 'Locked, rods fast'],
      ['loose', 'Locked, rods or stand loose'],
      ['unlocked', 'Not locked'],
      ['broken', 'Lock or rods broken'],
    ]),
    state('pointGuarded', 'Point protection', 'Protection', [
      ['none', 'None fitted'],
      ['sound', 'Fitted and sound'],
      ['worn', 'Fitted, worn or loose'],
      ['housed', 'Stock rail bent or undercut to house the tip'],
    ]),
    state('heelState', 'Heel of the point', 'Heel', [
      ['tight', 'Tight'],
      ['loose', 'Bolts loose or missing'],
      ['broken', 'Broken'],
    ]),
    state('stockRailSeated', 'Stock rail in its plates', 'Stock rail', [
      ['seated', 'Seated, braces tight'],
      ['loose', 'Braces or fastenings loose'],
      ['lifted', 'Rolled or lifted'],
    ]),
    point('heelSpread', 'Heel spread', 'Heel spread', [3, 12], [5, 7.5], [6, 6.5]),
  ],
};

export const pointFitGroup: QuantityGroup = {
  id: 'pointFit',
  name: 'Point and stock rail',
  screen: 'turnout',
  subject: 'turnout',
  howTo: {
    take: 'Before anyone throws the switch, photograph both points, the lock and the rods. Then, on the closed point: gap to the stock rail at the tip; how far the tip’s gauge side stands out of the gauge line of the stock rail, measured from the stock rail and without the gap (thickness; where the stock rail is bent or undercut for the point, only what stands out counts); how far the tip lies below the top of the stock rail; where a chip begins, its length and depth; the throw.',
    why: 'A flange can only take the wrong side of the point if the tip stands within its reach and outside its face, or offers it a slope.',
    bearsOn: ['switchPointPick', 'runThroughSwitch'],
    spoiledBy:
      'The switch thrown, run through or repaired after the derailment. Gap read without load on a loose plate.',
    figure: 'pointAndStockRail',
  },
  quantities: [
    point('pointGap', 'Gap between point and stock rail at the tip', 'Gap', [0, 6], [0, 0.5], [0, 0.1875]),
    point(
      'tipThickness',
      'Thickness of the tip that stands out of the gauge line',
      'Thickness',
      [0, 3],
      [0, 0.75],
      [0, 0.25],
    ),
    point('tipDepth', 'Tip below the top of the stock rail', 'Below top', [-0.5, 3], [0.25, 1.5], [0.5, 1]),
    point('chipFrom', 'Chip begins behind the tip', 'Chip from', [0, 60], [0, 24], [0, 6]),
    point('chipLength', 'Length of the chip', 'Chip length', [0, 40], [0, 12], [0, 4]),
    point(
      'chipDepth',
      'Depth of the chip below the top of the point',
      'Chip depth',
      [0, 3],
      [0, 1],
      [0, 0.5],
    ),
    point('pointThrow', 'Throw at the point', 'Throw', [0, 8], [3.5, 5.5], [4, 5]),
  ],
};

export const alongPointGroup: QuantityGroup = {
  id: 'alongPoint',
  name: 'Along the point',
  screen: 'turnout',
  subject: 'turnout',
  howTo: {
    take: 'Chalk the stock rail every foot from the tip back. At each chalk: the gap between point and stock rail, the thickness that stands out of the gauge line (at the top of the point, without the gap), and how far the top of the point lies below the top of the stock rail; above it is negative. Leave out what was not read. Lay a protractor on the planed gauge side of the point for its slope.',
    why: 'The flange first meets the point where it has become thick enough; that is normal running where the flange is steep and no wear shows. A gap along the point lets it bend away under the wheel.',
    bearsOn: ['switchPointPick'],
    spoiledBy: 'Metal flow at the top taken for the point’s edge. The point read open.',
    figure: 'alongPoint',
  },
  quantities: [
    point('gapBehind', 'Gap behind the tip', 'Gap', [0, 6], [0, 0.5], [0, 0.125], BEHIND_SLOTS),
    point(
      'thicknessBehind',
      'Thickness behind the tip',
      'Thickness',
      [0, 6],
      [0, 3],
      [0.125, 2],
      BEHIND_SLOTS,
    ),
    point(
      'depthBehind',
      'Top of the point below the stock rail',
      'Below top',
      [-1.5, 3],
      [-0.5, 1],
      [-0.25, 0.5],
      BEHIND_SLOTS,
    ),
    {
      kind: 'measure',
      id: 'pointFaceAngle',
      name: 'Slope of the point’s gauge side',
      short: 'Side slope',
      subject: 'turnout',
      slots: [],
      dimension: 'angle',
      bareUnit: { us: '°', metric: '°' },
      possible: [degrees(45), degrees(89.5)],
      usual: [degrees(65), degrees(89)],
      defaultResolution: {
        halfWidth: degrees(2),
        source: 'protractor laid on the face; engineering judgement',
      },
      reference: { low: degrees(74), high: degrees(86), source: 'engineering judgement' },
    },
  ],
};

export const frogAndGuardGroup: QuantityGroup = {
  id: 'frogAndGuard',
  name: 'Frog and guard rail',
  screen: 'turnout',
  subject: 'turnout',
  howTo: {
    take: 'Across the track at the frog point: from the gauge line of the frog to the guard line of the guard rail (guard check gauge), and between the guard lines (guard face gauge). Width and depth of the flangeway. How far the frog point and tread have worn down, and how far back the point is worn or chipped.',
    why: 'The guard rail must keep the far wheel from reaching the frog point.',
    bearsOn: ['switchPointPick', 'wideGauge'],
    spoiledBy: 'A guard rail bent or moved by the derailed wheels.',
    figure: 'frogAndGuard',
  },
  quantities: [
    point('guardCheckGauge', 'Guard check gauge', 'Check gauge', [50, 58], [53.5, 55.5], [54, 54.75]),
    point('guardFaceGauge', 'Guard face gauge', 'Face gauge', [49, 57], [52, 54], [52.5, 53.25]),
    point('flangewayWidth', 'Flangeway width', 'Width', [0, 5], [1.5, 2.5], [1.75, 2]),
    point('flangewayDepth', 'Flangeway depth', 'Depth', [0, 5], [1.25, 2.5], [1.5, 2]),
    point('frogPointDown', 'Frog point chipped or worn down', 'Point down', [0, 3], [0, 1], [0, 0.5]),
    point('frogPointBack', 'Frog point chipped or worn back', 'Point back', [0, 40], [0, 18], [0, 6]),
    point(
      'frogTreadWear',
      'Frog tread worn below its original contour',
      'Tread worn',
      [0, 2],
      [0, 0.5],
      [0, 0.25],
    ),
  ],
};
