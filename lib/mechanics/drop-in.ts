import type { Method, Source } from '../findings/finding';

/** What a wheelset spans and what it must span. All mm. */
export type DropIn = {
  /** Smallest back-to-back round the wheel. */
  readonly backToBackMm: number;
  /** Flange thickness, at the gauge point, of the wheel whose flange is against its rail. */
  readonly flangeThicknessMm: number;
  /** Rim width that remains on the other wheel. */
  readonly rimWidthMm: number;
  /** Overlap of tread on rail head that is needed: corner radius and crushed edge. */
  readonly overlapMm: number;
  /** Gauge as measured, unloaded. */
  readonly staticGaugeMm: number;
  /** What the gauge opens under load: lateral movement of both rails, rotation included. */
  readonly movementMm: number;
};

/**
 * What is left before the other tread drops in: B + t + W − s − G, G the gauge under load.
 * Zero or less: the wheel is no longer supported. mm.
 * Source: plane geometry of a wheelset with one flange hard against its rail.
 */
export function dropInMargin(d: DropIn): number {
  return d.backToBackMm + d.flangeThicknessMm + d.rimWidthMm - d.overlapMm - d.staticGaugeMm - d.movementMm;
}

/** What a new wheelset on track to gauge would have. */
export type DropInReference = Pick<
  DropIn,
  'backToBackMm' | 'flangeThicknessMm' | 'rimWidthMm' | 'staticGaugeMm'
>;

/**
 * New narrow-flange wheelset: 53 1/8, 1 5/32 and 5 23/32 in (together 60 in), and standard
 * gauge 56 1/2 in.
 */
export const NEW_NARROW_FLANGE: DropInReference & { readonly source: Source } = {
  backToBackMm: 1349.375,
  flangeThicknessMm: 29.36875,
  rimWidthMm: 145.25625,
  staticGaugeMm: 1435.1,
  source: {
    text: 'New narrow-flange freight wheel: back-to-back 53 1/8 in, flange 1 5/32 in, rim 5 23/32 in; standard gauge 56 1/2 in',
    status: 'from memory',
  },
};

export const DROP_IN_PARTS = [
  'flangeWear',
  'narrowBackToBack',
  'narrowRim',
  'staticGauge',
  'movement',
] as const;
export type DropInPart = (typeof DROP_IN_PARTS)[number];

/** How much of the margin of a new wheelset on good track each thing has taken, mm; negative gives back. */
export type DropInShares = Readonly<Record<DropInPart, number>> & {
  /** The sum: margin of the reference less margin found, at the same overlap. */
  readonly total: number;
};

/** Shares in mm against a reference; they add up to what was lost. */
export function dropInShares(d: DropIn, reference: DropInReference): DropInShares {
  const flangeWear = reference.flangeThicknessMm - d.flangeThicknessMm;
  const narrowBackToBack = reference.backToBackMm - d.backToBackMm;
  const narrowRim = reference.rimWidthMm - d.rimWidthMm;
  const staticGauge = d.staticGaugeMm - reference.staticGaugeMm;
  const movement = d.movementMm;
  return {
    flangeWear,
    narrowBackToBack,
    narrowRim,
    staticGauge,
    movement,
    total: flangeWear + narrowBackToBack + narrowRim + staticGauge + movement,
  };
}

export const dropInMethod: Method = {
  id: 'drop-in-margin',
  name: 'Drop-in margin',
  formula:
    'margin = B + t + W − s − G. B: smallest back-to-back; t: flange thickness at the gauge point; W: rim width that remains; s: overlap needed; G: gauge under load = static gauge + movement. Share of each part = its difference from a new wheelset on track to gauge.',
  validRange:
    'One flange hard against its rail, both rails level across the heads. s is 1/2 to 1 in by judgement; movement must include rotation of the rail.',
  sources: [
    { text: 'Plane geometry of a wheelset between two rails', status: 'published' },
    {
      text: 'Overlap s of 1/2 to 1 in: corner radius and crushed edge of the rim',
      status: 'engineering judgement',
    },
    NEW_NARROW_FLANGE.source,
  ],
};
