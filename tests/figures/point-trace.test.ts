import { describe, expect, it } from 'vitest';
import { pointTraceData, pointTraceFigure } from '~/lib/figures/point-trace';
import { textWidth } from '~/lib/figures/text-width';
import { tracedPoint } from '~/lib/turnout/point-trace';
import { asTrace, straightPoint } from '../turnout/points';

const point = tracedPoint(asTrace(straightPoint(6, (80 * Math.PI) / 180)));
if (!point.ok) throw new Error(point.message);
const data = pointTraceData('right point at the tip', point.value, 'metric');

describe('drawing of a traced point', () => {
  it('says its thicknesses in words and in the drawing', () => {
    const figure = pointTraceFigure(data, { width: 860 });
    expect(figure.description).toContain('right point at the tip');
    expect(data.thicknesses.map(({ mm }) => mm)).toEqual([
      expect.closeTo(6 + 1.5875 / Math.tan((80 * Math.PI) / 180), 6),
      expect.closeTo(6 + 15.875 / Math.tan((80 * Math.PI) / 180), 6),
    ]);
    for (const { text } of data.thicknesses) {
      expect(figure.description).toContain(text);
      expect(figure.shapes.some((shape) => shape.type === 'text' && shape.text === text)).toBe(true);
    }
  });

  it.each([860, 520, 340])('keeps every word within a width of %d', (width) => {
    for (const shape of pointTraceFigure(data, { width }).shapes) {
      if (shape.type !== 'text') continue;
      const wide = textWidth(shape.text, shape.size, shape.weight ?? 'normal');
      const from = shape.anchor === 'end' ? shape.x - wide : shape.x;
      expect([shape.text, from >= 0, from + wide <= width]).toEqual([shape.text, true, true]);
    }
  });
});
