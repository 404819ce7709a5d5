import type { QuantityGroup } from '../quantity';
import { crossLength } from './build';

const point = (
  id: string,
  name: string,
  short: string,
  possibleIn: [number, number],
  usualIn: [number, number],
  referenceIn: [number, number],
) =>
  crossLength('turnout', {
    id,
    name,
    short,
    possibleIn,
    usualIn,
    referenceIn,
    referenceSource: 'switches in freight service; engineering judgement',
  });

export const pointFitGroup: QuantityGroup = {
  id: 'pointFit',
  name: 'Point and stock rail',
  screen: 'turnout',
  subject: 'turnout',
  howTo: {
    take: 'Before anyone throws the switch, photograph both points, the lock and the rods. Then, on the closed point: gap to the stock rail at the tip; how far the tip’s gauge side stands out of the gauge line of the stock rail, measured from the stock rail and without the gap (thickness; where the stock rail is bent or undercut for the point, only what stands out counts); how far the tip lies below the top of the stock rail; length and depth of any chip; the throw.',
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

export const frogAndGuardGroup: QuantityGroup = {
  id: 'frogAndGuard',
  name: 'Frog and guard rail',
  screen: 'turnout',
  subject: 'turnout',
  howTo: {
    take: 'Across the track at the frog point: from the gauge line of the frog to the guard line of the guard rail (guard check gauge), and between the guard lines (guard face gauge). Width and depth of the flangeway. How far the frog point and tread have worn down.',
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
