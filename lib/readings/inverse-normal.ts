/** Coefficients from the highest power down. */
const CENTRE = {
  top: [
    2.509080928730122672e3, 3.34305755835881281e4, 6.726577092700870085e4, 4.592195393154987146e4,
    1.373169376550946113e4, 1.971590950306551443e3, 1.331416678917843775e2, 3.387132872796366608,
  ],
  bottom: [
    5.226495278852854561e3, 2.872908573572194267e4, 3.930789580009271061e4, 2.121379430158659587e4,
    5.394196021424751108e3, 6.871870074920579083e2, 4.231333070160091125e1, 1,
  ],
};
const SHOULDER = {
  top: [
    7.745450142783414076e-4, 2.272384498926918458e-2, 2.417807251774506118e-1, 1.270458252452368383,
    3.647848324763204605, 5.769497221460691406, 4.630337846156545296, 1.423437110749683577,
  ],
  bottom: [
    1.050750071644416843e-9, 5.475938084995344946e-4, 1.51986665636164572e-2, 1.481039764274800746e-1,
    6.897673349851000046e-1, 1.676384830183803849, 2.053191626637758822, 1,
  ],
};
const TAIL = {
  top: [
    2.010334399292288133e-7, 2.711555568743487578e-5, 1.242660947388078438e-3, 2.653218952657612309e-2,
    2.965605718285048912e-1, 1.784826539917291336, 5.46378491116411437, 6.657904643501103777,
  ],
  bottom: [
    2.044263103389939785e-15, 1.421511758316445889e-7, 1.846318317510054682e-5, 7.868691311456132591e-4,
    1.487536129085061485e-2, 1.369298809227358053e-1, 5.998322065558879377e-1, 1,
  ],
};

type Rational = { readonly top: readonly number[]; readonly bottom: readonly number[] };

const horner = (coefficients: readonly number[], x: number): number => {
  let sum = 0;
  for (const coefficient of coefficients) sum = sum * x + coefficient;
  return sum;
};
const rational = ({ top, bottom }: Rational, x: number): number => horner(top, x) / horner(bottom, x);

/**
 * The z below which a standard normal value lies with probability `p`, to about 1e-16 relative.
 * `p` strictly between 0 and 1; NaN otherwise.
 * Source: M. J. Wichura, Algorithm AS 241 (PPND16), Applied Statistics 37 (1988) 477–484.
 */
export function inverseNormal(p: number): number {
  if (!(p > 0 && p < 1)) return Number.NaN;
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * rational(CENTRE, 0.180625 - q * q);
  const r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p));
  const z = r <= 5 ? rational(SHOULDER, r - 1.6) : rational(TAIL, r - 5);
  return q < 0 ? -z : z;
}
