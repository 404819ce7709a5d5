import type { OtherExplanation } from '../explanation';
import { brokenRail } from './broken-rail';
import { brokenWheel } from './broken-wheel';
import { defectiveCar } from './defective-car';
import { harmonicRoll } from './harmonic-roll';
import { inTrainForce } from './in-train-force';
import { loadShift } from './load-shift';
import { obstruction } from './obstruction';
import { overspeed } from './overspeed';
import { runThroughSwitch } from './run-through-switch';
import { trackBuckle } from './track-buckle';
import { vandalism } from './vandalism';

/** To be excluded with reasons or left standing; never forced into the four. */
export const OTHER_EXPLANATIONS: readonly OtherExplanation[] = [
  brokenRail,
  brokenWheel,
  trackBuckle,
  inTrainForce,
  harmonicRoll,
  overspeed,
  loadShift,
  obstruction,
  vandalism,
  runThroughSwitch,
  defectiveCar,
];
