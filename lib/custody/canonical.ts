import { createHash } from 'node:crypto';

export type Json =
  string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json | undefined };

/**
 * The one text form of a value, so that equal values have equal hashes: keys sorted by UTF-16
 * code units, numbers in their shortest form that reads back the same (ECMAScript), no blanks;
 * −0 is written 0. Keys whose value is undefined are left out.
 *
 * Throws on NaN and infinities, which JSON cannot carry.
 * Source: RFC 8785, JSON Canonicalization Scheme, section 3.2.
 */
export function canonicalJson(value: Json): string {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError(`${value} has no canonical form.`);
    return JSON.stringify(value);
  }
  if (value === null || typeof value !== 'object') return JSON.stringify(value);
  if (isList(value)) return `[${value.map(canonicalJson).join(',')}]`;
  const members: string[] = [];
  for (const key of Object.keys(value).sort()) {
    const member = value[key];
    if (member !== undefined) members.push(`${JSON.stringify(key)}:${canonicalJson(member)}`);
  }
  return `{${members.join(',')}}`;
}

const isList = (value: object): value is readonly Json[] => Array.isArray(value);

/** SHA-256 (FIPS 180-4) as 64 lower-case hexadecimal digits; a text is taken as UTF-8. */
export const sha256Hex = (data: string | Uint8Array): string =>
  createHash('sha256').update(data).digest('hex');
