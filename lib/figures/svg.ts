import { PRINT_INKS } from './print-inks';
import { drawable, runs } from './runs';
import { INKS, type Figure, type Ink, type Shape, type Stroke } from './shapes';

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Control characters are not allowed in XML at all, not even escaped. */
const escape = (text: string): string =>
  text
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
    .replace(/[&<>"']/g, (c) => ESCAPES[c]!);

/** A hundredth of a pixel is finer than any screen or printer shows. */
const n = (value: number): string => String(Math.round(value * 100) / 100 || 0);

const COLOURS = Object.fromEntries(
  INKS.map((ink) => [ink, `var(--ink-${ink},${PRINT_INKS[ink]})`]),
) as Record<Ink, string>;

const style = (shape: { stroke?: Stroke; fill?: Ink; fillOpacity?: number }): string => {
  let out = shape.fill === undefined ? ' fill="none"' : ` fill="${COLOURS[shape.fill]}"`;
  if (shape.fillOpacity !== undefined) out += ` fill-opacity="${n(shape.fillOpacity)}"`;
  if (shape.stroke !== undefined) {
    out += ` stroke="${COLOURS[shape.stroke.ink]}" stroke-width="${n(shape.stroke.width)}"`;
    if (shape.stroke.dash !== undefined) out += ` stroke-dasharray="${shape.stroke.dash.map(n).join(' ')}"`;
  }
  return out;
};

const pairs = (points: readonly number[]): string => {
  let out = '';
  for (let i = 0; i < points.length; i += 2)
    out += `${i === 0 ? '' : ' '}${n(points[i]!)},${n(points[i + 1]!)}`;
  return out;
};

function element(shape: Shape): string {
  switch (shape.type) {
    case 'line':
      if (!drawable(shape.x1, shape.y1, shape.x2, shape.y2)) return '';
      return `<line x1="${n(shape.x1)}" y1="${n(shape.y1)}" x2="${n(shape.x2)}" y2="${n(shape.y2)}"${style(shape)}/>`;
    case 'polyline': {
      const tag = shape.closed ? 'polygon' : 'polyline';
      const looks = style(shape);
      return runs(shape.points)
        .map((run) => `<${tag} points="${pairs(run)}"${looks}/>`)
        .join('');
    }
    case 'rect': {
      if (!drawable(shape.x, shape.y, shape.width, shape.height)) return '';
      const radius = shape.radius === undefined ? '' : ` rx="${n(shape.radius)}"`;
      return `<rect x="${n(shape.x)}" y="${n(shape.y)}" width="${n(shape.width)}" height="${n(shape.height)}"${radius}${style(shape)}/>`;
    }
    case 'circle':
      if (!drawable(shape.cx, shape.cy, shape.r)) return '';
      return `<circle cx="${n(shape.cx)}" cy="${n(shape.cy)}" r="${n(shape.r)}"${style(shape)}/>`;
    case 'text': {
      if (!drawable(shape.x, shape.y, shape.size)) return '';
      const anchor =
        shape.anchor === undefined || shape.anchor === 'start' ? '' : ` text-anchor="${shape.anchor}"`;
      const weight = shape.weight === 'bold' ? ' font-weight="700"' : '';
      const turn =
        shape.rotate === undefined
          ? ''
          : ` transform="rotate(${n(shape.rotate)} ${n(shape.x)} ${n(shape.y)})"`;
      return `<text x="${n(shape.x)}" y="${n(shape.y)}" font-size="${n(shape.size)}"${anchor}${weight}${turn} fill="${COLOURS[shape.ink ?? 'ink']}">${escape(shape.text)}</text>`;
    }
    case 'group': {
      const label = shape.label === undefined ? '' : `<title>${escape(shape.label)}</title>`;
      return `<g>${label}${shape.shapes.map(element).join('')}</g>`;
    }
  }
}

export type SvgOptions = {
  /** Unique on the page: ties title and description to the picture by id. Letters, digits and dashes. */
  readonly idPrefix?: string;
};

/**
 * The figure as an SVG element that scales to the width it is given, with its title and description
 * for readers who cannot see it. Inks are the custom properties `--ink-<name>`, with the print inks
 * where a page does not define them. Shapes with a coordinate that is not a number are left out.
 */
export function toSvg(figure: Figure, { idPrefix }: SvgOptions = {}): string {
  const id = (part: string): string => (idPrefix === undefined ? '' : ` id="${escape(idPrefix)}-${part}"`);
  const ties =
    idPrefix === undefined
      ? ''
      : ` aria-labelledby="${escape(idPrefix)}-title" aria-describedby="${escape(idPrefix)}-desc"`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" role="img"${ties} viewBox="0 0 ${n(figure.width)} ${n(figure.height)}"` +
    ` width="${n(figure.width)}" height="${n(figure.height)}"` +
    ` font-family="var(--font-text,'DejaVu Sans',sans-serif)" stroke-linejoin="round" stroke-linecap="butt">` +
    `<title${id('title')}>${escape(figure.title)}</title><desc${id('desc')}>${escape(figure.description)}</desc>` +
    figure.shapes.map(element).join('') +
    '</svg>'
  );
}
