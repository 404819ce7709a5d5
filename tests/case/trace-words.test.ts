import { describe, expect, it } from 'vitest';
import { makingText, nameOfTrace, tracePart } from '~/lib/case/trace-words';
import { buildRecord } from '../findings/record-builder';
import { inventedTrace } from './invented-trace';

describe('words for an outline', () => {
  it('name it with what it is of', () => {
    const record = buildRecord({
      vehicle: [{ id: 'v', fields: { mark: 'AB', number: '7' } }],
      wheelset: [{ id: 'w', fields: { vehicle: 'v', axle: 2 } }],
      rail: [{ id: 'r', fields: { rail: 'left' } }],
    });
    expect(nameOfTrace(record, inventedTrace())).toMatch(/^Outline, left wheel, Axle 2, .*7/);
    const rail = { shape: 'rail', subject: { kind: 'rail', id: 'r' } } as const;
    expect(tracePart(inventedTrace(rail))).toBe('Outline, rail head');
    const point = { shape: 'point', subject: { kind: 'turnout', id: 't' }, side: 'right' } as const;
    expect(tracePart(inventedTrace({ ...point, behindMm: 0 }))).toBe('Outline, right point at the tip');
    const { making } = inventedTrace();
    const foot = { ...point, behindMm: 304.8, making: { ...making, behindEntered: '1 ft' } };
    expect(tracePart(inventedTrace(foot))).toBe('Outline, right point 1 ft behind the tip');
  });

  it('say how it was made, as it was entered', () => {
    const file = inventedTrace().making;
    expect(makingText(file)).toBe('From a file: x in column 1, y in column 2, in mm');
    const turned = { by: 'file', unit: 'in', columns: [2, 0], flipped: { x: false, y: true } } as const;
    expect(makingText(turned)).toBe(
      'From a file: x in column 3, y in column 1, in inches, y the other way round',
    );
    const pins = { by: 'pins', entered: '1/8, 1/4\n3/8', unit: 'in', pitchMm: 3.175 } as const;
    expect(makingText(pins)).toBe('Typed from a pin gauge, pins 0.125 in apart');
  });
});
