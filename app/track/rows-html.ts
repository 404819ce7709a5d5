import type { SheetRow } from './rows.server';

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

const escaped = (text: string): string => text.replace(/[&<>"']/g, (character) => ESCAPES[character] ?? '');

/**
 * Rows of the station sheet as HTML, every text escaped. A page of the sheet has some 700 cells that
 * only show text; as components they would cost the server more than the rest of the screen.
 */
export const rowsHtml = (
  rows: readonly SheetRow[],
  hrefOf: (stationId: string) => string,
  withPhotos: boolean,
): string =>
  rows
    .map(({ id, name, cells, beyond, meets, photos }) => {
      const head = `<th scope="row"><a href="${escaped(hrefOf(id))}">${escaped(name || '(no name)')}</a></th>`;
      const shown = cells
        .slice(1)
        .map((text) => `<td>${escaped(text)}</td>`)
        .join('');
      const limits = beyond === '' ? '<td></td>' : `<td class="beyond">${escaped(beyond)}</td>`;
      const seen = photos === 0 ? '' : `<a href="${escaped(hrefOf(id))}#photos">${photos}</a>`;
      const pictures = withPhotos ? `<td class="number">${seen}</td>` : '';
      return `<tr id="station-${escaped(id)}">${head}${shown}${pictures}<td>${escaped(meets)}</td>${limits}</tr>`;
    })
    .join('');
