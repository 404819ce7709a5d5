import type { CaseRecord } from '../case/record';
import { buildContext, type Context, type FindingOptions } from './context';
import { contactFindings } from './contact/contact-findings';
import type { Finding } from './finding';
import { gathered } from './gathered';
import { climbDistanceFindings } from './mechanics/climb-distance';
import { climbLimitFindings } from './mechanics/climb-limit';
import { curvingLoadFindings } from './mechanics/curving-loads';
import { dropInFindings } from './mechanics/drop-in';
import { rolloverFindings } from './mechanics/rollover';
import { screenFindings } from './mechanics/screens';
import { unbalanceLoadFindings } from './mechanics/unbalance-load';
import { railReadingFindings } from './rails/rail-readings';
import { couplerForceFindings } from './train/coupler-forces';
import { lineFindings } from './train/line-findings';
import { makeUpFindings } from './train/make-up';
import { conditionFindings } from './rules/conditions';
import { trackFindings } from './track';
import { recorderFindings } from './train/recorder';
import { speedFindings } from './train/speed';
import { tonnageFindings } from './train/tonnage';
import { vehicleLoadFindings } from './train/vehicle-load';
import { falseFlangeFindings } from './turnout/false-flange';
import { pointClearanceFindings } from './turnout/point-clearance';
import { pointOutlineFindings } from './turnout/point-outlines';
import { turnoutReadingFindings } from './turnout/turnout-readings';
import { backToBackFindings } from './wheels/back-to-back';
import { defectFindings } from './wheels/defects';
import { diameterFindings } from './wheels/diameter';
import { truckFindings } from './wheels/truck';
import { wearFindings } from './wheels/wear';
import { wheelLimitFindings } from './wheels/wheel-limits';
import { shapeFindings } from './traced/shape-findings';

/** Everything that is found, in the order of the screens; adding one is a file and its line here. */
const FINDINGS: readonly ((context: Context) => readonly Finding[])[] = [
  speedFindings,
  recorderFindings,
  tonnageFindings,
  makeUpFindings,
  lineFindings,
  couplerForceFindings,
  vehicleLoadFindings,
  trackFindings,
  conditionFindings,
  backToBackFindings,
  diameterFindings,
  wheelLimitFindings,
  shapeFindings,
  wearFindings,
  defectFindings,
  truckFindings,
  railReadingFindings,
  turnoutReadingFindings,
  pointOutlineFindings,
  pointClearanceFindings,
  falseFlangeFindings,
  contactFindings,
  climbLimitFindings,
  climbDistanceFindings,
  rolloverFindings,
  dropInFindings,
  unbalanceLoadFindings,
  curvingLoadFindings,
  screenFindings,
];

/** All findings of an indexed record. */
export const findingsOf = (context: Context): readonly Finding[] =>
  gathered(FINDINGS.map((find) => find(context)));

/**
 * All findings of a record: quantities with uncertainty, the readings they came from, their method
 * and the limits they are held against. Only readings said to be undisturbed feed a measured
 * finding. The same record and options give the same findings.
 */
export const findings = (record: CaseRecord, options: FindingOptions): readonly Finding[] =>
  findingsOf(buildContext(record, options));
