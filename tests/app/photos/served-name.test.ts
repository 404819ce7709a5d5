import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inlineAs } from '~/app/photos/served-name';

/** Lone surrogates and control characters included, which no disk should give and a form can. */
const ANY_TEXT = fc
  .array(fc.nat({ max: 0xffff }), { maxLength: 40 })
  .map((codes) => String.fromCharCode(...codes));

describe('the name a photo is served under', () => {
  it('keeps a plain name', () => {
    expect(inlineAs('IMG 0042.jpg')).toBe(`inline; filename="IMG 0042.jpg"; filename*=UTF-8''IMG%200042.jpg`);
  });

  it('gives both a safe name and the name as it came', () => {
    expect(inlineAs('Weiche Süd (1).jpg')).toBe(
      `inline; filename="Weiche S_d _1_.jpg"; filename*=UTF-8''Weiche%20S%C3%BCd%20%281%29.jpg`,
    );
  });

  it('leaves folders and leading dots away', () => {
    expect(inlineAs('../../etc/.photo.jpg')).toContain('filename="photo.jpg"');
    expect(inlineAs('C:\\pictures\\a.jpg')).toContain('filename="a.jpg"');
    expect(inlineAs('')).toBe(`inline; filename="photo"; filename*=UTF-8''photo`);
  });

  it('is one header of printable ASCII whatever the file is called', () => {
    fc.assert(
      fc.property(ANY_TEXT, (name) => {
        const header = inlineAs(name);
        expect(header).toMatch(/^inline; filename="[A-Za-z0-9._ -]+"; filename\*=UTF-8''[\w.!~%-]+$/);
      }),
      { seed: 1, numRuns: 300 },
    );
  });
});
