import { describe, expect, it } from 'vitest';
import { railLoad, type RailLoadData } from '~/lib/figures/rail-load';
import { railLoadData } from '~/lib/figures/rail-load-data';
import { findingsOf } from '~/lib/findings';
import { buildContext } from '~/lib/findings/context';
import { railSection } from '~/lib/rail/sections';
import { expectShapesInside, expectWordsInside, overlappingWords, wordsOf } from './bounds';
import { recordBuilder } from './invented-record';
import { expectSamePicture } from './same-picture';

const high: RailLoadData = {
  system: 'us',
  name: 'Right rail (high)',
  section: railSection('136RE')!,
  bearing: 'midHead',
  lateral: 'gaugeFace',
  headLossMm: 0,
  cantRad: Math.atan(1 / 40),
  u: 0.02,
};

describe('railLoad', () => {
  it.each([
    ['high rail', high, 560],
    ['phone', high, 330],
    [
      'low rail leaning out',
      { ...high, bearing: 'fieldSide', lateral: 'topOfRail', cantRad: -0.08 } as const,
      560,
    ],
    ['leaning in', { ...high, bearing: 'gaugeFace', cantRad: 0.2, headLossMm: 15 } as const, 560],
    ['small section', { ...high, section: railSection('54E1')!, system: 'metric' } as const, 330],
  ])('keeps its words inside and apart: %s', (_, data, width) => {
    const figure = railLoad(data, { width });
    expectWordsInside(figure);
    expectShapesInside(figure);
    expect(overlappingWords(figure)).toEqual([]);
  });

  it('draws the same on screen and on the page', async () => {
    await expectSamePicture(railLoad(high, { width: 560 }));
  });

  it('gives the arms and the limit of the formula', () => {
    // 136RE, mid-head, 1:40 inward: 0.479 by d′/h″; plane geometry.
    expect(wordsOf(railLoad({ ...high, u: null }, { width: 700 }))).toContain('Rolls when L/V > d/h = 0.48');
    expect(wordsOf(railLoad({ ...high, cantRad: 0, system: 'metric' }, { width: 700 }))).toContain(
      'd = 76.2 mm',
    );
  });
});

describe('railLoadData', () => {
  const rails = () => {
    const { entity, reading, build } = recordBuilder();
    const id = entity('rail', { rail: 'right', where: '0', section: '136RE', disturbance: 'undisturbed' });
    reading('rail', id, 'railCant', 0.02, { disturbance: 'undisturbed' });
    reading('rail', id, 'verticalLoss', 5, { disturbance: 'undisturbed' });
    return buildContext(build(), { seed: 1 });
  };

  it('takes what the finding was computed from', () => {
    const context = rails();
    const findings = findingsOf(context);
    const data = railLoadData(context, findings, 'flanging')!;
    expect(data).toMatchObject({
      name: 'Right rail (high)',
      cantRad: 0.02,
      headLossMm: 5,
      lateral: 'gaugeFace',
    });
    const finding = findings.find(({ what }) => what === 'rolloverFlangingRail');
    const limit = finding?.kind === 'measured' ? finding.value : NaN;
    const drawn = /d\/h = (\d\.\d\d)/.exec(railLoad(data, { width: 700 }).description)![1];
    expect(Math.abs(Number(drawn) - limit)).toBeLessThan(0.011);
  });

  it('is nothing where the finding could not be made', () => {
    const context = rails();
    expect(railLoadData(context, findingsOf(context), 'other')).toBeNull();
  });
});
