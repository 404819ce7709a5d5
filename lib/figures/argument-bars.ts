import type { Argument, FactWeight, Ranked } from '../explanations/argument';
import { box, LETTER, line, lines, pen, words } from './pieces/draw';
import type { Figure, Shape } from './shapes';
import { textWidth, wrapText } from './text-width';

/** Only what the drawing needs of an argument. */
export type ArgumentBarsData = Pick<Argument, 'order' | 'facts'>;

/** Facts that move the answer by less than this are counted, not drawn. */
const LITTLE_DB = 0.5;
const LINE = LETTER * 1.25;
const BAR = 11;
const ROW_GAP = 7;
const HEAD_HEIGHT = 46;

const MINUS = '−';

/** Whole decibans with their sign; one decimal below ten, where it still tells. */
export function decibanText(decibans: number): string {
  const size = Math.abs(decibans);
  const text = size < 9.95 ? size.toFixed(1) : String(Math.round(size));
  return Number(text) === 0 ? '0' : `${decibans < 0 ? MINUS : '+'}${text}`;
}

type Row = { readonly name: string; readonly decibans: number };

type Group = {
  readonly ranked: Ranked;
  readonly rows: readonly Row[];
  readonly little: number;
  readonly silent: number;
};

function groupOf(ranked: Ranked, facts: readonly FactWeight[]): Group {
  const recorded = facts.filter((fact) => fact.recorded);
  const rows = recorded
    .map((fact) => ({ name: fact.name, decibans: fact.against[ranked.explanation] }))
    .sort((a, b) => b.decibans - a.decibans);
  const told = rows.filter(({ decibans }) => Math.abs(decibans) >= LITTLE_DB);
  return { ranked, rows: told, little: rows.length - told.length, silent: facts.length - recorded.length };
}

/** Slanting lines over the bars that speak against: the side is not told by colour alone. */
function hatch(x: number, y: number, width: number): Shape[] {
  const shapes: Shape[] = [];
  for (let start = 5; start < width + BAR; start += 5) {
    const from = Math.min(start, width);
    const to = Math.max(0, start - BAR);
    shapes.push(line([x + from, y + (start - from)], [x + to, y + (start - to)], pen('seriesB', 1)));
  }
  return shapes;
}

function bar(zero: number, y: number, perDb: number, decibans: number): Shape[] {
  const length = Math.max(1, Math.abs(decibans) * perDb);
  const text = decibanText(decibans);
  return decibans >= 0
    ? [
        box(zero, y, length, BAR, { fill: 'seriesA' }),
        words(zero + length + 4, y + BAR - 1.5, text, { bold: true }),
      ]
    : [
        ...hatch(zero - length, y, length),
        box(zero - length, y, length, BAR, { stroke: pen('seriesB', 1.2) }),
        words(zero - length - 4, y + BAR - 1.5, text, { anchor: 'end', bold: true }),
      ];
}

type Layout = {
  readonly width: number;
  /** Names stand left of the bars, or above them on a narrow drawing. */
  readonly beside: boolean;
  readonly nameWidth: number;
  readonly zero: number;
  readonly perDb: number;
};

function layoutFor(groups: readonly Group[], width: number): Layout {
  const beside = width >= 560;
  const nameWidth = beside ? Math.min(260, width * 0.36) : width - 16;
  const left = beside ? nameWidth + 20 : 8;
  const all = groups.flatMap(({ rows }) => rows.map(({ decibans }) => decibans));
  const most = Math.max(2, ...all);
  const least = Math.min(-2, ...all);
  const number = textWidth('+00.0', LETTER, 'bold') + 8;
  const perDb = (width - 8 - left - 2 * number) / (most - least);
  return { width, beside, nameWidth, zero: left + number - least * perDb, perDb };
}

const plural = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

function closing({ rows, little, silent }: Group): string {
  const parts = [
    ...(little > 0
      ? [
          `${plural(little, 'fact that was', 'facts that were')} looked at say${little === 1 ? 's' : ''} little either way`,
        ]
      : []),
    ...(silent > 0 ? [`${plural(silent, 'fact has', 'facts have')} no record`] : []),
  ];
  if (rows.length === 0) parts.unshift('nothing recorded speaks for or against');
  const text = parts.join('; ');
  return text === '' ? '' : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

function groupShapes(group: Group, layout: Layout, top: number): { shapes: Shape[]; height: number } {
  const { width, beside, nameWidth, zero, perDb } = layout;
  const { ranked, rows } = group;
  const total = `${decibanText(ranked.decibans)} in all`;
  const shapes: Shape[] = [
    words(8, top + 14, ranked.name, { bold: true, size: 13 }),
    words(width - 8, top + 14, total, { bold: true, anchor: 'end' }),
    line([8, top + 20], [width - 8, top + 20], pen('faint', 0.8)),
  ];
  let y = top + 28;
  const barsTop = y;
  for (const { name, decibans } of rows) {
    const names = wrapText(name, nameWidth, LETTER);
    if (beside) {
      const height = Math.max(BAR, names.length * LINE);
      shapes.push(
        ...lines(8, y + LETTER - 1, names),
        ...bar(zero, y + (height - BAR) / 2 - 1, perDb, decibans),
      );
      y += height + ROW_GAP;
    } else {
      shapes.push(...lines(8, y + LETTER - 1, names));
      y += names.length * LINE + 1;
      shapes.push(
        ...bar(zero, y, perDb, decibans),
        line([zero, y - 2], [zero, y + BAR + 2], pen('ink', 1.2)),
      );
      y += BAR + ROW_GAP + 2;
    }
  }
  if (beside && rows.length > 0) shapes.push(line([zero, barsTop - 4], [zero, y - 2], pen('ink', 1.2)));
  const rest = wrapText(closing(group), width - 16, LETTER);
  shapes.push(...lines(8, y + LETTER, rest, { ink: 'faint' }));
  return { shapes, height: y - top + rest.length * LINE + 16 };
}

function headShapes(width: number): Shape[] {
  const y = 14;
  const text = 'speaks against';
  const second = 8 + 30 + textWidth(text, LETTER) + 24;
  return [
    ...hatch(8, y - 9, 22),
    box(8, y - 9, 22, BAR, { stroke: pen('seriesB', 1.2) }),
    words(36, y, text),
    box(second, y - 9, 22, BAR, { fill: 'seriesA' }),
    words(second + 28, y, 'speaks for'),
    words(
      8,
      y + 20,
      width < 480
        ? 'decibans, against “something else”'
        : 'decibans, each explanation against “something else”; 10 decibans is ten times',
      {
        ink: 'faint',
      },
    ),
  ];
}

/**
 * For each explanation, in the argument's order, what speaks for it and against it: one bar per
 * fact, decibans against the background, all to one scale. "Something else" is what the others are
 * held against and has no bars of its own.
 */
export function argumentBars(data: ArgumentBarsData, { width }: { readonly width: number }): Figure {
  const groups = data.order
    .filter(({ explanation }) => explanation !== 'somethingElse')
    .map((ranked) => groupOf(ranked, data.facts));
  const layout = layoutFor(groups, width);
  const shapes: Shape[] = headShapes(width);
  let top = HEAD_HEIGHT;
  for (const group of groups) {
    const drawn = groupShapes(group, layout, top);
    shapes.push({ type: 'group', label: group.ranked.name, shapes: drawn.shapes });
    top += drawn.height;
  }
  return {
    width,
    height: top,
    title: 'What speaks for and against each explanation',
    description: groups
      .map(({ ranked, rows, ...rest }) => {
        const facts = rows.map(({ name, decibans }) => `${name} ${decibanText(decibans)}`).join('; ');
        return `${ranked.name}, ${decibanText(ranked.decibans)} decibans in all${facts === '' ? '' : `: ${facts}`}. ${closing({ ranked, rows, ...rest })}`;
      })
      .join(' '),
    shapes,
  };
}
