import type { FindingTone } from '~/app/findings/view.server';
import type { Finding } from '~/lib/findings/finding';

export type GlanceCell = {
  readonly id: string;
  /** "Left", "Right", or '' where there is one for both. */
  readonly place: string;
  readonly value: string;
  readonly tone: FindingTone;
};

/** One kind of finding on one line, at the places it was found for. */
export type GlanceRow = { readonly label: string; readonly cells: readonly GlanceCell[] };

const PLACES: Readonly<Record<string, string>> = { left: 'Left', right: 'Right' };

/** Said once below the table. */
const COVERAGE = ' (k = 2)';

/** "Flange height, left wheel" and "Diameter of the left wheel" without their side. */
const withoutSide = (title: string): string => title.replace(/(,| of the) (left|right)( wheel)?/, '');

const shortly = (finding: Finding, value: string): string => {
  switch (finding.kind) {
    case 'measured':
      return value.replace(COVERAGE, '');
    case 'passFail':
      return finding.pass ? 'Passes' : 'Fails';
    case 'notMeasured':
      return 'not measured';
    case 'outOfRange':
      return 'outside the method’s range';
  }
};

/**
 * Findings of one thing as a short table: left and right of a kind share a line. `show` gives value
 * and tone in words; titles are taken without the name of the thing, which stands above.
 */
export function glance(
  findings: readonly Finding[],
  show: (finding: Finding) => { readonly value: string; readonly tone: FindingTone },
  titleOf: (finding: Finding) => string,
): readonly GlanceRow[] {
  const rows = new Map<string, { readonly label: string; readonly cells: GlanceCell[] }>();
  for (const finding of findings) {
    const place = PLACES[finding.id.split(':').at(-1) ?? ''] ?? '';
    const title = titleOf(finding);
    const row = rows.get(finding.what) ?? { label: place === '' ? title : withoutSide(title), cells: [] };
    rows.set(finding.what, row);
    const { value, tone } = show(finding);
    row.cells.push({ id: finding.id, place, value: shortly(finding, value), tone });
  }
  return [...rows.values()];
}
