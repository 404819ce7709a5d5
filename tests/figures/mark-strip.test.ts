import { describe, expect, it } from 'vitest';
import { markStrip, markStripData } from '~/lib/figures/mark-strip';
import { toSvg } from '~/lib/figures/svg';
import { expectShapesInside, expectWordsInside, overlappingWords, shapesOf, wordsOf } from './bounds';
import { curveRecord, recordBuilder } from './invented-record';
import { expectSamePicture } from './same-picture';

const data = markStripData(curveRecord());

describe('markStrip', () => {
  it.each([1100, 700, 360])('keeps its words inside and apart at a width of %i', (width) => {
    const figure = markStrip(data, { width });
    expectWordsInside(figure, 9.5);
    expectShapesInside(figure);
    expect(overlappingWords(figure)).toEqual([]);
  });

  it('draws the same on screen and on the page', async () => {
    await expectSamePicture(markStrip(data, { width: 700 }));
  });

  it('draws each mark with its own stroke, not by colour alone', () => {
    const figure = markStrip(data, { width: 1100 });
    const groups = figure.shapes.filter((shape) => shape.type === 'group');
    expect(groups.filter((shape) => shape.type === 'group' && shape.label?.startsWith('Mark'))).toHaveLength(
      6,
    );
    const looks = groups.flatMap((group) =>
      group.type === 'group'
        ? group.shapes
            .slice(1, 2)
            .map((shape) =>
              shape.type === 'line'
                ? `${shape.stroke?.width} ${shape.stroke?.dash?.join(' ') ?? 'whole'}`
                : '',
            )
        : [],
    );
    const kinds = new Set(data.marks.map((mark) => mark.type));
    expect(new Set(looks.filter(Boolean)).size).toBeGreaterThanOrEqual(kinds.size - 1);
  });

  it('says which rail is the outer one, and nothing where the case does not', () => {
    expect(wordsOf(markStrip(data, { width: 700 }))).toContain('Right rail (outer)');
    expect(wordsOf(markStrip({ ...data, outerRail: null }, { width: 700 }))).not.toContain('outer');
  });

  it('draws a crossing mark from the gauge side of the head to the field side', () => {
    const figure = markStrip(data, { width: 1100 });
    const head = shapesOf(figure).filter((shape) => shape.type === 'rect' && shape.stroke?.ink === 'rail');
    const mark = shapesOf(figure).find((shape) => shape.type === 'line' && shape.stroke?.width === 2.6);
    const right = head[1];
    if (right?.type !== 'rect' || mark?.type !== 'line') throw new Error('rail or mark is missing');
    expect(mark.y1).toBeGreaterThan(right.y);
    expect(mark.y2).toBeGreaterThan(mark.y1 + 15);
    expect(mark.y2).toBeLessThan(right.y + right.height + 1);
  });

  it('keeps marks without a place in the key alone', () => {
    const { entity, build } = recordBuilder();
    entity('mark', { type: 'flangeOnHead', rail: 'left' });
    const figure = markStrip(markStripData(build()), { width: 700 });
    expect(wordsOf(figure)).toContain('place not read');
    expect(toSvg(figure)).not.toContain('NaN');
  });

  it('says that no marks are recorded', () => {
    expect(wordsOf(markStrip({ ...data, marks: [] }, { width: 360 }))).toContain('No marks are recorded');
  });
});
