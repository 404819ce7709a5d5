import type { Method } from '../findings/finding';
import type { LeverArms } from '../rail/lever-arms';

const MM_PER_M = 1000;

/**
 * The arms of a rail turned by its cant: d′ = d·cos β + h′·sin β, h″ = h′·cos β − d·sin β.
 * `cantRad` β, positive when the rail leans inward; 1:40 is atan(1/40). mm.
 */
export function cantedArms(arms: LeverArms, cantRad: number): LeverArms {
  const cos = Math.cos(cantRad);
  const sin = Math.sin(cantRad);
  return { dMm: arms.dMm * cos + arms.hMm * sin, hMm: arms.hMm * cos - arms.dMm * sin };
}

/**
 * L/V at which the rail rolls about its field-side base corner, fasteners holding nothing:
 * d′/h″. `cantRad` as `cantedArms`. Of all loads that share the length of rail, rarely one axle.
 * Source: moments about the field-side base corner.
 */
export function rolloverLimit(arms: LeverArms, cantRad: number): number {
  const turned = cantedArms(arms, cantRad);
  return turned.dMm / turned.hMm;
}

/**
 * The same with fasteners that hold up to `fastenerMomentKnM` over the length of rail under
 * `verticalKn` > 0 in all: (d′ + M/V)/h″.
 */
export function fastenedRolloverLimit(
  arms: LeverArms,
  cantRad: number,
  fastenerMomentKnM: number,
  verticalKn: number,
): number {
  const turned = cantedArms(arms, cantRad);
  return (turned.dMm + (fastenerMomentKnM * MM_PER_M) / verticalKn) / turned.hMm;
}

export type RailLoad = {
  readonly lateralKn: number;
  readonly verticalKn: number;
  /** Arms of this wheel's contacts, rail upright. */
  readonly arms: LeverArms;
};

/** Moments about the field-side base corner, kN·m. The rail rolls when `overturning` exceeds `restoring`. */
export type RolloverMoments = {
  readonly overturningKnM: number;
  readonly restoringKnM: number;
  /** ΣL/ΣV of the loads given: the truck-side ratio when they are those of a truck side. */
  readonly lateralOverVertical: number;
};

/**
 * Sums over the loads that share a length of rail: ΣL·h″ against ΣV·d′ + M of the fasteners.
 * `lateralKn` positive outward (towards the field). An empty list gives NaN for the ratio.
 * Source: moments about the field-side base corner.
 */
export function rolloverMoments(
  loads: readonly RailLoad[],
  cantRad: number,
  fastenerMomentKnM: number,
): RolloverMoments {
  let overturning = 0;
  let restoring = 0;
  let lateral = 0;
  let vertical = 0;
  for (const load of loads) {
    const turned = cantedArms(load.arms, cantRad);
    overturning += load.lateralKn * turned.hMm;
    restoring += load.verticalKn * turned.dMm;
    lateral += load.lateralKn;
    vertical += load.verticalKn;
  }
  return {
    overturningKnM: overturning / MM_PER_M,
    restoringKnM: restoring / MM_PER_M + fastenerMomentKnM,
    lateralOverVertical: lateral / vertical,
  };
}

export const rolloverMethod: Method = {
  id: 'rollover',
  name: 'Rail rollover about the field-side base corner',
  formula:
    'Rolls when Σ L·h″ > Σ V·d′ + M; limit L/V = d′/h″ (with fasteners (d′ + M/ΣV)/h″). d′ = d·cos β + h′·sin β; h″ = h′·cos β − d·sin β. d: vertical contact to base corner; h′: height of the lateral contact; β: cant, inward positive; M: moment of the fasteners.',
  validRange:
    'Summed over the loads that share the length of rail: a truck side, rarely one axle. High rail: flange on the gauge face. Low rail: tread friction at the top of the head, h′ the full height. Torsion of the rail beyond those loads is not counted, which is on the safe side for the rail.',
  sources: [{ text: 'Statics: moments about the field-side base corner', status: 'published' }],
};
