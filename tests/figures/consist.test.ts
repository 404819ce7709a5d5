import { describe, expect, it } from 'vitest';
import { consistData, consistFigure, type ConsistVehicle } from '~/lib/figures/consist';
import type { Shape } from '~/lib/figures/shapes';
import { toSvg } from '~/lib/figures/svg';
import { expectShapesInside, expectWordsInside, overlappingWords, wordsOf } from './bounds';
import { recordBuilder } from './invented-record';
import { expectSamePicture } from './same-picture';

const vehicle = (position: number, more: Partial<ConsistVehicle> = {}): ConsistVehicle => ({
  position,
  name: `XYZ ${1000 + position}`,
  type: position < 3 ? 'locomotive' : 'coveredHopper',
  load: position % 2 === 0 ? 'loaded' : 'empty',
  derailed: position > 20 && position < 25,
  firstDerailed: position === 21,
  hazmat: position === 30,
  lengthM: 15 + (position % 5) * 2,
  massKg: position % 2 === 0 ? 129_000 : 28_000,
  ...more,
});
const train = (count: number) => ({
  system: 'us' as const,
  vehicles: Array.from({ length: count }, (_, i) => vehicle(i + 1)),
});

const groups = (shapes: readonly Shape[]) =>
  shapes.flatMap((shape) => (shape.type === 'group' && shape.label?.includes('·') ? [shape] : []));
const body = (shapes: readonly Shape[]) => {
  const found = shapes.filter((shape) => shape.type === 'rect' && shape.stroke !== undefined);
  const last = found[found.length - 1];
  if (last?.type !== 'rect') throw new Error('no body');
  return last;
};

describe('consistFigure', () => {
  it.each([
    [150, 1100],
    [150, 360],
    [32, 700],
    [1, 360],
  ])('draws %i vehicles in a width of %i with words inside and apart', (count, width) => {
    const figure = consistFigure(train(count), { width });
    expect(groups(figure.shapes)).toHaveLength(count);
    expectWordsInside(figure);
    expectShapesInside(figure);
    expect(overlappingWords(figure)).toEqual([]);
  });

  it('draws the same on screen and on the page', async () => {
    await expectSamePicture(consistFigure(train(40), { width: 700 }));
  });

  it('draws length and weight to scale', () => {
    const [short, long] = groups(
      consistFigure(
        {
          system: 'us',
          vehicles: [
            vehicle(3, { lengthM: 10, massKg: 50_000, derailed: false }),
            vehicle(4, { lengthM: 20, massKg: 100_000, derailed: false }),
          ],
        },
        { width: 700 },
      ).shapes,
    ).map((group) => body(group.shapes));
    expect((long!.width + 1.5) / (short!.width + 1.5)).toBeCloseTo(2, 6);
    expect(long!.height / short!.height).toBeCloseTo(2, 6);
  });

  it('marks the first to derail with an arrow and the derailed with a cross', () => {
    const [plain, derailed, first] = [20, 22, 21].map(
      (at) => groups(consistFigure(train(30), { width: 1100 }).shapes)[at - 1]!.shapes.length,
    );
    expect(derailed! - plain!).toBe(2);
    expect(first! - derailed!).toBe(2);
  });

  it('keeps vehicles without length or weight, with a broken outline', () => {
    const figure = consistFigure(
      { system: 'metric', vehicles: [vehicle(3, { lengthM: NaN, massKg: NaN }), vehicle(4)] },
      { width: 360 },
    );
    expect(body(groups(figure.shapes)[0]!.shapes).stroke?.dash).toEqual([2, 2]);
    expect(toSvg(figure)).not.toContain('NaN');
    expect(figure.description).toContain('1 without weight');
  });

  it('says that no vehicles are recorded', () => {
    expect(wordsOf(consistFigure({ system: 'us', vehicles: [] }, { width: 360 }))).toContain('No vehicles');
  });
});

describe('consistData', () => {
  it('orders by position and reads length and weight', () => {
    const { entity, reading, build } = recordBuilder();
    entity('vehicle', { position: 2, mark: 'ABC', number: '2', type: 'boxcar', load: 'empty' });
    const first = entity('vehicle', {
      position: 1,
      mark: 'ABC',
      number: '1',
      type: 'locomotive',
      derailed: true,
    });
    reading('vehicle', first, 'lengthOverPullingFaces', 22.5);
    reading('vehicle', first, 'grossWeight', 190_000);
    const { vehicles } = consistData(build());
    expect(vehicles.map((each) => each.position)).toEqual([1, 2]);
    expect(vehicles[0]).toMatchObject({ lengthM: 22.5, massKg: 190_000, derailed: true, load: 'notSaid' });
    expect(vehicles[1]!.massKg).toBeNaN();
  });
});
