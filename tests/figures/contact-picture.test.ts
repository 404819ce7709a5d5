import { describe, expect, it } from 'vitest';
import { flangeClearance } from '~/lib/contact/clearance';
import { equivalentConicity } from '~/lib/contact/conicity';
import { contactSetup } from '~/lib/contact/setup';
import { contactAt } from '~/lib/contact/state';
import { contactSweep, shiftsBetween } from '~/lib/contact/sweep';
import { contactCurves } from '~/lib/figures/contact-curves';
import { contactPicture } from '~/lib/figures/contact-picture';
import { toSvg } from '~/lib/figures/svg';
import { referenceShape, shapeOfSection } from '~/lib/shapes';
import { outlineOfShape } from '~/lib/shapes/shape';
import { expectShapesInside, expectWordsInside, overlappingWords, shapesOf, wordsOf } from './bounds';
import { expectSamePicture } from './same-picture';

const side = {
  wheel: outlineOfShape(referenceShape('s1002')!),
  rail: outlineOfShape(shapeOfSection('60E1')!),
};
const made = contactSetup({
  left: side,
  right: side,
  backToBackMm: 1360,
  gaugeMm: 1435,
  gaugeBelowTopMm: 14,
  cantLeftRad: 1 / 40,
  cantRightRad: 1 / 40,
  rollingRadiusMm: 460,
});
if (!made.ok) throw new Error(made.message);
const setup = made.value;
const stateAt = (shiftMm: number) => {
  const state = contactAt(setup, shiftMm);
  if (!state.ok) throw new Error(state.message);
  return state.value;
};

describe('contactPicture', () => {
  it.each([
    [0, 628],
    [5, 358],
    [-6.6, 628],
    [-9, 900],
  ])('keeps its words inside and apart: shift %f at %i', (shiftMm, width) => {
    const figure = contactPicture({ setup, state: stateAt(shiftMm), system: 'us' }, { width });
    expectWordsInside(figure, 11);
    expectShapesInside(figure);
    expect(overlappingWords(figure)).toEqual([]);
    expect(toSvg(figure)).not.toContain('NaN');
  });

  it('says which part of the head bears, at which angle, one point or two', () => {
    const state = stateAt(-7);
    const figure = contactPicture(
      { setup, state, system: 'metric', position: 'left flange bears' },
      { width: 628 },
    );
    const angle = ((state.left.points[0].contactAngleRad * 180) / Math.PI).toFixed(1);
    expect(wordsOf(figure)).toContain(`${angle}°, gauge face`);
    expect(wordsOf(figure)).toContain('Left: one-point contact, gauge face');
    expect(wordsOf(figure)).toContain('7.00 mm to the left of the middle (left flange bears)');
    const two = stateAt(5);
    expect(two.right.points).toHaveLength(2);
    expect(wordsOf(contactPicture({ setup, state: two, system: 'metric' }, { width: 628 }))).toContain(
      'Right: two-point contact',
    );
  });

  it('lays the drawn tangent along the wheel at its contact', () => {
    const state = stateAt(-7);
    const figure = contactPicture({ setup, state, system: 'metric' }, { width: 628 });
    const slopes = shapesOf(figure).flatMap((shape) =>
      shape.type === 'line' && shape.stroke?.ink === 'mark' && shape.stroke.width === 1
        ? [Math.atan2(-(shape.y2 - shape.y1), shape.x2 - shape.x1)]
        : [],
    );
    // On the left rail the gauge face falls towards the middle of the track, to the right.
    const wanted = Math.PI - state.left.points[0].contactAngleRad;
    expect(slopes.some((slope) => Math.abs(slope - wanted) < 1e-6)).toBe(true);
  });

  it('draws the same on screen and on the page', async () => {
    await expectSamePicture(
      contactPicture({ setup, state: stateAt(-6.6), system: 'metric' }, { width: 628 }),
    );
  });
});

describe('contactCurves', () => {
  const sweep = contactSweep(setup, shiftsBetween(-10, 10, 0.1));
  const clearance = flangeClearance(setup);
  const data = {
    system: 'metric',
    sweep,
    clearance: clearance.ok ? clearance.value : null,
    conicity: equivalentConicity(sweep),
  } as const;

  it.each([
    ['on a page', data, 628],
    ['on a phone, inches', { ...data, system: 'us' }, 358],
    [
      'without flange contact',
      { ...data, clearance: null, conicity: { ok: false, message: 'Sweep further.' } },
      358,
    ],
    ['one state', { ...data, sweep: contactSweep(setup, [0]) }, 628],
  ] as const)('keeps its words inside and apart: %s', (_, each, width) => {
    const figure = contactCurves(each, { width });
    expectWordsInside(figure, 11);
    expectShapesInside(figure);
    expect(overlappingWords(figure)).toEqual([]);
    expect(toSvg(figure)).not.toContain('NaN');
  });

  it('names conicity and flange contact', () => {
    const text = wordsOf(contactCurves(data, { width: 628 }));
    if (!data.conicity.ok || data.clearance === null) throw new Error('not found');
    expect(text).toContain(`Equivalent conicity at 3 mm: ${data.conicity.value.toFixed(3)}`);
    expect(text).toContain(`${data.clearance.leftMm.toFixed(1)} mm to the left`);
  });
});
