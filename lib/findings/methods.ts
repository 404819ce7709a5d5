import { asReadMethod, passFailMethod } from './as-read';
import { axleSumMethod } from '../mechanics/axle-sum';
import { climbDistanceMethod } from '../mechanics/climb-distance';
import { climbLimitMethod } from '../mechanics/climb-limit';
import { couplerAngleMethod } from '../mechanics/coupler-angle';
import { couplerForceMethod } from '../mechanics/coupler-force';
import { couplerLateralMethod } from '../mechanics/coupler-lateral';
import { draftGearMethod } from '../mechanics/draft-gear';
import { dropInMethod } from '../mechanics/drop-in';
import { frictionCentreMethod } from '../mechanics/friction-centre';
import { harmonicRollMethod } from '../mechanics/harmonic-roll';
import { locomotiveForceMethod } from '../mechanics/locomotive-force';
import { massChainMethod } from '../mechanics/mass-chain';
import { overturningMethod } from '../mechanics/overturning';
import { pointClearanceMethod } from '../mechanics/point-clearance';
import { resistanceMethod } from '../mechanics/resistance';
import { rolloverMethod } from '../mechanics/rollover';
import { jackknifeMethod, stringlineMethod } from '../mechanics/stringline';
import { trackBuckleMethod } from '../mechanics/track-buckle';
import { trainBrakeMethod } from '../mechanics/train-brake';
import { trainSimulationMethod } from '../mechanics/train-simulation';
import { unbalanceLoadMethod } from '../mechanics/unbalance-load';
import { staticWheelLoadMethod } from '../mechanics/wheel-load';
import { warpUnloadingMethod } from '../mechanics/warp-unloading';
import { leverArmsMethod } from '../rail/lever-arms';
import { combinedDeviationMethod } from '../track/combined-deviation';
import { curvatureMethod } from '../track/curvature';
import { curvingSpeedMethod } from '../track/curving-speed';
import { deviationFromUniformMethod, segmentAverageMethod } from '../track/deviation';
import { gaugeChangeMethod } from '../track/gauge-change';
import { lowJointsMethod } from '../track/low-joints';
import { segmentationMethod } from '../track/segments';
import { underLoadMethod } from '../track/under-load';
import { warpMethod } from '../track/warp';
import { accelerationMethod } from '../train/acceleration';
import { lineProfileMethod } from '../train/line-profile';
import { makeUpMethod } from '../train/make-up';
import { slackMethod } from '../train/slack-events';
import { falseFlangeMethod } from '../turnout/false-flange';
import { pointFitMethod } from '../turnout/point-fit';
import { pointTraceMethod } from '../turnout/point-trace';
import { yawMethod } from '../turnout/yawed';
import { backToBackMethod } from '../wheel/back-to-back';
import { wheelTraceMethod } from '../wheel/trace-features';
import { wearHistoryMethod } from '../wheel/wear-history';
import { railTraceMethod } from '../rail/trace-features';
import { clearanceMethod } from '../contact/clearance';
import { conicityMethod } from '../contact/conicity';
import { flangeContactAngleMethod } from '../contact/flange-angle';
import { headPartMethod } from '../contact/head-part';
import { contactMethod } from '../contact/state';
import { chordDiameterMethod } from '../wheel/chord-diameter';
import { dryClimbLimitMethod } from './mechanics/climb-limit';
import { dropInShareMethod } from './mechanics/drop-in';
import { sectionRolloverMethod } from './mechanics/rollover';
import { unbalanceShareMethod } from './mechanics/unbalance-load';
import { deviationBeforePodMethod } from './track/before-pod';
import { curvatureAverageMethod } from './track/curvature';
import { ruleConditionMethod } from './rules/conditions';
import { warpWithin10Method } from './track/short-warp-10';
import { twistMethod } from './track/twist';
import { shortWarpMethod, warpUnderLoadMethod } from './track/warp';
import { tonnageMethod } from './train/tonnage';
import { sideBearingSumMethod } from './wheels/truck';
import type { Method } from './finding';

/** Every way of computing something, in the order of the screens; adding one is its file and a line here. */
export const METHODS: readonly Method[] = [
  curvatureMethod,
  curvatureAverageMethod,
  segmentationMethod,
  curvingSpeedMethod,
  deviationFromUniformMethod,
  deviationBeforePodMethod,
  combinedDeviationMethod,
  segmentAverageMethod,
  underLoadMethod,
  gaugeChangeMethod,
  warpMethod,
  shortWarpMethod,
  warpWithin10Method,
  warpUnderLoadMethod,
  twistMethod,
  lowJointsMethod,
  backToBackMethod,
  chordDiameterMethod,
  wheelTraceMethod,
  wearHistoryMethod,
  railTraceMethod,
  contactMethod,
  clearanceMethod,
  conicityMethod,
  flangeContactAngleMethod,
  headPartMethod,
  sideBearingSumMethod,
  leverArmsMethod,
  axleSumMethod,
  climbDistanceMethod,
  climbLimitMethod,
  dryClimbLimitMethod,
  couplerForceMethod,
  locomotiveForceMethod,
  trainBrakeMethod,
  couplerAngleMethod,
  couplerLateralMethod,
  stringlineMethod,
  jackknifeMethod,
  draftGearMethod,
  massChainMethod,
  trainSimulationMethod,
  frictionCentreMethod,
  warpUnloadingMethod,
  overturningMethod,
  harmonicRollMethod,
  trackBuckleMethod,
  dropInMethod,
  dropInShareMethod,
  pointClearanceMethod,
  pointFitMethod,
  pointTraceMethod,
  yawMethod,
  falseFlangeMethod,
  resistanceMethod,
  rolloverMethod,
  sectionRolloverMethod,
  unbalanceLoadMethod,
  unbalanceShareMethod,
  staticWheelLoadMethod,
  tonnageMethod,
  lineProfileMethod,
  makeUpMethod,
  accelerationMethod,
  slackMethod,
  asReadMethod,
  passFailMethod,
  ruleConditionMethod,
];
