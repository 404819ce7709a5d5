import type { ShouldRevalidateFunction } from '@remix-run/react';

/**
 * A sent form may have been kept in part though something in it was refused: the page is read anew
 * after every form, and not only after those that were kept whole.
 */
export const revalidateAfterForms: ShouldRevalidateFunction = ({ formMethod, defaultShouldRevalidate }) =>
  defaultShouldRevalidate || (formMethod !== undefined && formMethod !== 'GET');
