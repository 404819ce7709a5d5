import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { markStrip, markStripData } from '~/lib/figures/mark-strip';
import { toSvg } from '~/lib/figures/svg';

const WIDTH = 1120;

/** The marks drawn along the rails, as SVG; null while there is none. */
export const markStripSvg = (loaded: LoadedCase): string | null =>
  derived(loaded, 'mark strip', () => {
    const data = markStripData(loaded.record);
    return data.marks.length === 0 ? null : toSvg(markStrip(data, { width: WIDTH }));
  });
