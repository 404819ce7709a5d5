import { PRINT_INKS } from '../../figures/print-inks';

/** Inks of words and rules on paper; the drawings' own where both mean the same. */
export const INK = {
  text: PRINT_INKS.ink,
  faint: PRINT_INKS.faint,
  accent: PRINT_INKS.mark,
  link: '#1f4e79',
  rule: '#b9b2a0',
  hairline: '#dcd6c8',
  panel: '#f6f2e8',
  warn: PRINT_INKS.limit,
} as const;
export type InkName = keyof typeof INK;
