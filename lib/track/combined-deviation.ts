import type { Method } from '../findings/finding';

/**
 * How much of what is allowed two deviations of one rail take together: factor·|a/A + p/P|, 1 being all of
 * it. a: deviation of alinement, outward positive; p: of profile, down positive; A > 0 and P > 0: the limit on
 * each. mm; the result is a ratio. Source: 49 CFR 213.65.
 */
export const combinedShare = (
  { alinementMm, profileMm }: { readonly alinementMm: number; readonly profileMm: number },
  limits: { readonly alinementMm: number; readonly profileMm: number },
  factor: number,
): number => factor * Math.abs(alinementMm / limits.alinementMm + profileMm / limits.profileMm);

export const combinedDeviationMethod: Method = {
  id: 'combined-deviation',
  name: 'Alinement and profile of the outer rail taken together',
  formula:
    'share = f·|a/A + p/P|, not more than 1. f: the factor of the rule, ¾ in 49 CFR 213.65; a: deviation of alinement from uniform, outward positive; p: deviation of profile from uniform, down positive; A, P: the limits on each above 5 in of cant deficiency, over the same chord. u² = (f·u(a)/A)² + (f·u(p)/P)².',
  validRange:
    'Outer rail of curves, operations at a qualified cant deficiency of more than 5 in. Stations where both were read over the same chord.',
  sources: [
    { text: '49 CFR 213.65', status: 'published' },
    { text: 'The factor ¾', status: 'from memory' },
  ],
};
