import { standing } from '../case/current';
import type { CaseRecord } from '../case/record';

export type Side = 'left' | 'right';

export const otherSide = (side: Side): Side => (side === 'left' ? 'right' : 'left');

/** Which rail is which at the POD, facing the direction of travel. */
export type PodSides = {
  /** High rail of a curve; null on tangent or when the case does not say. */
  readonly outer: Side | null;
  readonly inner: Side | null;
  /**
   * Side whose flange bears on its rail: the outer one on a curve; on tangent as the first mark
   * shows it; null when neither tells.
   */
  readonly flanging: Side | null;
  /** How the flanging side was come by. */
  readonly remark: string;
};

/** Marks left on the rail that the flange climbs or presses; the others lie on the far rail. */
const ON_FLANGING_RAIL = new Set(['flangeOnHead', 'dropFieldSide', 'flangeOnPoint', 'pointStrike']);
const ON_OTHER_RAIL = new Set(['treadRimInside', 'dropGaugeSide']);

export function podSides(record: CaseRecord): PodSides {
  const { alignment } = record.fields;
  if (alignment === 'curveLeft' || alignment === 'curveRight') {
    const outer = alignment === 'curveLeft' ? 'right' : 'left';
    return {
      outer,
      inner: otherSide(outer),
      flanging: outer,
      remark: `The ${outer} rail is the outer one; its wheel is taken as the flanging one.`,
    };
  }
  const flanging = flangingByMark(record);
  return {
    outer: null,
    inner: null,
    flanging,
    remark:
      flanging === null
        ? 'Not known which wheel was flanging: neither the curve nor the first mark says. The less favourable side is taken.'
        : `The ${flanging} wheel is taken as the flanging one, from the first mark.`,
  };
}

function flangingByMark(record: CaseRecord): Side | null {
  const pod = standing(record, 'mark').find((mark) => mark.fields.isPod === true);
  const rail = pod?.fields.rail;
  if (rail !== 'left' && rail !== 'right') return null;
  const type = String(pod?.fields.type);
  if (ON_FLANGING_RAIL.has(type)) return rail;
  return ON_OTHER_RAIL.has(type) ? otherSide(rail) : null;
}
