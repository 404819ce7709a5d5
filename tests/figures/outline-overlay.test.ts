import { describe, expect, it } from 'vitest';
import { differenceAreas } from '~/lib/figures/outline-difference';
import type { OutlineDimension } from '~/lib/figures/outline-dimensions';
import { outlineOverlay, type OutlineOverlayData } from '~/lib/figures/outline-overlay';
import { PAPER_MM } from '~/lib/figures/outline-view';
import { toSvg } from '~/lib/figures/svg';
import { outlineOf, type Outline } from '~/lib/outline/outline';
import { referenceShape, shapeOfSection } from '~/lib/shapes';
import { outlineOfShape } from '~/lib/shapes/shape';
import { expectShapesInside, expectWordsInside, overlappingWords, shapesOf, wordsOf } from './bounds';
import { expectSamePicture } from './same-picture';

const wheel = referenceShape('freight-narrow')!;
const wheelLine = outlineOfShape(wheel);
const section = shapeOfSection('136RE')!;
const railLine = outlineOfShape(section);

/** The new wheel with a hollow of so many mm in its tread, a thinner flange and a raised edge. */
function worn(hollowMm: number, thinMm: number, lipMm = 0): Outline {
  const x: number[] = [];
  const y: number[] = [];
  wheelLine.xMm.forEach((px, i) => {
    const py = wheelLine.yMm[i]!;
    if (py < -12) return;
    const hollow = px > 50 && px < 128 ? hollowMm * Math.sin((Math.PI * (px - 50)) / 78) : 0;
    const thin = py > 2 && px > 15 ? thinMm * Math.min(1, (py - 2) / 6) * Math.min(1, (26 - py) / 4) : 0;
    x.push(px - Math.max(0, thin));
    y.push(py - hollow + lipMm * Math.max(0, 1 - Math.abs(px - 138) / 8));
  });
  return outlineOf(x, y);
}

const at = (xMm: number, yMm: number) => ({ xMm, yMm });
const DIMENSIONS: readonly OutlineDimension[] = [
  {
    kind: 'upright',
    name: 'Flange height',
    text: '28.6 ± 0.5 mm',
    from: at(18, 25.4),
    to: at(70, 0),
    xMm: -6,
  },
  {
    kind: 'across',
    name: 'Flange thickness',
    text: '25.9 ± 0.5 mm',
    from: at(0, 9.5),
    to: at(26, 9.5),
    yMm: 33,
  },
  { kind: 'tangent', name: 'Maximum flange angle', text: '75.1 ± 1.2°', at: at(24.5, 12), angleRad: -1.31 },
  { kind: 'upright', name: 'Hollow', text: '3.0 ± 0.4 mm', from: at(89, -4.2), to: at(130, -1.2), xMm: 108 },
  { kind: 'across', name: 'Rim width', text: '145.1 ± 0.5 mm', from: at(0, -8), to: at(145, -10), yMm: -20 },
  { kind: 'along', name: 'Flange length', text: '19.2 ± 1.1 mm', path: [at(27, 9), at(30, 5), at(36, 3)] },
  { kind: 'spot', name: 'Root radius', text: '16.1 ± 0.8 mm', at: at(32, 4) },
];

const wheelData: OutlineOverlayData = {
  shape: 'wheel',
  system: 'metric',
  name: 'left wheel, axle 2',
  traced: worn(3, 3.4, 0.6),
  uAcrossMm: 0.1,
  reference: { name: wheel.name, status: wheel.source.status, outline: wheelLine },
  dimensions: DIMENSIONS,
};

const cutHead = (gone: number): Outline => {
  const kept = Array.from(railLine.xMm, (x, i) => [x, railLine.yMm[i]!] as const).filter(([, y]) => y > -40);
  return outlineOf(
    kept.map(([x]) => x),
    kept.map(([, y]) => Math.min(y, -gone) + gone),
  );
};
const railData: OutlineOverlayData = {
  shape: 'rail',
  system: 'us',
  name: 'right rail at the POD',
  traced: cutHead(2.4),
  uAcrossMm: 0.1,
  reference: {
    name: section.name,
    status: section.source.status,
    outline: outlineOf(
      railLine.xMm,
      railLine.yMm.map((y) => y + 2.4),
    ),
  },
  dimensions: [
    {
      kind: 'upright',
      name: 'Vertical head loss',
      text: '0.094 ± 0.016 in',
      from: at(0, 2.4),
      to: at(0, 0),
      xMm: 14,
    },
    { kind: 'tangent', name: 'Gauge-face angle', text: '86 ± 2°', at: at(-36, -16), angleRad: 1.5 },
    {
      kind: 'across',
      name: 'Head width',
      text: '2.93 ± 0.02 in',
      from: at(-37, -16),
      to: at(37, -16),
      yMm: -26,
    },
  ],
};

const CASES = [
  ['a wheel on a page', wheelData, 650],
  ['a wheel on a wide screen', wheelData, 900],
  ['a wheel on a phone', wheelData, 358],
  ['a rail on a page', railData, 628],
  ['a rail on a phone', railData, 358],
  [
    'a wheel over time',
    { ...wheelData, reference: null, earlier: [{ label: '2031-02-01', outline: worn(1, 1) }] },
    628,
  ],
  ['a wheel by itself', { ...wheelData, reference: null, dimensions: [] }, 358],
] as const satisfies readonly (readonly [string, OutlineOverlayData, number])[];

describe('outlineOverlay', () => {
  it.each(CASES)('keeps its words inside and apart: %s', (_, data, width) => {
    const figure = outlineOverlay(data, { width });
    expectWordsInside(figure, 11);
    expectShapesInside(figure);
    expect(overlappingWords(figure)).toEqual([]);
    expect(toSvg(figure)).not.toContain('NaN');
  });

  it('draws the same on screen and on the page', async () => {
    await expectSamePicture(outlineOverlay(wheelData, { width: 628, lengthScale: 'paper' }));
  });

  it('writes values at their dimensions where there is room, and under letters where not', () => {
    const wide = wordsOf(outlineOverlay(wheelData, { width: 720 })).split('\n');
    const narrow = wordsOf(outlineOverlay(wheelData, { width: 358 })).split('\n');
    for (const { name, text } of DIMENSIONS) {
      expect(wide).toContain(name);
      expect(wide).toContain(text);
      expect(narrow).toContain(`${name} ${text}`);
    }
    expect(narrow).toContain('G');
  });

  it('names the reference with its status, and the sides', () => {
    const text = wordsOf(outlineOverlay(railData, { width: 720 }));
    expect(text).toContain(`${section.name} (${section.source.status})`);
    expect(text).toContain('gauge side');
    expect(text).toContain('field side');
  });

  it('lays a wheel tip on tip, so that tread worn all over is lost and the tip gained nothing', () => {
    const lower = 2;
    const traced = outlineOf(
      wheelLine.xMm,
      wheelLine.yMm.map((y, i) => (wheelLine.xMm[i]! > 50 ? y : y + lower)),
    );
    const text = wordsOf(outlineOverlay({ ...wheelData, traced, dimensions: [] }, { width: 720 }));
    expect(text).toContain('metal lost, 2.0 mm at most');
    expect(text).not.toContain('metal gained');
  });

  it('draws a wheel full size on paper and says so', () => {
    const figure = outlineOverlay(wheelData, { width: 628, lengthScale: 'paper' });
    expect(wordsOf(figure)).toContain('Scale 1:1 as printed.');
    const line = shapesOf(figure).find(
      (shape) => shape.type === 'polyline' && shape.stroke?.ink === 'wheel' && shape.stroke.width > 2,
    );
    if (line?.type !== 'polyline') throw new Error('no outline');
    const xs = line.points.filter((_, i) => i % 2 === 0);
    const widthMm = Math.max(...wheelData.traced.xMm) - Math.min(...wheelData.traced.xMm);
    expect((Math.max(...xs) - Math.min(...xs)) * PAPER_MM).toBeCloseTo(widthMm, 6);
  });
});

describe('differenceAreas', () => {
  it('finds a hollow of known depth and a raised edge, apart', () => {
    const areas = differenceAreas(worn(3, 0, 0.6), wheelLine, 0.2);
    expect(areas.map(({ kind }) => kind)).toEqual(['lost', 'gained']);
    // The tread is 1:20, so that the nearest point lies a little nearer than straight above.
    expect(areas[0]!.mostMm).toBeCloseTo(3 * Math.cos(Math.atan(1 / 20)), 1);
    expect(areas[1]!.mostMm).toBeGreaterThan(0.5);
  });

  it('encloses the area between the lines', () => {
    const line = (y: number): Outline => outlineOf([0, 10, 20, 30], [0, y, y, 0]);
    const [found] = differenceAreas(line(-1), line(0), 0.2);
    let twice = 0;
    found!.polygon.forEach(({ xMm, yMm }, i, all) => {
      const next = all[(i + 1) % all.length]!;
      twice += xMm * next.yMm - next.xMm * yMm;
    });
    // The trace meets its reference at both ends: a trapezium of 30 and 10 mm, 1 mm high, from 10 to 20 mm where points lie.
    expect(Math.abs(twice) / 2).toBeCloseTo(10, 6);
    expect(found!.kind).toBe('lost');
  });

  it('leaves out what is closer than the pencil', () => {
    expect(differenceAreas(worn(0.15, 0), wheelLine, 0.2)).toEqual([]);
  });

  it('says nothing where the trace runs on beyond the reference', () => {
    const areas = differenceAreas(
      outlineOf([0, 1, 2, 20, 30], [1, 1, 1, 9, 9]),
      outlineOf([0, 3], [0, 0]),
      0.2,
    );
    expect(areas).toHaveLength(1);
    expect(Math.max(...areas[0]!.polygon.map(({ xMm }) => xMm))).toBeLessThanOrEqual(3);
  });
});
