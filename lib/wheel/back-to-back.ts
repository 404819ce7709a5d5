import type { Method } from '../findings/finding';

/**
 * Beyond this factor between the uncertainty of one reading and that of the mean, the places
 * measured say too little about the rest of the wheel: three within a quarter turn still pass
 * (3.4), three within a sixth of a turn do not (8.3).
 */
const MAGNIFICATION_LIMIT = 5;

export type BackToBackReading = {
  /** Angle round the wheel from a mark on it, rad. */
  readonly clockRad: number;
  readonly backToBackMm: number;
};

/** b(θ) = mean + amplitude·cos(θ − phase), and how well each is known. */
export type BackToBackFit = {
  readonly kind: 'fitted';
  readonly meanMm: number;
  /** Never negative, and therefore biased high when it is no larger than its uncertainty. */
  readonly amplitudeMm: number;
  /** Where back-to-back is greatest, rad in [0, 2π). Means nothing when the amplitude is noise. */
  readonly phaseRad: number;
  /** Greatest less least round the wheel: twice the amplitude. */
  readonly swingMm: number;
  readonly leastMm: number;
  readonly uMeanMm: number;
  readonly uAmplitudeMm: number;
  readonly uSwingMm: number;
  /** Infinity when the amplitude is zero. */
  readonly uPhaseRad: number;
  readonly uLeastMm: number;
  /** Readings beyond the three a fit needs. */
  readonly degreesOfFreedom: number;
  /** Standard deviation of the readings about the fit; null with exactly three, which always fit. */
  readonly residualMm: number | null;
};

export type BackToBackRefusal = { readonly kind: 'degenerate'; readonly why: string };

/**
 * First Fourier harmonic of back-to-back round a wheelset, by least squares: exact for three
 * positions, with a residual for four or more.
 * `uReadingMm` is the standard uncertainty of one reading, the same for all and independent;
 * uncertainties of the results follow from it by the covariance of the fit, to first order.
 * Refuses fewer than three distinct positions and positions too close together to tell.
 * Source: first harmonic of b(θ) for a bent axle or a wheel out of square; least squares.
 */
export function fitBackToBack(
  readings: readonly BackToBackReading[],
  uReadingMm: number,
): BackToBackFit | BackToBackRefusal {
  const inverse = inverseOfNormal(readings);
  if (inverse === null || Math.sqrt(inverse.mm) > MAGNIFICATION_LIMIT) {
    return {
      kind: 'degenerate',
      why: 'Back-to-back was not measured at enough places round the wheel to find how it varies: measure at three places about 120° apart, or at four or more spread evenly.',
    };
  }
  let sumB = 0;
  let sumBc = 0;
  let sumBs = 0;
  for (const { clockRad, backToBackMm } of readings) {
    sumB += backToBackMm;
    sumBc += backToBackMm * Math.cos(clockRad);
    sumBs += backToBackMm * Math.sin(clockRad);
  }
  const { mm, mc, ms, cc, cs, ss } = inverse;
  const mean = mm * sumB + mc * sumBc + ms * sumBs;
  const cosine = mc * sumB + cc * sumBc + cs * sumBs;
  const sine = ms * sumB + cs * sumBc + ss * sumBs;
  const amplitude = Math.hypot(cosine, sine);

  let squares = 0;
  for (const { clockRad, backToBackMm } of readings) {
    const misfit = backToBackMm - mean - cosine * Math.cos(clockRad) - sine * Math.sin(clockRad);
    squares += misfit * misfit;
  }
  const degreesOfFreedom = readings.length - 3;

  // Direction of the amplitude; with none, that in which the fit is least certain on average.
  const ec = amplitude > 0 ? cosine / amplitude : Math.SQRT1_2;
  const es = amplitude > 0 ? sine / amplitude : Math.SQRT1_2;
  const varAmplitude = ec * ec * cc + 2 * ec * es * cs + es * es * ss;
  const varAcross = es * es * cc - 2 * ec * es * cs + ec * ec * ss;
  const covMeanAmplitude = ec * mc + es * ms;
  const uAmplitudeMm = uReadingMm * Math.sqrt(varAmplitude);

  return {
    kind: 'fitted',
    meanMm: mean,
    amplitudeMm: amplitude,
    phaseRad: (Math.atan2(sine, cosine) + 2 * Math.PI) % (2 * Math.PI),
    swingMm: 2 * amplitude,
    leastMm: mean - amplitude,
    uMeanMm: uReadingMm * Math.sqrt(mm),
    uAmplitudeMm,
    uSwingMm: 2 * uAmplitudeMm,
    uPhaseRad: (uReadingMm * Math.sqrt(varAcross)) / amplitude,
    uLeastMm: uReadingMm * Math.sqrt(Math.max(0, mm + varAmplitude - 2 * covMeanAmplitude)),
    degreesOfFreedom,
    residualMm: degreesOfFreedom > 0 ? Math.sqrt(squares / degreesOfFreedom) : null,
  };
}

type Inverse = {
  readonly mm: number;
  readonly mc: number;
  readonly ms: number;
  readonly cc: number;
  readonly cs: number;
  readonly ss: number;
};

/** Inverse of the normal matrix of (1, cos θ, sin θ): the covariance for unit uncertainty. */
function inverseOfNormal(readings: readonly BackToBackReading[]): Inverse | null {
  const n = readings.length;
  let c = 0;
  let s = 0;
  let c2 = 0;
  let cs = 0;
  let s2 = 0;
  for (const { clockRad } of readings) {
    const cos = Math.cos(clockRad);
    const sin = Math.sin(clockRad);
    c += cos;
    s += sin;
    c2 += cos * cos;
    cs += cos * sin;
    s2 += sin * sin;
  }
  const determinant = n * (c2 * s2 - cs * cs) - c * (c * s2 - cs * s) + s * (c * cs - c2 * s);
  // Rounding leaves about 1e-16 of n³ where there are only two distinct positions.
  if (n < 3 || !(determinant > 1e-10 * n * n * n)) return null;
  return {
    mm: (c2 * s2 - cs * cs) / determinant,
    mc: (s * cs - c * s2) / determinant,
    ms: (c * cs - s * c2) / determinant,
    cc: (n * s2 - s * s) / determinant,
    cs: (c * s - n * cs) / determinant,
    ss: (n * c2 - c * c) / determinant,
  };
}

export const backToBackMethod: Method = {
  id: 'back-to-back-harmonic',
  name: 'Back-to-back mean and swing from clock positions',
  formula:
    'b(θ) = m + A·cos(θ − φ), fitted by least squares as m + a·cos θ + s·sin θ; A = √(a² + s²), φ = atan2(s, a); swing = 2A; least = m − A. Uncertainties from the covariance (XᵀX)⁻¹u².',
  validRange:
    'Three or more places spread round the wheel (three give no residual). A cannot be negative and reads high when it is no larger than its uncertainty. Only the first harmonic is fitted: a dented rim is not a bend.',
  sources: [
    {
      text: 'First Fourier harmonic and linear least squares (geometry of a bent axle)',
      status: 'published',
    },
    {
      text: 'Measuring at three places 120° apart, because a bend of 1/4 to 1/2 in throws one place off',
      status: 'common practice, no source',
    },
  ],
};
