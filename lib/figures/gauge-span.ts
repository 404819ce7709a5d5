import { dropInMargin, type DropIn } from '../mechanics/drop-in';
import { formatMeasure, formatWithUncertainty } from '../readings/format';
import type { UnitSystem } from '../readings/unit';
import { arrow } from './pieces/arrow';
import { place } from './pieces/curve';
import { across } from './pieces/dimension';
import { area, box, LETTER, line, lines, pen, words, type Point } from './pieces/draw';
import { railOutline, SKETCH_RAIL } from './pieces/rail-section';
import { SKETCH_WHEEL, wheelOutline } from './pieces/wheel-outline';
import type { Figure, Shape } from './shapes';
import { wrapText } from './text-width';

export type GaugeSpanData = DropIn & {
  readonly system: UnitSystem;
  /** Side whose flange bears on its rail; null: not known, drawn as the left. */
  readonly flanging: 'left' | 'right' | null;
  /** Standard uncertainty of the margin, mm, when it was computed. */
  readonly uMm: number | null;
  /** False: nobody measured the movement, and the gauge is the standing one. */
  readonly underLoad: boolean;
};

/** Rails below this height are cut off: the picture is about heads and treads. */
const CUT_MM = 62;

/**
 * The drop-in picture: a wheelset with one flange hard against its rail, drawn across the gauge as
 * it was under load. B, t and W add up to what the wheelset spans; what of it is left on the far
 * head, less the overlap needed, is the margin. Widths across the track are to one scale.
 */
export function gaugeSpan(data: GaugeSpanData, { width }: { readonly width: number }): Figure {
  const { backToBackMm, flangeThicknessMm, rimWidthMm, overlapMm, staticGaugeMm, movementMm, system, uMm } =
    data;
  const gaugeMm = staticGaugeMm + movementMm;
  const span = backToBackMm + flangeThicknessMm + rimWidthMm;
  const marginMm = dropInMargin(data);
  const onHead = span - gaugeMm;
  const head = SKETCH_RAIL.headWidthMm;
  const near = Math.max(head, SKETCH_WHEEL.rimWidthMm - flangeThicknessMm);
  const scale = (width - 24) / (near + Math.max(gaugeMm + head, span));
  const mirrored = data.flanging === 'right';
  const left = 12 + near * scale;
  const x = (mm: number): number => (mirrored ? width - (left + mm * scale) : left + mm * scale);
  // Rim, axle and the dimensions above them decide where the tread lies.
  const top = 60 * scale + 62;
  const y = (mm: number): number => top + mm * scale;

  const rail = (faceMm: number, outward: 1 | -1): Shape => {
    const points = railOutline(SKETCH_RAIL)
      .filter(([, py]) => py <= CUT_MM)
      .map(([px, py]): Point => [x(faceMm + outward * (head / 2) + px), y(py)]);
    return area(points, 'shade', pen('rail', 1.3));
  };
  const wheel = (backMm: number, towards: 1 | -1, rimMm: number): Shape =>
    area(
      place(
        wheelOutline({
          ...SKETCH_WHEEL,
          flangeThicknessMm,
          rimWidthMm: rimMm,
          flangeHeightMm: 25,
          rimThicknessMm: 60,
        }),
        { at: [0, 0], scale: 1 },
      ).map(([px, py]): Point => [x(backMm + towards * px), y(py)]),
      'paper',
      pen('wheel', 1.4),
    );
  const firstBack = flangeThicknessMm;
  const secondBack = flangeThicknessMm + backToBackMm;
  const axleTop = y(-60) - 16;

  const size = (mm: number): string =>
    formatMeasure(mm, { dimension: 'crossLength', system, form: 'decimal' });
  const margin = uMm === null ? size(marginMm) : formatWithUncertainty(marginMm, uMm, 'crossLength', system);
  const carried =
    onHead > 0
      ? `${size(onHead)} of the tread lies on the far head`
      : `The far tread misses its head by ${size(-onHead)}`;
  const gaugeName = data.underLoad ? 'G, gauge under load' : 'G, gauge standing';
  const paragraphs = [
    { text: `Margin ${margin}${marginMm <= 0 ? ': less than is needed' : ''}`, bold: true },
    {
      text: `B + t + W = ${size(backToBackMm)} + ${size(flangeThicknessMm)} + ${size(rimWidthMm)} = ${size(span)}`,
      bold: false,
    },
    {
      text: data.underLoad
        ? `G = ${size(staticGaugeMm)} standing + ${size(movementMm)} movement = ${size(gaugeMm)}`
        : `G = ${size(gaugeMm)} standing; movement under load was not measured`,
      bold: false,
    },
    { text: `${carried}; ${size(overlapMm)} is taken as needed.`, bold: false },
    {
      text: data.flanging === null ? 'Not known which wheel was flanging: drawn as the left.' : '',
      bold: false,
    },
  ].filter(({ text }) => text !== '');
  const entries = paragraphs.flatMap(({ text, bold }) =>
    wrapText(text, width - 16, LETTER, bold ? 'bold' : 'normal').map((each) => ({ each, bold })),
  );
  const dimTop = axleTop - 18;
  const below = Math.max(y(CUT_MM) + 16, axleTop + 72);
  const textTop = below + 62;
  const [onFrom, onTo] = [x(gaugeMm), x(span)];
  const middle = (x(firstBack) + x(secondBack)) / 2;

  return {
    width,
    height: textTop + entries.length * LETTER * 1.3,
    title: data.underLoad
      ? 'What the wheelset spans, gauge under load'
      : 'What the wheelset spans, gauge standing',
    description: paragraphs.map(({ text }) => text).join('. '),
    shapes: [
      box(
        Math.min(x(firstBack), x(secondBack)) - 30,
        axleTop,
        Math.abs(x(secondBack) - x(firstBack)) + 60,
        16,
        {
          fill: 'shade',
          stroke: pen('wheel', 1.1),
        },
      ),
      rail(0, -1),
      rail(gaugeMm, 1),
      wheel(firstBack, -1, SKETCH_WHEEL.rimWidthMm),
      wheel(secondBack, 1, rimWidthMm),
      ...across(x(firstBack), x(secondBack), dimTop, axleTop, axleTop, 'B'),
      ...across(x(secondBack), x(span), dimTop, y(-60), y(-60), 'W', { beside: 'before' }),
      ...across(x(0), x(firstBack), dimTop, top, axleTop, 't', { beside: 'before' }),
      ...across(x(0), x(gaugeMm), below, y(20), y(20), gaugeName),
      ...(onHead > 0
        ? [
            line([onFrom, y(0) + 1], [onTo, y(0) + 1], pen('mark', 3)),
            ...across(onFrom, onTo, below + 26, y(4), y(4), '', {}),
          ]
        : [line([onTo, y(2)], [onFrom, y(2)], pen('limit', 1.6, [3, 2]))]),
      words(
        (onFrom + onTo) / 2 + (mirrored ? 24 : -24),
        below + 30,
        onHead > 0 ? `left on the head ${size(onHead)}` : 'no support',
        {
          anchor: mirrored ? 'start' : 'end',
          bold: true,
        },
      ),
      ...arrow(
        [middle + (mirrored ? -22 : 22), axleTop + 34],
        [middle + (mirrored ? 22 : -22), axleTop + 34],
        { ink: 'faint', width: 1.4 },
      ),
      words(middle, axleTop + 50, 'flange hard against its rail', { anchor: 'middle', ink: 'faint' }),
      ...entries.flatMap(({ each, bold }, i) => lines(8, textTop + i * LETTER * 1.3, [each], { bold })),
    ],
  };
}
