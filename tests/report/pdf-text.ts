import { inflateSync } from 'node:zlib';

type Obj = { readonly dict: string; readonly stream: Buffer | null };

/** The objects of a PDF that keeps each in the open, as pdfkit writes them. */
function objectsOf(pdf: Buffer): ReadonlyMap<number, Obj> {
  const text = pdf.toString('latin1');
  const found = new Map<number, Obj>();
  const start = /(?:^|\n)(\d+) 0 obj\n/g;
  for (let match = start.exec(text); match !== null; match = start.exec(text)) {
    const from = start.lastIndex;
    const end = /\n?(stream\n|endobj)/g;
    end.lastIndex = from;
    const stop = end.exec(text);
    if (stop === null) break;
    const dict = text.slice(from, stop.index);
    if (stop[1] !== 'stream\n') {
      found.set(Number(match[1]), { dict, stream: null });
      continue;
    }
    const length = Number(/\/Length (\d+)/.exec(dict)?.[1]);
    const bytes = pdf.subarray(end.lastIndex, end.lastIndex + length);
    found.set(Number(match[1]), { dict, stream: dict.includes('FlateDecode') ? inflateSync(bytes) : bytes });
    start.lastIndex = end.lastIndex + length;
  }
  return found;
}

/** Letters by the number they are written with, from a font's ToUnicode map. */
function lettersOf(cmap: string): ReadonlyMap<string, string> {
  const letters = new Map<string, string>();
  for (const [, from = '', list = ''] of cmap.matchAll(/<([0-9a-f]+)> <[0-9a-f]+> \[([^\]]*)\]/g)) {
    [...list.matchAll(/<([0-9a-f ]*)>/g)].forEach(([, points = ''], i) => {
      const text = points
        .split(' ')
        .filter(Boolean)
        .map((point) => String.fromCodePoint(parseInt(point, 16)))
        .join('');
      letters.set((parseInt(from, 16) + i).toString(16).padStart(4, '0'), text);
    });
  }
  return letters;
}

/** The words on each page, in the order they were set, pieces of text on lines of their own. */
export function pdfText(pdf: Buffer): readonly string[] {
  const objects = objectsOf(pdf);
  const refIn = (dict: string, key: string): Obj | undefined =>
    objects.get(Number(new RegExp(`/${key} (\\d+) 0 R`).exec(dict)?.[1]));
  const fonts = new Map<string, ReadonlyMap<string, string>>();
  for (const { dict } of objects.values()) {
    for (const [, name = '', id = ''] of dict.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
      const map = refIn(objects.get(Number(id))?.dict ?? '', 'ToUnicode')?.stream;
      if (map) fonts.set(name, lettersOf(map.toString('latin1')));
    }
  }
  const order = [...objects.values()].find(({ dict }) => dict.includes('/Type /Pages'))?.dict ?? '';
  const kids = /\/Kids \[([^\]]*)\]/.exec(order)?.[1] ?? '';
  return [...kids.matchAll(/(\d+) 0 R/g)].map(([, id]) => {
    const content = refIn(objects.get(Number(id))?.dict ?? '', 'Contents')?.stream?.toString('latin1') ?? '';
    let letters: ReadonlyMap<string, string> = new Map();
    return content
      .split('\n')
      .flatMap((line) => {
        const font = /^\/(F\d+) [\d.]+ Tf/.exec(line)?.[1];
        if (font !== undefined) letters = fonts.get(font) ?? new Map();
        if (!line.endsWith('TJ')) return [];
        const codes = [...line.matchAll(/<([0-9a-f]+)>/g)].flatMap(
          ([, hex = '']) => hex.match(/.{4}/g) ?? [],
        );
        return [codes.map((code) => letters.get(code) ?? '\ufffd').join('')];
      })
      .join('\n')
      .replaceAll('\u00a0', ' ');
  });
}
