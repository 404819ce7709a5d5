import { type Trace } from '../case/trace';
import { type Method } from '../findings/finding';
import type { Outline } from '../outline/outline';
import { outlineOfPairs } from '../outline/pairs';
import { type Placing } from '../outline/placing';
import { resampled } from '../outline/resample';
import { ok, refuse, type Result } from '../readings/result';
import {
  CANT_NOT_CARRIED,
  RAIL_FEATURES,
  railFeatures,
  type FoundFeature,
  type RailFeatureId,
} from './features';
import { layRail, settled, type RegisteredRail } from './register';
import { NOISE_LENGTH_MM, shakenTraces } from './shaken';

/** A feature with its standard uncertainty (k = 1), in the unit of the value. */
export type TracedRailFeature = FoundFeature & { readonly u: number };

/** What the trace of a rail says. Features that cannot be found say why. */
export type TracedRail = Pick<RegisteredRail, 'outline' | 'parts' | 'newTopMm' | 'remarks'> & {
  readonly placing: Placing;
  readonly features: Readonly<Record<RailFeatureId, Result<TracedRailFeature>>>;
  readonly method: Method;
};

/** A standard deviation from 200 draws is good to about 5 %. */
const DRAWS = 200;
/** A feature found in fewer of the draws than this share is not given. */
const LEAST_SHARE = 0.9;
/** Between the points of the line that is shaken, mm. */
const STEP_MM = 0.5;

/**
 * Places the trace of a rail on its new section and finds its features, each with the uncertainty that
 * the trace's own noise gives it: 200 draws of the trace (`./shaken`), each placed again and read again;
 * u is the root mean square of their distances from the value. `trace.mirrored`: the drawing shows the
 * gauge side on the right.
 * A correction by hand is applied to the trace and to every draw.
 * `reference`: the new section, or null when none is chosen. Deterministic for a seed. Never throws.
 */
export function railTraceFeatures(
  trace: Pick<Trace, 'id' | 'pointsMm' | 'mirrored' | 'uncertainty' | 'hand' | 'making'>,
  reference: Outline | null,
  seed: number,
): Result<TracedRail> {
  const laid = layRail(outlineOfPairs(trace.pointsMm), { mirrored: trace.mirrored, reference });
  if (!laid.ok) return laid;
  const { rail, near } = settled(laid.value, laid.value.line, trace.hand);
  const cantOf = (placed: RegisteredRail): Result<FoundFeature> => cantIn(trace.making, placed);
  const found = { ...railFeatures(rail, reference), railCant: cantOf(rail) };
  const shaken = shakenTraces(
    resampled(laid.value.line, STEP_MM),
    trace.uncertainty,
    trace.id,
    seed,
    DRAWS,
  ).map((line) => {
    const again = settled({ ...laid.value, near }, line, trace.hand).rail;
    return { ...railFeatures(again, reference), railCant: cantOf(again) };
  });
  const feature = (id: RailFeatureId): Result<TracedRailFeature> => {
    const value = found[id];
    if (!value.ok) return value;
    const values = shaken.flatMap((draw) => (draw[id].ok ? [draw[id].value.value] : []));
    if (values.length < LEAST_SHARE * DRAWS) {
      return refuse(
        `Within this trace's own noise it is found only ${values.length} times in ${DRAWS}: trace further round the shape.`,
      );
    }
    const squares = values.reduce((sum, v) => sum + (v - value.value.value) ** 2, 0);
    return ok({ ...value.value, u: Math.sqrt(squares / values.length) });
  };
  return ok({
    outline: rail.outline,
    placing: rail.placing,
    parts: rail.parts,
    newTopMm: rail.newTopMm,
    remarks: [...rail.remarks, ...(trace.hand === null ? [] : [`Placed by hand: ${trace.hand.reason}`])],
    features: {
      verticalLoss: feature('verticalLoss'),
      gaugeFaceLoss: feature('gaugeFaceLoss'),
      gaugeFaceLossEu: feature('gaugeFaceLossEu'),
      gaugeFaceAngle: feature('gaugeFaceAngle'),
      headWidth: feature('headWidth'),
      headAreaLoss: feature('headAreaLoss'),
      railCant: feature('railCant'),
    },
    method: railTraceMethod,
  });
}

/** A drawing turned further than this was not held square to the track. */
const MOST_CANT_RAD = 0.3;

/**
 * Cant of the rail from a drawing whose upright is square to the plane of the track: how far the drawing
 * has to be turned back for its section to stand upright. rad, inward positive.
 */
function cantIn(making: Trace['making'], { placing, parts }: RegisteredRail): Result<FoundFeature> {
  if (making.plumb !== true) {
    return CANT_NOT_CARRIED;
  }
  if (parts !== 'section' && parts !== 'head')
    return refuse('The outline does not show enough of the rail to tell its upright: trace down to the web.');
  const value = Math.atan2(-Math.sin(placing.angleRad), Math.cos(placing.angleRad));
  return Math.abs(value) > MOST_CANT_RAD
    ? refuse(
        `The section stands ${Math.round((Math.abs(value) * 180) / Math.PI)}° out of upright in the drawing: it was not held square to the track.`,
      )
    : ok({ value, where: { from: { xMm: 0, yMm: -CANT_DRAWN_MM }, to: { xMm: 0, yMm: 0 } } });
}

const CANT_DRAWN_MM = 60;

export const railTraceMethod: Method = {
  id: 'rail-trace-features',
  name: 'Wear of a rail from its traced outline',
  formula: `The trace is laid on the new section by least squares of the distances across the line, over the parts that do not wear (web, base, underside of the head, field side), with Tukey's biweight; y = 0 is the top as it now is. The line is smoothed by a local parabola over 3 mm to each side. ${RAIL_FEATURES.map(({ name, meaning }) => `${name}: ${meaning}`).join(' ')} u: root mean square change over ${DRAWS} draws of the trace's own noise (across the line, much the same over ${NOISE_LENGTH_MM} mm; and of its scale), each laid and read again.`,
  validRange:
    'The section chosen is the one traced, and its fishing surfaces and field side are not worn or corroded. A head traced alone is placed less surely than a whole section; both are counted in u.',
  sources: [
    { text: 'Gauge point 5/8 in below the top of the rail: 49 CFR 213.53(a)', status: 'published' },
    { text: 'Biweight: P. J. Huber, Robust Statistics (1981)', status: 'published' },
    { text: 'Smoothing: A. Savitzky and M. J. E. Golay, Anal. Chem. 36 (1964) 1627', status: 'published' },
    { text: 'Distance over which drawn noise stays the same', status: 'engineering judgement' },
  ],
};
