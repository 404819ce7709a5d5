import { describe, expect, it } from 'vitest';
import { drawFigure } from '~/lib/figures/pdf';
import type { Figure } from '~/lib/figures/shapes';
import { FONTS, newDocument } from './pdf-primitives';
import { expectSamePicture } from './same-picture';

const everyShape: Figure = {
  width: 320,
  height: 200,
  title: 'Every shape',
  description: 'One of each',
  shapes: [
    { type: 'rect', x: 3.123, y: 4.567, width: 50, height: 20, fill: 'shade', fillOpacity: 0.4 },
    { type: 'rect', x: 60, y: 4, width: 50, height: 20, radius: 5, stroke: { ink: 'rail', width: 1.5 } },
    { type: 'line', x1: 0, y1: 0, x2: 320, y2: 200, stroke: { ink: 'limit', width: 1, dash: [4, 2, 1, 2] } },
    { type: 'circle', cx: 100, cy: 100, r: 33.3, fill: 'paper', stroke: { ink: 'wheel', width: 2 } },
    {
      type: 'polyline',
      points: [0, 0, 10, 15.5, 20, NaN, 30, 12, NaN, 0, 40, 40, 50, 42, 60, 38],
      stroke: { ink: 'seriesA', width: 1 },
    },
    { type: 'polyline', points: [200, 20, 220, 20, 210, 40], closed: true, fill: 'mark' },
    { type: 'circle', cx: NaN, cy: 0, r: 1, fill: 'mark' },
    { type: 'circle', cx: 5, cy: 5, r: 1 },
    {
      type: 'group',
      shapes: [
        { type: 'text', x: 20, y: 180, text: 'δ ≤ 75° ½ ″ µ', size: 12 },
        { type: 'text', x: 160, y: 180, text: 'Gauge, in', size: 11, anchor: 'middle', weight: 'bold' },
        { type: 'text', x: 300, y: 120, text: 'turned', size: 11, anchor: 'end', rotate: -90, ink: 'faint' },
      ],
    },
  ],
};

describe('drawFigure', () => {
  it('draws on the page what toSvg draws on the screen', async () => {
    await expectSamePicture(everyShape);
  });

  it('returns the height it took and leaves the text position alone', () => {
    const doc = newDocument(false);
    doc.x = 40;
    doc.y = 90;
    expect(drawFigure(doc, everyShape, { x: 10, y: 20, width: 160 }, FONTS)).toBe(100);
    expect([doc.x, doc.y]).toEqual([40, 90]);
  });
});
