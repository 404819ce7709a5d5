import { describe, expect, it } from 'vitest';
import { referenceShape, shapeOfSection } from '~/lib/shapes';
import { headingOfPiece, pointOfPiece } from '~/lib/shapes/piece';
import { outlineOfShape, type ReferenceShape } from '~/lib/shapes/shape';

const shapeOf = (id: string): ReferenceShape => {
  const found = shapeOfSection(id) ?? referenceShape(id);
  if (found === null) throw new Error(`${id} is not among the shapes`);
  return found;
};

/** Area, height of the neutral axis and moment of inertia about it, of a polygon closed by a straight line. */
function properties(shape: ReferenceShape) {
  const { xMm, yMm } = outlineOfShape(shape, 0.1);
  let area = 0;
  let first = 0;
  let second = 0;
  for (let i = 0; i < xMm.length; i += 1) {
    const j = (i + 1) % xMm.length;
    const cross = xMm[i]! * yMm[j]! - xMm[j]! * yMm[i]!;
    area += cross / 2;
    first += ((yMm[i]! + yMm[j]!) * cross) / 6;
    second += ((yMm[i]! ** 2 + yMm[i]! * yMm[j]! + yMm[j]! ** 2) * cross) / 12;
  }
  const axis = first / area;
  return {
    areaMm2: Math.abs(area),
    axisMm: axis - Math.min(...yMm),
    inertiaMm4: Math.abs(second - area * axis * axis),
  };
}

const IN = 25.4;

describe('areas and moments of inertia of rails, which no radius was chosen by except the areas', () => {
  /** AREMA Manual ch. 4 part 1, as reprinted in rail makers' catalogues: area in², neutral axis in, I in⁴. */
  it.each([
    ['115RE', 11.2171, 2.99, 65.5],
    ['119RE', 11.6378, 3.13, 71.4],
    ['132RE', 12.9124, 3.2, 87.9],
  ])('%s: area within 0.2 %, neutral axis 2 %, moment of inertia 1 %', (id, area, axis, inertia) => {
    const found = properties(shapeOf(id));
    expect(found.areaMm2 / (area * IN ** 2)).toBeCloseTo(1, 2.4);
    expect(Math.abs(found.axisMm / (axis * IN) - 1)).toBeLessThan(0.02);
    expect(Math.abs(found.inertiaMm4 / (inertia * IN ** 4) - 1)).toBeLessThan(0.01);
  });

  /** Weights in lb/yd from a rail maker's catalogue, at the 10.1965 lb/yd per in² of the AREMA tables (specific gravity 7.84). */
  it.each([
    ['115RE', 114.5],
    ['119RE', 118.67],
    ['132RE', 131.7],
    ['133RE', 133.25],
    ['136RE', 135.91],
    ['141RE', 140.7],
  ])('%s weighs %f lb/yd within 0.7 %', (id, weight) => {
    const pounds = (properties(shapeOf(id)).areaMm2 / IN ** 2) * 10.1965;
    expect(Math.abs(pounds / weight - 1)).toBeLessThan(0.007);
  });

  it('136RE: moment of inertia 94.9 in⁴ as a maker prints it, within 2 %', () => {
    expect(Math.abs(properties(shapeOf('136RE')).inertiaMm4 / (94.9 * IN ** 4) - 1)).toBeLessThan(0.02);
  });

  it('60E1: 76.70 cm² (EN 13674-1, catalogue) within 0.3 %; 3038 cm⁴ (from memory) within 0.3 %', () => {
    const found = properties(shapeOf('60E1'));
    expect(Math.abs(found.areaMm2 / 7670 - 1)).toBeLessThan(0.003);
    expect(Math.abs(found.inertiaMm4 / 3038e4 - 1)).toBeLessThan(0.003);
  });

  it('54E1: 69.77 cm² and 2338 cm⁴ (from memory) within 0.6 %', () => {
    const found = properties(shapeOf('54E1'));
    expect(Math.abs(found.areaMm2 / 6977 - 1)).toBeLessThan(0.006);
    expect(Math.abs(found.inertiaMm4 / 2338e4 - 1)).toBeLessThan(0.006);
  });
});

describe('heads of EN 13674-1, whose arcs must close on each other', () => {
  it.each([
    ['60E1', 52.053],
    ['54E1', 49.727],
  ])('%s: R 80 ends %f mm across, as the standard dimensions it', (id, acrossMm) => {
    const shoulder = shapeOf(id)
      .pieces.filter(({ name }) => name === 'shoulder')
      .at(-1)!;
    expect(2 * pointOfPiece(shoulder, 1).xMm).toBeCloseTo(acrossMm, 2);
  });
});

describe('S1002 (EN 13715, flange 28 mm, 32.5 mm)', () => {
  const shape = shapeOf('s1002');
  const { xMm, yMm } = outlineOfShape(shape, 0.005);
  const tip = yMm.indexOf(Math.max(...yMm));
  const below = (heightMm: number): number => {
    const i = yMm.findIndex((y, index) => index > tip && y <= heightMm);
    const share = (heightMm - yMm[i - 1]!) / (yMm[i]! - yMm[i - 1]!);
    return xMm[i - 1]! + share * (xMm[i]! - xMm[i - 1]!);
  };

  it('flange height 28.000, thickness 32.500, qR 10.794 mm and 70.000°', () => {
    expect(yMm[tip]!).toBeCloseTo(28, 3);
    expect(below(10)).toBeCloseTo(32.5, 3);
    expect(below(10) - below(26)).toBeCloseTo(10.794, 2);
    const face = shape.pieces.find(({ name }) => name === 'flange face')!;
    expect((-headingOfPiece(face, 'start') * 180) / Math.PI).toBeCloseTo(70, 3);
  });

  it('its sections join within 0.0002 mm', () => {
    shape.pieces.slice(1).forEach((piece, index) => {
      const end = pointOfPiece(shape.pieces[index]!, 1);
      const start = pointOfPiece(piece, 0);
      expect(Math.hypot(end.xMm - start.xMm, end.yMm - start.yMm), piece.name).toBeLessThan(0.0002);
    });
  });
});
