import { GAUGE_BELOW_TOP_EN_MM, GAUGE_BELOW_TOP_US_MM, type Side } from '../../contact/setup';
import { quantityOf } from '../../readings/quantities';
import { toCanonical } from '../../readings/convert';
import type { Context } from '../context';
import { measuringPractice } from '../practice';

/** A quantity nobody read, taken anywhere in its reference range: middle and standard uncertainty (range/√12). */
export function usual(quantityId: string): { readonly value: number; readonly u: number } {
  const quantity = quantityOf(quantityId);
  if (quantity.kind !== 'measure') throw new Error(`${quantityId} is not measured`);
  const { low, high } = quantity.reference;
  return { value: (low + high) / 2, u: (high - low) / Math.sqrt(12) };
}

/** 36-in wheels: the radius moves contact by less than the digits shown. */
export const USUAL_RADIUS_MM = toCanonical(18, 'in', 'crossLength');

export const STANDARD_GAUGE_MM = toCanonical(56.5, 'in', 'crossLength');

/** How far below the top of the rail gauge is measured, by the limits the case is held against. */
export const gaugeBelowTopMm = (context: Context): number =>
  measuringPractice(context) === 'metric' ? GAUGE_BELOW_TOP_EN_MM : GAUGE_BELOW_TOP_US_MM;

/** Shifts are counted positive to the right. */
export const towards = (side: Side): 1 | -1 => (side === 'right' ? 1 : -1);
