import { type Trace } from '../case/trace';
import { type Outline } from '../outline/outline';
import { outlineOfPairs } from '../outline/pairs';
import { placed } from '../outline/placing';
import { resampled } from '../outline/resample';
import { shakenTraces } from '../rail/shaken';
import { normalDraws } from '../readings/draws';
import { ok, refuse, type Result } from '../readings/result';
import { fieldSide } from '../wheel/field-side';
import { ASSUMED, layOf, registerAs, U_ASSUMED } from '../wheel/register';
import { againstStockRail, type WheelAgainstRail } from './against-stock-rail';
import { type FlangeAtRail } from './flange-at-rail';

/** Placing one line takes some milliseconds; a spread from 60 is good to about 9 % (relative 1/√(2M)). */
const LINES = 60;
const STEP_MM = 0.5;
/** Fewer of the lines than this standing on the rail: the trace is too uncertain. */
const FEWEST = 54;

/** A traced wheel against a stock rail, as traced, and as other lines with the same noise would have it. */
export type ShakenWheel = {
  readonly asTraced: WheelAgainstRail;
  readonly others: readonly FlangeAtRail[];
  /** How far the field side of the tread hangs below its running band, and of the other lines; null where a line ends before it. */
  readonly hollowMm: number | null;
  readonly otherHollowsMm: readonly number[];
};

/**
 * `asTraced` in the frame of the wheel; `trace` as it was drawn. 60 other lines are drawn with the trace's
 * own noise across the line and in scale, each placed anew by its flange back and tread and stood against
 * the rail anew; the rail's own noise moves its gauge side. The same for the same trace and seed.
 */
export function shakenWheel(
  asTraced: Outline,
  trace: Trace,
  rail: { readonly outline: Outline; readonly uMm: number },
  seed: number,
): Result<ShakenWheel> {
  const nominal = againstStockRail(asTraced, rail.outline);
  if (!nominal.ok) return nominal;
  const drawn = outlineOfPairs(trace.pointsMm);
  const lay = layOf(drawn);
  if (!lay.ok) return lay;
  const lines = shakenTraces(
    resampled(drawn, STEP_MM),
    trace.uncertainty,
    `${trace.id}|beside a point`,
    seed,
    LINES,
  );
  const slopes = normalDraws(`${trace.id}|tread slope taken for granted`, seed, LINES);
  const tips = normalDraws(`${trace.id}|tip taken for granted`, seed, LINES);
  const rails = normalDraws(`${trace.id}|gauge side of the stock rail`, seed, LINES);
  const otherHollowsMm: number[] = [];
  const others = lines.flatMap((line, i): readonly FlangeAtRail[] => {
    const again = registerAs(line, lay.value, {
      treadSlope: ASSUMED.treadSlope + U_ASSUMED.treadSlope * slopes[i]!,
      tipFromBackMm: ASSUMED.tipFromBackMm + U_ASSUMED.tipFromBackMm * tips[i]!,
    });
    if (!again.ok) return [];
    const outline =
      trace.hand === null
        ? again.value.outline
        : placed(again.value.outline, { mirrored: false, ...trace.hand });
    const hollow = hollowOf(outline);
    if (hollow !== null) otherHollowsMm.push(hollow);
    const stands = againstStockRail(outline, rail.outline);
    if (!stands.ok) return [];
    const off = rail.uMm * rails[i]!;
    return [{ ...stands.value, faceMm: stands.value.faceMm.map((face) => face + off) }];
  });
  return others.length < FEWEST
    ? refuse(
        'Within its own noise the traced wheel often does not stand on this stock rail. Trace the flange back and the tread further.',
      )
    : ok({ asTraced: nominal.value, others, hollowMm: hollowOf(asTraced), otherHollowsMm });
}

function hollowOf(outline: Outline): number | null {
  const line = resampled(outline, STEP_MM);
  let tip = 0;
  for (let i = 1; i < line.yMm.length; i += 1) if (line.yMm[i]! > line.yMm[tip]!) tip = i;
  const found = fieldSide(line, tip);
  return found.ok ? found.value.hollowMm : null;
}
