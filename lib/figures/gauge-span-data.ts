import type { Context } from '../findings/context';
import type { Finding } from '../findings/finding';
import { keyInputsOf } from '../findings/key-inputs';
import { OVERLAP } from '../findings/mechanics/drop-in';
import { systemOf } from './case-marks';
import type { GaugeSpanData } from './gauge-span';

/**
 * What the drop-in finding was computed from, for drawing it: under load where movement was seen,
 * else standing. Null when one of the other readings is missing.
 */
export function gaugeSpanData(context: Context, findings: readonly Finding[]): GaugeSpanData | null {
  const inputs = keyInputsOf(context);
  const [back, flange, rim, gauge] = [
    inputs.backToBackMin.measured,
    inputs.flangeThickness.measured,
    inputs.rimWidth.measured,
    inputs.gaugeStanding.measured,
  ];
  if (back === null || flange === null || rim === null || gauge === null) return null;
  const movement = inputs.lateralMovement.measured;
  const what = movement === null ? 'dropInMarginStanding' : 'dropInMargin';
  const finding = findings.find((each) => each.what === what);
  return {
    system: systemOf(context.record),
    backToBackMm: back.value,
    flangeThicknessMm: flange.value,
    rimWidthMm: rim.value,
    overlapMm: OVERLAP.value,
    staticGaugeMm: gauge.value,
    movementMm: movement?.value ?? 0,
    underLoad: movement !== null,
    flanging: context.sides.flanging,
    uMm: finding?.kind === 'measured' ? finding.u : null,
  };
}
