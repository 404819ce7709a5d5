import type { Look } from '~/app/looks';
import tokens from '~/app/styles/tokens.css?raw';

/**
 * An SVG as a picture of its own. It knows nothing of the page around it, so it carries the page's
 * colours and type itself, in the look that was chosen.
 */
export const dressed = (svg: string, look: Look): string =>
  svg.replace(/^<svg([^>]*)>/, `<svg$1 data-look="${look}"><style>${tokens}</style>`);
