import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rowsHtml } from '~/app/track/rows-html';

const text = fc.string({ unit: fc.constantFrom('<', '>', '&', '"', "'", 'a', '/', ' ', '½'), maxLength: 12 });
const row = fc.record({
  id: text,
  name: text,
  cells: fc.array(text, { minLength: 2, maxLength: 5 }),
  beyond: text,
  meets: text,
  photos: fc.nat(3),
});

const unescaped = (html: string): string =>
  html
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');

describe('rows of the station sheet as HTML', () => {
  it('shows every text as text, whatever it holds', () => {
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 3 }), fc.boolean(), (rows, withPhotos) => {
        const html = rowsHtml(rows, (id) => `/stations/${id}`, withPhotos);
        const tags = html.match(/<[^>]*>/g) ?? [];
        expect(new Set(tags.map((tag) => /^<\/?([a-z]+)/.exec(tag)?.[1]))).toEqual(
          new Set(['tr', 'th', 'td', 'a']),
        );
        const shown = [...html.matchAll(/<td[^>]*>([^<]*)<\/td>/g)].map((match) => unescaped(match[1] ?? ''));
        expect(shown).toEqual(
          rows.flatMap(({ cells, beyond, meets, photos }) => [
            ...cells.slice(1),
            ...(withPhotos && photos === 0 ? [''] : []),
            meets,
            beyond,
          ]),
        );
        const links = [...html.matchAll(/href="([^"]*)"/g)].map((match) => unescaped(match[1] ?? ''));
        expect(links).toEqual(
          rows.flatMap(({ id, photos }) => [
            `/stations/${id}`,
            ...(withPhotos && photos > 0 ? [`/stations/${id}#photos`] : []),
          ]),
        );
      }),
      { seed: 20260508, numRuns: 200 },
    );
  });
});
