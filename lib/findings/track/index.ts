import type { Context } from '../context';
import type { Finding } from '../finding';
import { gathered } from '../gathered';
import { chordDeviationFindings } from './chord-deviation';
import { combinedDeviationFindings } from './combined-deviation';
import { crosslevelFindings } from './crosslevel';
import { curvatureFindings } from './curvature';
import { curvingFindings } from './curving';
import { gaugeFindings } from './gauge';
import { gaugeChangeFindings } from './gauge-change';
import { gaugeUnderLoadFindings } from './gauge-under-load';
import { exceptedTrackFindings } from './excepted';
import { jointFindings } from './joints';
import { lineSegmentFindings } from './line-segments';
import { lowJointFindings } from './low-joints';
import { runoffFindings } from './runoff';
import { shortWarp10Findings } from './short-warp-10';
import { tieFindings } from './ties';
import { twistFindings } from './twist';
import { warpFindings } from './warp';

/** Everything that is found about the track, in the order of its screen. */
const TRACK: readonly ((context: Context) => readonly Finding[])[] = [
  curvatureFindings,
  lineSegmentFindings,
  curvingFindings,
  gaugeFindings,
  gaugeChangeFindings,
  gaugeUnderLoadFindings,
  crosslevelFindings,
  warpFindings,
  shortWarp10Findings,
  twistFindings,
  lowJointFindings,
  chordDeviationFindings,
  combinedDeviationFindings,
  runoffFindings,
  tieFindings,
  jointFindings,
  exceptedTrackFindings,
];

export const trackFindings = (context: Context): readonly Finding[] =>
  gathered(TRACK.map((find) => find(context)));
