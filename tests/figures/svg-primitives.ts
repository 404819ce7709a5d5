import { toSvg } from '~/lib/figures/svg';
import type { Figure } from '~/lib/figures/shapes';
import type { Primitive } from './pdf-primitives';

const attribute = (tag: string, name: string): string | undefined =>
  new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1];
const number = (tag: string, name: string): number => Number(attribute(tag, name) ?? NaN);

const unescape = (text: string): string =>
  text
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'")
    .replace(/&amp;/g, '&');

/** The primitives of the markup, read back from the markup itself. */
export function svgPrimitives(
  figure: Figure,
  widthOf: (text: string, size: number, bold: boolean) => number,
): Primitive[] {
  const found: Primitive[] = [];
  for (const [tag, name, words] of toSvg(figure).matchAll(
    /<(line|polyline|polygon|rect|circle|text)\b[^>]*?(?:\/>|>([^<]*)<\/text>)/g,
  )) {
    if (name === 'text') {
      const text = unescape(words ?? '');
      const size = number(tag, 'font-size');
      const width = widthOf(text, size, attribute(tag, 'font-weight') === '700');
      const anchor = attribute(tag, 'text-anchor');
      const shift = anchor === 'middle' ? width / 2 : anchor === 'end' ? width : 0;
      const turn = attribute(tag, 'transform');
      const angle = turn ? (Number(/rotate\((\S+)/.exec(turn)![1]) * Math.PI) / 180 : 0;
      const x = number(tag, 'x') - shift * Math.cos(angle);
      const y = number(tag, 'y') - shift * Math.sin(angle);
      if (text !== '') found.push({ kind: 'text', points: [[x, y]] });
      continue;
    }
    if (!/\sstroke="/.test(tag) && /\sfill="none"/.test(tag)) continue;
    const points: [number, number][] = [];
    if (name === 'line')
      points.push([number(tag, 'x1'), number(tag, 'y1')], [number(tag, 'x2'), number(tag, 'y2')]);
    else if (name === 'circle') {
      const [cx, cy, r] = [number(tag, 'cx'), number(tag, 'cy'), number(tag, 'r')];
      points.push([cx - r, cy], [cx, cy - r], [cx + r, cy], [cx, cy + r], [cx - r, cy]);
    } else if (name === 'rect') {
      const [x, y, w, h] = ['x', 'y', 'width', 'height'].map((each) => number(tag, each)) as [
        number,
        number,
        number,
        number,
      ];
      const rx = attribute(tag, 'rx');
      if (rx === undefined) points.push([x, y], [x + w, y + h]);
      else {
        const r = Math.min(Number(rx), w / 2, h / 2);
        points.push([x + r, y], [x + w - r, y], [x + w, y + r], [x + w, y + h - r]);
        points.push([x + w - r, y + h], [x + r, y + h], [x, y + h - r], [x, y + r], [x + r, y]);
      }
    } else {
      for (const pair of attribute(tag, 'points')!.split(' ')) {
        const [x, y] = pair.split(',').map(Number);
        points.push([x!, y!]);
      }
    }
    found.push({ kind: 'path', points });
  }
  return found;
}
