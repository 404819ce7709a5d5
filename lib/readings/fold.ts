const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
};

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const SUBSCRIPTS = '₀₁₂₃₄₅₆₇₈₉';

const VULGAR_SIGN = /[½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚]/g;

/** A sign that follows a digit is a number of its own: 1½ is 1 and 1/2, never 11/2. */
const setApart = (folded: string, at: number, whole: string): string =>
  at > 0 && /\d/.test(whole[at - 1] ?? '') ? ` ${folded}` : folded;

/**
 * One spelling for what keyboards, phones and word processors write differently: fractions,
 * primes and curly quotes, dashes, spaces, degree signs. Lower case. Nothing is interpreted.
 */
export function fold(text: string): string {
  return text
    .replace(VULGAR_SIGN, (sign, at: number, whole: string) => setApart(VULGAR[sign] ?? sign, at, whole))
    .replace(/[⁰¹²³⁴-⁹]+/g, (run, at: number, whole: string) =>
      setApart([...run].map((digit) => SUPERSCRIPTS.indexOf(digit)).join(''), at, whole),
    )
    .replace(/[₀-₉]/g, (digit) => String(SUBSCRIPTS.indexOf(digit)))
    .replace(/[′‘’ʹʼ´`]/g, "'")
    .replace(/[″“”ʺ]/g, '"')
    .replace(/[º˚]/g, '°')
    .normalize('NFKC')
    .replace(/[⁄∕]/g, '/')
    .replace(/[−‐‑‒–]/g, '-')
    .replace(/''/g, '"')
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase();
}
