import { describe, expect, it } from 'vitest';
import { gaugeSpan, type GaugeSpanData } from '~/lib/figures/gauge-span';
import { gaugeSpanData } from '~/lib/figures/gauge-span-data';
import { findingsOf } from '~/lib/findings';
import { buildContext } from '~/lib/findings/context';
import { expectShapesInside, expectWordsInside, overlappingWords, shapesOf, wordsOf } from './bounds';
import { recordBuilder } from './invented-record';
import { expectSamePicture } from './same-picture';

const data: GaugeSpanData = {
  system: 'metric',
  backToBackMm: 1350,
  flangeThicknessMm: 26,
  rimWidthMm: 142,
  overlapMm: 19,
  staticGaugeMm: 1470,
  movementMm: 20,
  flanging: 'left',
  uMm: 4.2,
  underLoad: true,
};

describe('gaugeSpan', () => {
  it.each([
    ['screen', data, 700],
    ['phone', data, 360],
    ['mirrored', { ...data, flanging: 'right' } as const, 700],
    ['fallen in', { ...data, movementMm: 70 }, 360],
    ['standing, side not known', { ...data, movementMm: 0, underLoad: false, flanging: null }, 700],
    ['in inches', { ...data, system: 'us' } as const, 360],
  ])('keeps its words inside and apart: %s', (_, each, width) => {
    const figure = gaugeSpan(each, { width });
    expectWordsInside(figure);
    expectShapesInside(figure, 14);
    expect(overlappingWords(figure)).toEqual([]);
  });

  it('draws the same on screen and on the page', async () => {
    await expectSamePicture(gaugeSpan(data, { width: 700 }));
  });

  it('draws what is left on the far head to the scale of the rest', () => {
    const shapes = shapesOf(gaugeSpan(data, { width: 700 }));
    const bar = shapes.find(
      (shape) => shape.type === 'line' && shape.stroke?.ink === 'mark' && shape.stroke.width === 3,
    );
    const levels = shapes.flatMap((shape) =>
      shape.type === 'line' && shape.y1 === shape.y2 && shape.stroke?.width === 0.7
        ? [shape.x2 - shape.x1]
        : [],
    );
    if (bar?.type !== 'line') throw new Error('nothing left on the head');
    const gauge = Math.max(...levels);
    expect((bar.x2 - bar.x1) / gauge).toBeCloseTo((1350 + 26 + 142 - 1490) / 1490, 6);
  });

  it('says the margin, its sum, and when there is no support', () => {
    const text = wordsOf(gaugeSpan(data, { width: 900 }));
    expect(text).toContain('Margin 9.0 ± 8.4 mm (k = 2)');
    expect(text).toContain('B + t + W = 1350.0 mm + 26.0 mm + 142.0 mm = 1518.0 mm');
    const fallen = wordsOf(gaugeSpan({ ...data, movementMm: 70 }, { width: 900 }));
    expect(fallen).toContain('no support');
    expect(fallen).toContain('less than is needed');
  });
});

describe('gaugeSpanData', () => {
  const context = (withMovement: boolean) => {
    const { entity, reading, build } = recordBuilder();
    const sound = { disturbance: 'undisturbed' } as const;
    const vehicle = entity('vehicle', {
      position: 9,
      mark: 'XYZ',
      number: '1',
      type: 'boxcar',
      firstDerailed: true,
    });
    const axle = entity('wheelset', { vehicle, axle: 1, firstDerailed: true, disturbance: 'undisturbed' });
    for (const slot of ['0', '120', '240']) reading('wheelset', axle, 'backToBack', 1350, { ...sound, slot });
    reading('wheelset', axle, 'flangeThickness', 26, { ...sound, slot: 'right' });
    reading('wheelset', axle, 'rimWidth', 142, { ...sound, slot: 'left' });
    const station = entity('station', { name: '-1', disturbance: 'undisturbed' });
    reading('station', station, 'stationPosition', -4.7, sound);
    reading('station', station, 'gauge', 1470, sound);
    if (withMovement)
      for (const slot of ['left', 'right'])
        reading('station', station, 'lateralMovement', 10, { ...sound, slot });
    return buildContext(build(), { seed: 1 });
  };

  it('takes what the drop-in finding was computed from', () => {
    const under = context(true);
    const findings = findingsOf(under);
    const span = gaugeSpanData(under, findings)!;
    expect(span).toMatchObject({ staticGaugeMm: 1470, movementMm: 20, underLoad: true, flanging: 'right' });
    const finding = findings.find(({ what }) => what === 'dropInMargin');
    expect(finding?.kind === 'measured' ? finding.u : NaN).toBe(span.uMm);
  });

  it('stands on the standing gauge where no movement was read', () => {
    const still = context(false);
    expect(gaugeSpanData(still, findingsOf(still))).toMatchObject({ movementMm: 0, underLoad: false });
  });

  it('is nothing without a wheelset', () => {
    const empty = buildContext(recordBuilder().build(), { seed: 1 });
    expect(gaugeSpanData(empty, findingsOf(empty))).toBeNull();
  });
});
