import { toCanonical } from '../readings/convert';

/** Inches of a standard's drawing in mm. */
export const inchesMm = (inches: number): number => toCanonical(inches, 'in', 'crossLength');
