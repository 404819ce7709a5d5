import { describe, expect, it } from 'vitest';
import { PAPER_MM } from '~/lib/figures/outline-view';
import { pointPanel, type PointView } from '~/lib/figures/pieces/point-panel';
import { pointSection, pointSectionNotes, pointSectionPages } from '~/lib/figures/point-section';
import { pointSectionData, type PointSectionData } from '~/lib/figures/point-section-data';
import type { Shape } from '~/lib/figures/shapes';
import { buildContext } from '~/lib/findings/context';
import { pointClearanceFindings } from '~/lib/findings/turnout/point-clearance';
import type { DrawnPlace } from '~/lib/findings/turnout/point-drawing';
import { faceAt } from '~/lib/turnout/flange-at-rail';
import { listed } from '../findings/by-id';
import { boxOf, expectShapesInside, expectWordsInside, overlappingWords, textsOf, wordsOf } from './bounds';
import { ALONG, CHIP, LOW_TIP, pointRecord, TIP } from './point-record';
import { expectSamePicture } from './same-picture';

const contextOf = (wanted: Parameters<typeof pointRecord>[0]) =>
  buildContext(pointRecord(wanted), { seed: 1 });

function dataOf(wanted: Parameters<typeof pointRecord>[0]): PointSectionData {
  const data = pointSectionData(contextOf(wanted), 'x1');
  if (data === null) throw new Error('nothing to draw');
  return data;
}

const whole = [...TIP, ...CHIP, ...ALONG];
const FINDING_OF: Readonly<Record<DrawnPlace['id'], string>> = {
  tip: 'pointClearanceTip:x1',
  chipFloor: 'pointClearanceChip:x1',
  chipEnd: 'pointClearanceChipEnd:x1',
  behind: 'pointClearanceBehind:x1',
};

describe('what is drawn of a point', () => {
  it.each([
    ['simple readings', false],
    ['an outline of the wheel', true],
  ])('is what the findings say, from %s', (_, traced) => {
    const context = contextOf({ readings: whole, traced });
    const found = listed(pointClearanceFindings(context));
    const data = pointSectionData(context, 'x1')!;
    expect(data.places.map(({ id, label }) => label || id)).toEqual([
      'tip',
      'chipFloor',
      'chipEnd',
      '1 ft',
      '3 ft',
      '5 ft',
    ]);
    for (const { id, behindMm, square } of data.places) {
      const slot = id === 'behind' ? `:ft${Math.round(behindMm / 304.8)}` : '';
      const finding = found.measured(`${FINDING_OF[id]}${slot}`);
      expect(square.missMm).toBe(finding.value);
      expect(square.uMm).toBe(finding.u);
      if (id !== 'behind') expect(square.probabilityNegative).toBe(finding.limits[0]!.probabilityExceeds);
      if (square.fit.least !== null) {
        expect(square.fit.least.clearanceMm).toBe(square.missMm);
        expect(square.missMm).toBe(Math.min(...square.clearances.map(({ clearanceMm }) => clearanceMm)));
      }
    }
    const ofTipAndChip = data.places.filter(({ id }) => id !== 'behind');
    expect(Math.min(...ofTipAndChip.map(({ yawed }) => yawed.missMm))).toBe(
      found.measured('pointClearanceYawed:x1').value,
    );
    expect(Math.min(...ofTipAndChip.map(({ square }) => square.missMm))).toBe(
      found.measured('pointClearanceLeast:x1').value,
    );
  });

  it('is nothing without the tip, without a wheel, or in the trailing direction', () => {
    const of = (wanted: Parameters<typeof pointRecord>[0]) => pointSectionData(contextOf(wanted), 'x1');
    expect(of({ readings: TIP.slice(1) })).toBeNull();
    expect(of({ readings: TIP, movement: 'trailing' })).toBeNull();
    expect(pointSectionData(contextOf({ readings: TIP }), 'another')).toBeNull();
  });
});

const cases: readonly (readonly [string, PointSectionData, number, 'fit' | 'paper'])[] = [
  ['whole, desk', dataOf({ readings: whole }), 1120, 'fit'],
  ['whole, phone', dataOf({ readings: whole, traced: true }), 360, 'fit'],
  ['whole, page', dataOf({ readings: whole, traced: true, side: 'left' }), 650, 'paper'],
  ['tip alone, phone, metric', dataOf({ readings: TIP, units: 'metric' }), 360, 'fit'],
  ['low tip, page, metric', dataOf({ readings: LOW_TIP, units: 'metric' }), 628, 'paper'],
];

/** Tips of the arrowheads: filled triangles, their first corner the tip. */
const arrowTips = (shapes: readonly Shape[]): readonly (readonly [number, number])[] =>
  shapes.flatMap((shape) =>
    shape.type === 'polyline' && shape.closed && shape.points.length === 6 && shape.fill === 'ink'
      ? [[shape.points[0]!, shape.points[1]!] as const]
      : [],
  );

describe('one section', () => {
  const view = (side: 'left' | 'right', insideMm = 80): PointView => ({
    frame: { x: 0, y: 0, width: 8 * (10 + insideMm), height: 480 },
    pxPerMm: 8,
    fieldMm: 10,
    insideMm,
    aboveMm: 7,
    side,
  });

  it.each(['left', 'right'] as const)('dimensions the smallest clearance where it is, %s point', (side) => {
    for (const traced of [false, true]) {
      const data = dataOf({ readings: [...TIP, ...CHIP], side, traced });
      for (const place of data.places) {
        const { least } = place.square.fit;
        if (least === null) continue;
        const tips = arrowTips(pointPanel(data, place, view(side), 'x'));
        expect(tips).toHaveLength(2);
        const [[x1, y1], [x2, y2]] = tips as [[number, number], [number, number]];
        expect(Math.abs(x1 - x2) / 8).toBeCloseTo(Math.abs(least.clearanceMm), 6);
        expect([y1, y2]).toEqual([(7 + least.depthMm) * 8, (7 + least.depthMm) * 8]);
        // The gauge line lies 10 mm from the field side of the frame.
        const fromGaugeLine = (x: number): number => (side === 'left' ? x / 8 - 10 : 80 - x / 8);
        const face = faceAt(data.square, least.depthMm);
        const ends = [x1, x2].map(fromGaugeLine).sort((a, b) => a - b);
        const expected = [face, face - least.clearanceMm].sort((a, b) => a - b);
        ends.forEach((end, i) => expect(end).toBeCloseTo(expected[i]!, 6));
      }
    }
  });

  it('keeps to its frame where the side of the point lies off it', () => {
    const data = cases[2]![1];
    const thick = data.places.at(-1)!;
    const tips = arrowTips(pointPanel(data, thick, view('left', 20), 'x'));
    expect(Math.max(...tips.map(([x]) => x))).toBe(8 * 30);
    // At full size the words of this one do not fit between its side and the frame.
    const small = { ...view('left', 25), pxPerMm: 3.78, frame: { x: 0, y: 0, width: 132, height: 160 } };
    for (const place of data.places.filter(({ id }) => id === 'behind')) {
      for (const shape of pointPanel(data, place, small, '−0.925 ± 0.1 in')) {
        if (shape.type !== 'text') continue;
        const { left, right } = boxOf(shape);
        expect(left).toBeGreaterThanOrEqual(0);
        expect(right).toBeLessThanOrEqual(132);
      }
    }
  });

  it('dimensions how far the flange passes over a low tip', () => {
    const data = dataOf({ readings: LOW_TIP });
    const [tip] = data.places;
    expect(tip!.square.fit.least).toBeNull();
    expect(tip!.square.clearances).toEqual([]);
    const tips = arrowTips(pointPanel(data, tip!, view('right'), 'x'));
    expect(Math.abs(tips[0]![1] - tips[1]![1]) / 8).toBeCloseTo(tip!.square.missMm, 6);
  });
});

describe('pointSection', () => {
  it.each(cases)('keeps its words inside and apart: %s', (_, data, width, lengthScale) => {
    const figure = pointSection(data, { width, lengthScale });
    expectWordsInside(figure);
    expectShapesInside(figure);
    expect(overlappingWords(figure)).toEqual([]);
  });

  it('draws the same on screen and on the page', async () => {
    const [tip, , , behind] = cases[2]![1].places;
    await expectSamePicture(pointSection(cases[2]![1], { width: 650, only: [tip!, behind!] }));
  });

  it('sets sections beside each other on a desk and below each other on a phone', () => {
    const columns = (width: number): number => {
      const figure = pointSection(cases[0]![1], { width });
      const titles = textsOf(figure).filter(
        ({ weight, text }) => weight === 'bold' && /behind the tip/.test(text),
      );
      return new Set(titles.map(({ x }) => x)).size;
    };
    expect(columns(1120)).toBe(3);
    expect(columns(650)).toBe(2);
    expect(columns(360)).toBe(1);
  });

  it('states its scale on paper and keeps to it', () => {
    const figure = pointSection(cases[2]![1], { width: 650, lengthScale: 'paper' });
    expect(wordsOf(figure)).toContain('All sections to the scale of 1:1 as printed.');
    // The four parts of the scale bar are 1/4 in each.
    const part = figure.shapes.find(
      (shape) => shape.type === 'rect' && shape.height === 5 && shape.fill === 'ink',
    );
    expect(part?.type === 'rect' && part.width * PAPER_MM).toBeCloseTo(6.35, 6);
  });

  it('says what it is drawn from, and every number in words', () => {
    const simple = pointSection(cases[0]![1], { width: 1120 });
    expect(wordsOf(simple)).toContain('From simple readings: straight flange face');
    expect(simple.description).toContain('From simple readings');
    const traced = pointSection(cases[1]![1], { width: 360 });
    expect(wordsOf(traced)).not.toContain('simple readings');
    for (const figure of [simple, traced]) {
      expect(figure.description).toMatch(
        /Tip.*: square: −0\.\d+ ± 0\.\d+ in, negative (> )?\d+ %; 10 mrad: −/,
      );
      expect(figure.description).toContain('5 ft behind the tip: square');
    }
    expect(pointSectionNotes(cases[2]![1])[0]).toContain('the left point');
  });

  it('tells the stances apart by the line, not by its colour alone', () => {
    const strokes = (dashed: boolean) =>
      pointSection(dataOf({ readings: TIP }), { width: 360 })
        .shapes.flatMap((shape) => (shape.type === 'group' ? shape.shapes : []))
        .filter((shape) => shape.type === 'polyline' && (shape.stroke?.dash !== undefined) === dashed);
    expect(strokes(true).length).toBeGreaterThan(0);
    expect(strokes(false).length).toBeGreaterThan(0);
  });

  it('comes apart into pages that hold it, every place once', () => {
    const [, data] = cases[2]!;
    const layout = { width: 650, lengthScale: 'paper' } as const;
    const pages = pointSectionPages(data, layout, 500);
    expect(pages.length).toBeGreaterThan(1);
    for (const page of pages) expect(page.height).toBeLessThanOrEqual(500);
    const titles = pages.flatMap((page) =>
      textsOf(page).flatMap(({ weight, text }) => (weight === 'bold' ? [text] : [])),
    );
    expect(titles.join(' ')).toMatch(/^Tip.* 1 ft .*3 ft .*5 ft behind the tip$/);
    expect(titles.filter((title) => title.includes('5 ft'))).toHaveLength(1);
    expect(pointSectionPages(data, layout, 5000)).toHaveLength(1);
  });
});
