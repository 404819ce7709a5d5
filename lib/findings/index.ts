import type { CaseRecord } from '../case/record';
import { buildContext, type Context, type FindingOptions } from './context';
import type { Finding } from './finding';
import { chordDeviationFindings } from './track/chord-deviation';
import { crosslevelFindings } from './track/crosslevel';
import { curvatureFindings } from './track/curvature';
import { curvingFindings } from './track/curving';
import { gaugeFindings } from './track/gauge';
import { gaugeUnderLoadFindings } from './track/gauge-under-load';
import { tieFindings } from './track/ties';
import { twistFindings } from './track/twist';
import { warpFindings } from './track/warp';

/** Everything that is found, in the order of the screens; adding one is a file and its line here. */
const FINDINGS: readonly ((context: Context) => readonly Finding[])[] = [
  curvatureFindings,
  curvingFindings,
  gaugeFindings,
  gaugeUnderLoadFindings,
  crosslevelFindings,
  warpFindings,
  twistFindings,
  chordDeviationFindings,
  tieFindings,
];

/** All findings of an indexed record. */
export const findingsOf = (context: Context): readonly Finding[] => FINDINGS.flatMap((find) => find(context));

/**
 * All findings of a record: quantities with uncertainty, the readings they came from, their method
 * and the limits they are held against. Only readings said to be undisturbed feed a measured
 * finding. The same record and options give the same findings.
 */
export const findings = (record: CaseRecord, options: FindingOptions): readonly Finding[] =>
  findingsOf(buildContext(record, options));
