import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson, sha256Hex, type Json } from '~/lib/custody/canonical';
import { chainProblems, linkHash, type ChainLink } from '~/lib/custody/chain';

describe('canonical JSON', () => {
  it('writes the example of RFC 8785, section 3.2.2, as 3.2.3 does', () => {
    const example: Json = JSON.parse(
      String.raw`{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/","literals":[null,true,false]}`,
    );
    expect(canonicalJson(example)).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    );
  });

  it('does not depend on the order of keys and reads back as the same value', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const text = canonicalJson(value as Json);
        const back: Json = JSON.parse(text);
        expect(canonicalJson(back)).toBe(text);
        expect(canonicalJson(reversed(back))).toBe(text);
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  it('leaves out what is undefined, writes −0 as 0 and refuses what JSON cannot carry', () => {
    expect(canonicalJson({ b: undefined, a: -0 })).toBe('{"a":0}');
    expect(() => canonicalJson([NaN])).toThrow(RangeError);
    expect(() => canonicalJson({ a: -Infinity })).toThrow(RangeError);
  });

  it('hashes as FIPS 180-4 does (its example message “abc”)', () => {
    expect(sha256Hex('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    expect(sha256Hex(new TextEncoder().encode('µ'))).toBe(sha256Hex('µ'));
  });
});

function reversed(value: Json): Json {
  if (value === null || typeof value !== 'object') return value;
  if (Array.isArray(value)) return value.map(reversed);
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, member]) => [key, member === undefined ? null : reversed(member)]),
  );
}

describe('chain', () => {
  const chain = (length: number) => {
    const entries: (ChainLink & { hash: string })[] = [];
    for (let seq = 1; seq <= length; seq += 1) {
      const link: ChainLink = {
        prevHash: entries.at(-1)?.hash ?? '',
        seq,
        at: `2031-04-09T14:0${seq}:00.000Z`,
        actor: { personId: null, name: 'R. Examiner' },
        action: 'add',
        subject: { kind: 'station', id: `s${seq}` },
        before: null,
        after: { name: String(seq) },
      };
      entries.push({ ...link, hash: linkHash(link) });
    }
    return entries;
  };

  it('finds nothing in a whole chain', () => expect(chainProblems(chain(4))).toEqual([]));

  it.each([
    ['at', { at: '2031-04-09T15:00:00.000Z' }],
    ['actor', { actor: { personId: null, name: 'S. Else' } }],
    ['action', { action: 'remove' }],
    ['subject', { subject: { kind: 'station', id: 'other' } }],
    ['before', { before: { name: '' } }],
    ['after', { after: { name: '9' } }],
  ])('finds a changed %s', (_, change) => {
    const entries = chain(4);
    const changed = entries.map((entry, index) => (index === 1 ? { ...entry, ...change } : entry));
    expect(chainProblems(changed)).toEqual(['Entry 2 does not match its own hash: it was changed.']);
  });

  it('finds an entry that was changed and given a new hash', () => {
    const entries = chain(4).map((entry, index) => {
      const changed = index === 1 ? { ...entry, after: { name: '9' } } : entry;
      return { ...changed, hash: linkHash(changed) };
    });
    expect(chainProblems(entries)).toEqual([
      'Entry 3 does not follow the entry before it: an entry was changed or removed.',
    ]);
  });

  it('finds an entry taken out or put in another place', () => {
    const entries = chain(4);
    expect(chainProblems(entries.filter((entry) => entry.seq !== 2))).not.toEqual([]);
    expect(chainProblems([...entries].reverse())).not.toEqual([]);
  });
});
