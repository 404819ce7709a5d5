import type { QuantityGroup } from '../quantity';
import { observation } from './build';

const ask = (id: string, short: string, question: string) => observation('case', id, short, question);

export const markObservations: QuantityGroup = {
  id: 'markObservations',
  name: 'Marks looked for',
  screen: 'marks',
  subject: 'case',
  howTo: {
    take: 'Walk both rails well back of where the marks seem to start, then forward again. For each line say seen, looked for and not found, or could not tell, and how much of the place you could examine.',
    why: 'Each line is expected under some explanations and not under others. Not finding a mark where you looked tells something; not looking tells nothing.',
    bearsOn: ['wheelClimb', 'railRollover', 'wideGauge', 'switchPointPick'],
    spoiledBy: 'Looking only for what fits the first idea.',
    figure: 'walkBack',
  },
  quantities: [
    ask(
      'obsFlangeAcrossHead',
      'Flange mark across the head',
      'A fresh flange mark that begins at the gauge corner, runs slantwise over the head and ends at the field side',
    ),
    ask(
      'obsRimMarkInside',
      'Rim mark along the inside',
      'A fresh tread-rim mark along the inside of the head or gauge corner, where a wheel dropped between the rails',
    ),
    ask(
      'obsMateInside',
      'Mate dropped between the rails',
      'Where one wheel dropped to the field side, the mark of its mate dropping between the rails at the same station',
    ),
    ask(
      'obsMateHardAgainst',
      'Mate hard against its rail',
      'Fresh hard flange rubbing on the opposite rail at the station of the drop',
    ),
    ask(
      'obsRunningOnWeb',
      'Running marks on web or base',
      'Running marks of wheels on the gauge-side web, fillet or base of a rail that lay over',
    ),
    ask(
      'obsFirstMarkAtPoint',
      'First mark at a switch point',
      'The first mark of all lies on or within a few feet of a switch point',
    ),
    ask(
      'obsTieMarksOrder',
      'Tie marks start with one axle',
      'Marks on ties begin with the wheels of one axle, before any of the neighbouring trucks',
    ),
  ],
};

export const trackObservations: QuantityGroup = {
  id: 'trackObservations',
  name: 'Track condition looked for',
  screen: 'track',
  subject: 'case',
  howTo: {
    take: 'Look at the fifty feet before the POD that no derailed wheel has touched, and at the same length beyond the disturbed part.',
    why: 'Whether the track would have held, and whether it was pushed or had moved by itself.',
    bearsOn: ['wideGauge', 'railRollover', 'trackBuckle', 'harmonicRoll', 'vandalism'],
    spoiledBy: 'Judging ties and spikes that the derailed wheels struck.',
    figure: 'tieCount',
  },
  quantities: [
    ask(
      'obsTiesClustered',
      'Defective ties in a row',
      'Three or more ties side by side, outside the damage, that do not hold the rail to gauge',
    ),
    ask(
      'obsFreshPlateSlide',
      'Fresh sliding of plates',
      'Bright fresh sliding marks of plates or rail base towards the field side, outside the damage',
    ),
    ask(
      'obsLineKink',
      'Kink in the line',
      'A kink in the line of the rail within 62 ft before the POD, outside the damage',
    ),
    ask(
      'obsLateralShift',
      'Track shifted bodily',
      'The whole track shifted sideways, ties and all, in a curve of one or more waves',
    ),
    ask(
      'obsTampering',
      'Signs of tampering',
      'Locks cut, fastenings taken out in a row with tools, or things placed on the rail',
    ),
    ask(
      'obsLowJointsInRow',
      'Low joints in a row',
      'Five or more low joints one after another on staggered rail',
    ),
  ],
};

export const railObservations: QuantityGroup = {
  id: 'railObservations',
  name: 'Rail condition looked for',
  screen: 'rails',
  subject: 'case',
  howTo: {
    take: 'Look at both rails, the plates below them and every broken piece. Recover every piece and lay them end to end before judging a break.',
    why: 'They tell whether the head rotated, the base moved, or the rail broke first.',
    bearsOn: ['railRollover', 'wideGauge', 'wheelClimb', 'brokenRail'],
    spoiledBy: 'Breaks made by derailed wheels. Spikes drawn by machines.',
    figure: 'spikesAndPlate',
  },
  quantities: [
    ask(
      'obsRailLyingOver',
      'Rail lying over',
      'A rail lying over on its field side with its base largely in place',
    ),
    ask(
      'obsGaugeSpikesLifted',
      'Gauge-side spikes lifted',
      'Gauge-side spikes lifted in a row, field-side spikes still down',
    ),
    ask(
      'obsPlatesCutField',
      'Plates cut at the field edge',
      'Plates cut into the ties at the field edge, or tilted outward, outside the damage',
    ),
    ask(
      'obsFieldBand',
      'Running band on the field side',
      'The shiny band of the low rail at its field side before the POD',
    ),
    ask(
      'obsDryGaugeFace',
      'Gauge face dry and rough',
      'The gauge face of the high rail before the POD dry and rough, with steel flakes at its foot',
    ),
    ask(
      'obsOldBreak',
      'Break with an old surface',
      'A rail break with a dark, rusted or fatigue-marked part of its surface',
    ),
    ask(
      'obsReceivingBatter',
      'Batter on the receiving end',
      'Batter on the receiving end at a rail break or joint. Its absence proves nothing',
    ),
  ],
};

export const turnoutObservations: QuantityGroup = {
  id: 'turnoutObservations',
  name: 'Switch condition looked for',
  screen: 'turnout',
  subject: 'case',
  howTo: {
    take: 'Before anyone throws the switch. Look at the tip of the point in strong side light, at the top of the point for the first six feet, and at where each truck went.',
    why: 'A battered tip alone may be damage from the derailment; with a flange mark on the point and split routes it is not.',
    bearsOn: ['switchPointPick', 'runThroughSwitch'],
    spoiledBy: 'A switch thrown or spiked after the derailment.',
    figure: 'pointAndStockRail',
  },
  quantities: [
    ask(
      'obsPointTipStruck',
      'Tip of the point struck',
      'Fresh bright strike or batter at the very tip of the point',
    ),
    ask(
      'obsFlangeOnPoint',
      'Flange mark on the point',
      'A fresh flange mark that begins on top of the point within a few feet of its tip',
    ),
    ask('obsRoutesSplit', 'Routes split', 'Two trucks, or two wheels of one axle, went to different routes'),
    ask('obsPointChipped', 'Point chipped or worn', 'Old chipping or heavy wear at the tip, rust in it'),
    ask(
      'obsPointStandsOpen',
      'Point stands open',
      'The closed point stands open from the stock rail, or opens when pried or loaded',
    ),
    ask(
      'obsRunThrough',
      'Run-through damage',
      'Bent rods, broken lock or points forced, as a trailing movement through a wrongly lined switch leaves',
    ),
  ],
};

export const wheelObservations: QuantityGroup = {
  id: 'wheelObservations',
  name: 'Running gear looked for',
  screen: 'wheels',
  subject: 'case',
  howTo: {
    take: 'Look at every wheel, axle, bearing and truck of the first derailed car and of its neighbours that stayed on.',
    why: 'A truck that would not turn, a wheel that shifted or broke, a load that moved: each has its own traces, and fresh ones are usually damage.',
    bearsOn: ['wheelClimb', 'brokenWheel', 'defectiveCar', 'loadShift'],
    spoiledBy: 'Damage from running on the ground and from the cranes.',
    figure: 'sideBearing',
  },
  quantities: [
    ask(
      'obsTruckStiff',
      'Truck did not turn freely',
      'Signs that the first derailed truck turned stiffly: centre plate galled or binding, side bearings bright and hard down on both sides',
    ),
    ask(
      'obsSideBearingHard',
      'Side bearing hard down',
      'Bright hard contact on one side bearing of the first derailed truck, older than the derailment',
    ),
    ask(
      'obsThinSharpFlange',
      'Flange worn thin or steep',
      'Flange of the first derailed wheel worn thin, vertical or to a sharp tip, worn metal not fresh',
    ),
    ask(
      'obsFalseFlange',
      'False flange',
      'A raised field-side edge on the tread of the first derailed axle or those just ahead',
    ),
    ask(
      'obsWheelBroken',
      'Wheel, axle or journal failed',
      'A wheel, axle or journal with an old crack surface or burnt off',
    ),
    ask(
      'obsTreadNicks',
      'Matching tread nicks',
      'Nicks on the treads of wheels that stayed on, ahead of the first derailed, matching a rail break',
    ),
  ],
};

export const trainObservations: QuantityGroup = {
  id: 'trainObservations',
  name: 'Train and load looked for',
  screen: 'train',
  subject: 'case',
  howTo: {
    take: 'Read the recorder and ask the crew separately. Look at couplers, at the lading and at the sides of cars beside the track.',
    why: 'Pull and push in the train, an obstruction or a shifted load can lift a wheel off though wheel and rail are sound.',
    bearsOn: ['inTrainForce', 'loadShift', 'obstruction', 'overspeed'],
    spoiledBy: 'Lading that moved in the pile.',
    figure: 'couplerForces',
  },
  quantities: [
    ask(
      'obsSlackEvent',
      'Run-in or run-out',
      'A brake, throttle or crew report of slack running in or out in the half minute before',
    ),
    ask(
      'obsCouplerAngle',
      'Couplers jammed at an angle',
      'Couplers at the first derailed car jammed hard over, side marks on the striker',
    ),
    ask(
      'obsLoadShifted',
      'Load shifted',
      'Lading shifted to one side or end, with traces older than the pile',
    ),
    ask(
      'obsObstruction',
      'Something on the rail',
      'Pieces of something run over, marks of it on the rail head, pilot or wheels',
    ),
  ],
};
