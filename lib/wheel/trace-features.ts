import { type Trace } from '../case/trace';
import { type Method } from '../findings/finding';
import { arcLengths } from '../outline/arc';
import { outlineOf, type Outline } from '../outline/outline';
import { outlineOfPairs } from '../outline/pairs';
import { afterwards, placed, type Placing } from '../outline/placing';
import { resampled } from '../outline/resample';
import { smoothed } from '../outline/smooth';
import { normalDraws } from '../readings/draws';
import { ok, refuse, type Result } from '../readings/result';
import { WHEEL_FEATURES, type WheelFeatureId } from './feature-table';
import { featuresOf, type FoundWheelFeature, type WheelFeatures } from './features';
import { STEP_MM, type WheelLay } from './lay';
import { ASSUMED, layOf, registerAs, registerWheel, U_ASSUMED } from './register';

/** A feature with its standard uncertainty (k = 1) in the same unit. */
export type TracedWheelFeature = FoundWheelFeature & { readonly u: number };

export type TracedWheel = {
  /** In the frame of the wheel, corrected by hand where somebody did; from the back of the flange to the field side. */
  readonly outline: Outline;
  readonly placing: Placing;
  readonly remarks: readonly string[];
  readonly features: Readonly<Record<WheelFeatureId, Result<TracedWheelFeature>>>;
  readonly method: Method;
};

const DRAWS = 200;

/** A feature that cannot be taken in more than this share of the draws is not known. */
const MOST_MISSING = 0.1;

/** Length along the line over which its errors hold together: the width of a pencil line. */
const PENCIL_MM = 0.7;

/** Window over which the direction across the line is found. */
const ACROSS_HALF_WINDOW_MM = 2;

/**
 * Registers the outline of a traced wheel and takes its features, each with a standard uncertainty from
 * drawing the line again 200 times with its own noise: across the line by `trace.uncertainty.acrossMm`,
 * together over a pencil's width (over one pin for a pin gauge), and in scale; each draw is registered
 * anew. The same trace and seed give the same numbers. Refuses what `registerWheel` refuses. Never throws.
 */
export function wheelTraceFeatures(trace: Trace, seed: number): Result<TracedWheel> {
  const drawn = outlineOfPairs(trace.pointsMm);
  const registered = registerWheel(drawn, trace);
  if (!registered.ok) return registered;
  const corrected = correctedByHand(registered.value.outline, trace);
  const features = featuresOf(corrected);
  if (!features.ok) return features;
  const lay = layOf(drawn);
  if (!lay.ok) return lay;
  const draws = drawAgain(trace, drawn, lay.value, seed);
  const placing = registered.value.placing;
  return ok({
    outline: corrected,
    placing: trace.hand === null ? placing : afterwards(placing, trace.hand),
    remarks: [
      ...registered.value.remarks,
      ...(trace.hand === null ? [] : [`The line was moved by hand: ${trace.hand.reason}`]),
    ],
    features: withUncertainty(features.value, draws),
    method: wheelTraceMethod,
  });
}

const correctedByHand = (outline: Outline, { hand }: Trace): Outline =>
  hand === null ? outline : placed(outline, { mirrored: false, ...hand });

function drawAgain(trace: Trace, drawn: Outline, lay: WheelLay, seed: number): (WheelFeatures | null)[] {
  const { acrossMm, scale } = trace.uncertainty;
  const line = resampled(drawn, STEP_MM);
  const { headingRad } = smoothed(line, ACROSS_HALF_WINDOW_MM);
  const along = arcLengths(line);
  const together = trace.making.by === 'pins' ? Math.max(trace.making.pitchMm, STEP_MM) : PENCIL_MM;
  const knots = Math.ceil((along.at(-1) ?? 0) / together) + 2;
  const across = normalDraws(`${trace.id}|across`, seed, DRAWS * knots);
  const scales = normalDraws(`${trace.id}|scale`, seed, DRAWS);
  const slopes = normalDraws(`${trace.id}|tread slope taken for granted`, seed, DRAWS);
  const tips = normalDraws(`${trace.id}|tip taken for granted`, seed, DRAWS);
  return Array.from({ length: DRAWS }, (_, draw) => {
    const size = 1 + scale * scales[draw]!;
    const x = new Float64Array(along.length);
    const y = new Float64Array(along.length);
    for (let i = 0; i < along.length; i += 1) {
      const knot = along[i]! / together;
      const before = Math.floor(knot);
      const t = knot - before;
      const at = draw * knots + before;
      // Between two knots the noise passes from one to the other without losing variance.
      const noise = (acrossMm * ((1 - t) * across[at]! + t * across[at + 1]!)) / Math.hypot(1 - t, t);
      x[i] = size * (line.xMm[i]! - noise * Math.sin(headingRad[i]!));
      y[i] = size * (line.yMm[i]! + noise * Math.cos(headingRad[i]!));
    }
    const again = registerAs(outlineOf(x, y), lay, {
      treadSlope: ASSUMED.treadSlope + U_ASSUMED.treadSlope * slopes[draw]!,
      tipFromBackMm: ASSUMED.tipFromBackMm + U_ASSUMED.tipFromBackMm * tips[draw]!,
    });
    if (!again.ok) return null;
    const features = featuresOf(correctedByHand(again.value.outline, trace));
    return features.ok ? features.value : null;
  });
}

function withUncertainty(
  features: WheelFeatures,
  draws: readonly (WheelFeatures | null)[],
): Record<WheelFeatureId, Result<TracedWheelFeature>> {
  const one = (id: WheelFeatureId): Result<TracedWheelFeature> => {
    const feature = features[id];
    if (!feature.ok) return feature;
    let [n, squares] = [0, 0];
    for (const draw of draws) {
      const again = draw?.[id];
      if (again?.ok !== true) continue;
      n += 1;
      squares += (again.value.value - feature.value.value) ** 2;
    }
    const missing = draws.length - n;
    return missing > MOST_MISSING * draws.length
      ? refuse(
          `The line is too uncertain for it: it could not be taken in ${missing} of ${draws.length} lines drawn with the same noise.`,
        )
      : ok({ ...feature.value, u: Math.sqrt(squares / n) });
  };
  return Object.fromEntries(WHEEL_FEATURES.map(({ id }) => [id, one(id)])) as Record<
    WheelFeatureId,
    Result<TracedWheelFeature>
  >;
}

export const wheelTraceMethod: Method = {
  id: 'wheel-trace-features',
  name: 'Features of a traced wheel',
  formula:
    'Line resampled every 0.5 mm; back of the flange: straight line going over into a circle, fitted within 32° of upright, gives x = 0; tread fitted from 64 to 76 mm from it gives y = 0. Heights from parabolas fitted over 8 to 12 mm, directions over 6 mm of the line; flange angle from round, straight and round fitted within 32° of the steepest direction; tip radius from a circle (Pratt). u: root mean square of 200 lines drawn again with noise across the line and in scale, each registered anew, about the value taken.',
  validRange:
    'A line from the back of the flange, with 15 mm or more of its straight part (30 mm is better: flange height turns with it), over tip and tread to the field side. With a noisy line the flange angle is held towards rounds of 10 to 27 mm radius and a straight part of 2 to 5 mm, as on new wheels; a clean line is not.',
  sources: [
    { text: 'EN 15313, dimensions of wheels in service', status: 'from memory' },
    { text: 'TCRP Report 71 vol. 5, chapter 4: flange angle, flange length', status: 'published' },
    {
      text: 'A. Savitzky, M. J. E. Golay (1964), smoothing by local least squares; V. Pratt (1987), fitting of circles',
      status: 'published',
    },
    { text: 'JCGM 101:2008, propagation of distributions by drawing', status: 'published' },
    {
      text: 'Lengths of the fits; errors of the line hold together over 0.7 mm, or one pin',
      status: 'engineering judgement',
    },
  ],
};
