import { describe, expect, it } from 'vitest';
import { railSection, RAIL_SECTIONS } from '~/lib/rail/sections';
import { REFERENCE_SHAPES, referenceShape, referenceShapesOf, shapeOfSection } from '~/lib/shapes';
import { headingOfPiece, lengthOfPiece, pointOfPiece } from '~/lib/shapes/piece';
import { outlineOfShape } from '~/lib/shapes/shape';

const RAD = Math.PI / 180;
/** Edges that are sharp in the standard itself. */
const SHARP = new Set(['chamfer', 'rim face']);
/** Where the head has its width, when not 5/8 in below the top. */
const WIDTH_AT_MM = new Map([
  ['60E1', 14.3],
  ['54E1', 14.1],
]);

describe.each(REFERENCE_SHAPES.map((shape) => [shape.id, shape] as const))('%s', (_, shape) => {
  it('its pieces join within 0.01 mm and without a kink', () => {
    shape.pieces.slice(1).forEach((piece, index) => {
      const before = shape.pieces[index]!;
      const end = pointOfPiece(before, 1);
      const start = pointOfPiece(piece, 0);
      const place = `${before.name} to ${piece.name}`;
      expect(Math.hypot(end.xMm - start.xMm, end.yMm - start.yMm), place).toBeLessThan(0.01);
      if (SHARP.has(piece.name)) return;
      const turn = headingOfPiece(piece, 'start') - headingOfPiece(before, 'end');
      expect(Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))), place).toBeLessThan(0.05 * RAD);
    });
  });

  it('as an outline has every point on a piece and none further apart than the step', () => {
    const { xMm, yMm } = outlineOfShape(shape, 0.5);
    const total = shape.pieces.reduce((sum, piece) => sum + lengthOfPiece(piece), 0);
    let walked = 0;
    for (let i = 1; i < xMm.length; i += 1) {
      const step = Math.hypot(xMm[i]! - xMm[i - 1]!, yMm[i]! - yMm[i - 1]!);
      expect(step).toBeGreaterThan(0);
      expect(step).toBeLessThan(0.51);
      walked += step;
    }
    expect(walked / total).toBeCloseTo(1, 3);
  });

  it('says where it comes from and what is not sure', () => {
    expect(shape.source.text.length).toBeGreaterThan(20);
    expect(shape.notes.length).toBeGreaterThan(0);
  });
});

describe('rails', () => {
  const rails = referenceShapesOf('rail');

  it('there is one for every section of the table', () => {
    expect(rails.map(({ sectionId }) => sectionId)).toEqual(RAIL_SECTIONS.map(({ id }) => id));
  });

  it.each(rails.map((shape) => [shape.id, shape] as const))(
    '%s has height, base, head width and web of its section exactly, and is even',
    (_, shape) => {
      const section = railSection(shape.sectionId ?? '')!;
      const { xMm, yMm } = outlineOfShape(shape, 0.1);
      const n = xMm.length;
      expect(Math.max(...yMm)).toBeCloseTo(0, 9);
      expect(Math.min(...yMm)).toBeCloseTo(-section.heightMm, 9);
      expect(Math.max(...xMm) - Math.min(...xMm)).toBeCloseTo(section.baseWidthMm, 9);
      const web = shape.pieces.find(({ name }) => name === 'web')!;
      if (web.kind !== 'arc') throw new Error('the web is an arc');
      expect(2 * (Math.abs(web.centre.xMm) - web.radiusMm)).toBeCloseTo(section.webMm, 9);
      const depth = WIDTH_AT_MM.get(section.id) ?? 15.875;
      const side = shape.pieces.filter(({ name }) => name === 'side').at(-1)!;
      const top = pointOfPiece(side, 0);
      const bottom = pointOfPiece(side, 1);
      const share = (-depth - top.yMm) / (bottom.yMm - top.yMm);
      expect(2 * (top.xMm + (bottom.xMm - top.xMm) * share)).toBeCloseTo(section.headWidthMm, 9);
      for (let i = 0; i < n; i += 1) expect(xMm[i]! + xMm[n - 1 - i]!).toBeCloseTo(0, 9);
    },
  );

  it('the running part is the head alone, from one side of it to the other', () => {
    for (const shape of rails) {
      const { xMm, yMm } = outlineOfShape(shape, 0.25, 'running');
      expect(Math.min(...yMm)).toBeGreaterThan(-52);
      expect(xMm[0]!).toBeLessThan(-30);
      expect(xMm.at(-1)!).toBeGreaterThan(30);
    }
  });
});

describe('wheels', () => {
  it('go from the flange back over the tip to the field side, with the datum at 70 mm', () => {
    for (const shape of referenceShapesOf('wheel')) {
      const { xMm, yMm } = outlineOfShape(shape, 0.05);
      expect(xMm[0], shape.id).toBeCloseTo(0, 9);
      expect(xMm.at(-1)!, shape.id).toBeGreaterThan(130);
      expect(Math.max(...yMm), shape.id).toBeGreaterThan(25);
      const at = xMm.findLastIndex((x) => x <= 70);
      const share = (70 - xMm[at]!) / (xMm[at + 1]! - xMm[at]!);
      expect(yMm[at]! + share * (yMm[at + 1]! - yMm[at]!), shape.id).toBeCloseTo(0, 3);
    }
  });

  it.each([
    ['freight-narrow', 29.36875, 75],
    ['freight-wide', 34.925, 75],
    ['freight-earlier', 29.36875, 70],
  ])('%s is 1 in high, %f mm thick at 3/8 in, with a face of %f°', (id, thicknessMm, degrees) => {
    const shape = referenceShape(id)!;
    const { xMm, yMm } = outlineOfShape(shape, 0.01);
    expect(Math.max(...yMm)).toBeCloseTo(25.4, 4);
    const tip = yMm.indexOf(Math.max(...yMm));
    const below = yMm.findIndex((y, index) => index > tip && y <= 9.525);
    expect(xMm[below]!).toBeCloseTo(thicknessMm, 1);
    const face = shape.pieces.find(({ name }) => name === 'flange face')!;
    expect(-headingOfPiece(face, 'start') / RAD).toBeCloseTo(degrees, 9);
    expect(lengthOfPiece(face)).toBeGreaterThan(0.5);
  });
});

describe('looking shapes up', () => {
  it('by id and by section, and not at all', () => {
    expect(referenceShape('s1002')?.shape).toBe('wheel');
    expect(referenceShape('no such')).toBeNull();
    expect(shapeOfSection('136RE')?.id).toBe('136re');
    expect(shapeOfSection('140RE')).toBeNull();
    expect(new Set(REFERENCE_SHAPES.map(({ id }) => id)).size).toBe(REFERENCE_SHAPES.length);
  });
});
