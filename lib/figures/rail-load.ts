import { cantedArms, rolloverLimit } from '../mechanics/rollover';
import { leverArms, type BearingPlace, type LateralPlace } from '../rail/lever-arms';
import type { RailSection } from '../rail/sections';
import { formatMeasure } from '../readings/format';
import type { UnitSystem } from '../readings/unit';
import { arrow } from './pieces/arrow';
import { across, upright } from './pieces/dimension';
import { area, LETTER, line, lines, pen, words, type Point } from './pieces/draw';
import { railOutline } from './pieces/rail-section';
import { groundLine } from './pieces/track-parts';
import type { Figure } from './shapes';
import { wrapText } from './text-width';

export type RailLoadData = {
  readonly system: UnitSystem;
  /** Which rail: "Right rail, high". */
  readonly name: string;
  readonly section: RailSection;
  readonly bearing: BearingPlace;
  readonly lateral: LateralPlace;
  /** Wear of the top of the head, mm. */
  readonly headLossMm: number;
  /** rad, inward positive. */
  readonly cantRad: number;
  /** Standard uncertainty of the limit, when it was computed. */
  readonly u: number | null;
};

const BEARING_WORDS: Readonly<Record<BearingPlace, string>> = {
  gaugeFace: 'on the gauge face',
  gaugeCorner: 'at the gauge corner',
  midHead: 'at the middle of the head',
  fieldSide: 'on the field side of the head',
};

const DIAGRAM = 300;
const CORNER: Point = [92, 236];
const SCALE = 0.9;

/** Turns a point of the upright rail (mm right of and above the corner) with its cant onto the drawing. */
const turned = ([right, up]: Point, cantRad: number): Point => {
  const [cos, sin] = [Math.cos(cantRad), Math.sin(cantRad)];
  return [CORNER[0] + (right * cos + up * sin) * SCALE, CORNER[1] - (up * cos - right * sin) * SCALE];
};

/**
 * One rail in section with the wheel's forces and their arms about the field-side corner of its
 * base, gauge side to the right: it rolls when L·h exceeds V·d over all wheels that share it. The
 * head is a sketch over the section's own overall sizes; arms and cant are to scale.
 */
export function railLoad(data: RailLoadData, { width }: { readonly width: number }): Figure {
  const { section, bearing, lateral, headLossMm, cantRad, system, u, name } = data;
  const arms = leverArms(section, bearing, lateral, headLossMm);
  const { dMm, hMm } = cantedArms(arms, cantRad);
  const limit = rolloverLimit(arms, cantRad);
  const outline = railOutline(section, { topMm: headLossMm, faceMm: 0 }).map(([x, y]): Point =>
    // The outline's worn side lies to the left; the gauge side is drawn on the right.
    turned([section.baseWidthMm / 2 - x, section.heightMm - y], cantRad),
  );
  const vertical = turned([arms.dMm, section.heightMm - headLossMm], cantRad);
  const side = turned([section.baseWidthMm / 2 + section.headWidthMm / 2, arms.hMm], cantRad);
  const push: Point = lateral === 'gaugeFace' ? side : vertical;
  const armX = CORNER[0] + dMm * SCALE;
  const armY = CORNER[1] - hMm * SCALE;
  const size = (mm: number): string =>
    formatMeasure(mm, { dimension: 'crossLength', system, form: 'decimal' });
  const limitText = limit.toFixed(2) + (u === null ? '' : ` ± ${(2 * u).toFixed(2)} (k = 2)`);
  const degrees = (cantRad * 180) / Math.PI;
  const cantText = `${Math.abs(degrees).toFixed(1)}° ${degrees < 0 ? 'outward' : 'inward'}`;

  const beside = width >= DIAGRAM + 190;
  const textX = beside ? DIAGRAM + 14 : 8;
  const paragraphs = [
    { text: name, bold: true },
    { text: `${section.id}, cant ${cantText}`, bold: false },
    { text: `d = ${size(dMm)}`, bold: true },
    { text: `h = ${size(hMm)}`, bold: true },
    { text: `Rolls when L/V > d/h = ${limitText}`, bold: true },
    {
      text: `V ${BEARING_WORDS[bearing]}; L ${lateral === 'gaugeFace' ? 'where the flange bears on the gauge face' : 'by friction at the top of the head'}. L and V are the sums over the wheels that share this length of rail; fasteners are taken to hold nothing.`,
      bold: false,
    },
    { text: 'Overall sizes to scale, head sketched.', bold: false },
  ];
  const entries = paragraphs.flatMap(({ text, bold }) =>
    wrapText(text, width - textX - 8, LETTER, bold ? 'bold' : 'normal').map((each) => ({ each, bold })),
  );
  const textTop = beside ? 40 : 300;

  return {
    width,
    height: Math.max(286, textTop + entries.length * LETTER * 1.3),
    title: `Load on the rail, ${name}`,
    description: paragraphs.map(({ text }) => text).join('. '),
    shapes: [
      words(8, 16, 'field side', { ink: 'faint' }),
      words(DIAGRAM - 8, 16, 'gauge side', { ink: 'faint', anchor: 'end' }),
      ...groundLine(16, DIAGRAM - 16, CORNER[1] + 4),
      area(outline, 'shade', pen('rail', 1.4)),
      { type: 'circle', cx: CORNER[0], cy: CORNER[1], r: 4.5, fill: 'paper', stroke: pen('limit', 2) },
      words(CORNER[0] - 8, CORNER[1] - 20, 'rolls about', { anchor: 'end' }),
      words(CORNER[0] - 8, CORNER[1] - 7, 'this corner', { anchor: 'end' }),
      ...arrow([vertical[0], vertical[1] - 46], [vertical[0], vertical[1] - 1], {
        ink: 'seriesA',
        width: 2.6,
        head: 10,
      }),
      words(vertical[0] + 8, vertical[1] - 34, 'V', { bold: true, size: 14 }),
      ...arrow([push[0] + 48, armY], [push[0] + 1, armY], { ink: 'seriesB', width: 2.6, head: 10 }),
      words(push[0] + 40, armY - 7, 'L', { bold: true, size: 14 }),
      line([armX, vertical[1]], [armX, CORNER[1] + 16], pen('faint', 0.7, [4, 3])),
      ...across(CORNER[0], armX, CORNER[1] + 20, CORNER[1] + 5, null, 'd', { beside: 'after' }),
      ...upright(armY, CORNER[1], 256, push[0] + 50, null, 'h'),
      line(
        [CORNER[0] + section.baseWidthMm * SCALE + 6, CORNER[1]],
        [260, CORNER[1]],
        pen('faint', 0.7, [4, 3]),
      ),
      ...entries.flatMap(({ each, bold }, i) => lines(textX, textTop + i * LETTER * 1.3, [each], { bold })),
    ],
  };
}
