import { describe, expect, it } from 'vitest';
import { INKS, type Figure, type Shape } from '~/lib/figures/shapes';
import { toSvg } from '~/lib/figures/svg';

const figure = (...shapes: Shape[]): Figure => ({
  width: 100,
  height: 50,
  title: 'Rail & "tie" <1>',
  description: "It's 5/8 in below",
  shapes,
});

describe('toSvg', () => {
  it('is an image with a title and a description, both escaped', () => {
    const svg = toSvg(figure());
    expect(svg).toContain('role="img"');
    expect(svg).toContain('<title>Rail &amp; &quot;tie&quot; &lt;1&gt;</title>');
    expect(svg).toContain('<desc>It&#39;s 5/8 in below</desc>');
    expect(svg).not.toContain('aria-labelledby');
  });

  it('ties title and description by id when given a prefix', () => {
    const svg = toSvg(figure(), { idPrefix: 'gauge-3' });
    expect(svg).toContain('aria-labelledby="gauge-3-title" aria-describedby="gauge-3-desc"');
    expect(svg).toContain('<title id="gauge-3-title">');
    expect(svg).toContain('<desc id="gauge-3-desc">');
  });

  it('takes every ink from a custom property with a fallback', () => {
    const svg = toSvg(
      figure(...INKS.map((ink): Shape => ({ type: 'circle', cx: 1, cy: 1, r: 1, fill: ink }))),
    );
    for (const ink of INKS) expect(svg).toMatch(new RegExp(`fill="var\\(--ink-${ink},#[0-9a-f]{6}\\)"`));
  });

  it('rounds numbers to a hundredth and writes no negative zero', () => {
    const svg = toSvg(
      figure({ type: 'line', x1: 1 / 3, y1: -0.0001, x2: 2, y2: 10.005, stroke: { ink: 'ink', width: 1 } }),
    );
    expect(svg).toContain('x1="0.33" y1="0" x2="2" y2="10.01"');
  });

  it('breaks a polyline at a gap and leaves lone points out', () => {
    const svg = toSvg(
      figure({
        type: 'polyline',
        points: [0, 0, 1, 1, 2, NaN, 3, 3, NaN, 4, 5, 5, 6, 6, 7, 7],
        stroke: { ink: 'seriesA', width: 1 },
      }),
    );
    expect([...svg.matchAll(/points="([^"]*)"/g)].map((m) => m[1])).toEqual(['0,0 1,1', '5,5 6,6 7,7']);
  });

  it('leaves out shapes that have no place, and never writes NaN', () => {
    const svg = toSvg(
      figure(
        { type: 'circle', cx: NaN, cy: 1, r: 1, fill: 'ink' },
        { type: 'rect', x: 0, y: 0, width: Infinity, height: 1, fill: 'ink' },
        { type: 'line', x1: 0, y1: NaN, x2: 0, y2: 0, stroke: { ink: 'ink', width: 1 } },
        { type: 'text', x: NaN, y: 0, text: 'lost', size: 11 },
      ),
    );
    expect(svg).not.toMatch(/NaN|Infinity|lost/);
  });

  it('escapes words and drops characters XML forbids', () => {
    const svg = toSvg(figure({ type: 'text', x: 1, y: 1, text: '<script>\u0000&\u000b', size: 11 }));
    expect(svg).toContain('>&lt;script&gt;&amp;</text>');
  });

  it('nests groups with their labels', () => {
    const svg = toSvg(
      figure({
        type: 'group',
        label: 'Mark 1',
        shapes: [{ type: 'circle', cx: 1, cy: 2, r: 3, fill: 'mark' }],
      }),
    );
    expect(svg).toMatch(/<g><title>Mark 1<\/title><circle [^>]*\/><\/g>/);
  });
});
