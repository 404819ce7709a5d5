import type { Figure } from '../shapes';
import { alongPoint } from './along-point';
import { backToBackClock } from './back-to-back-clock';
import { chordDiameter } from './chord-diameter';
import { couplerForces } from './coupler-forces';
import { curveDesign } from './curve-design';
import { frogAndGuard } from './frog-and-guard';
import { gaugeAndLevel } from './gauge-and-level';
import { gaugeFaceWipe } from './gauge-face-wipe';
import { jointStep } from './joint-step';
import { limitGauge } from './limit-gauge';
import { markAcrossHead } from './mark-across-head';
import { plateMovement } from './plate-movement';
import { pointAndStockRail } from './point-and-stock-rail';
import { railThermometer } from './rail-thermometer';
import { railWear } from './rail-wear';
import { sideBearing } from './side-bearing';
import { spikesAndPlate } from './spikes-and-plate';
import { stations } from './stations';
import { stringLine } from './string-line';
import { tieCount } from './tie-count';
import { treadDefect } from './tread-defect';
import { vehicleLengths } from './vehicle-lengths';
import { walkBack } from './walk-back';
import { wheelShape } from './wheel-shape';

/** The drawings by the names the catalogue of quantities calls them by (`howTo.figure`). */
export const HOW_TO_FIGURES = {
  railThermometer,
  curveDesign,
  vehicleLengths,
  markAcrossHead,
  stations,
  gaugeAndLevel,
  plateMovement,
  stringLine,
  tieCount,
  jointStep,
  backToBackClock,
  wheelShape,
  chordDiameter,
  limitGauge,
  treadDefect,
  sideBearing,
  railWear,
  gaugeFaceWipe,
  spikesAndPlate,
  pointAndStockRail,
  alongPoint,
  frogAndGuard,
  walkBack,
  couplerForces,
} as const satisfies Readonly<Record<string, Figure>>;

/** The drawing that shows how a reading is taken; undefined for a name there is no drawing of. */
export const howToFigure = (key: string): Figure | undefined =>
  Object.hasOwn(HOW_TO_FIGURES, key) ? HOW_TO_FIGURES[key as keyof typeof HOW_TO_FIGURES] : undefined;
