import type { Ink } from './shapes';

/** Inks on white paper: dark enough to survive a black-and-white copier. Also the fallback on screen. */
export const PRINT_INKS: Readonly<Record<Ink, string>> = {
  ink: '#1d242b',
  faint: '#6f6a5d',
  paper: '#ffffff',
  rail: '#3d4a54',
  wheel: '#6a3f1c',
  limit: '#a01425',
  mark: '#9c3a06',
  seriesA: '#0064a6',
  seriesB: '#b84e00',
  seriesC: '#00704f',
  shade: '#e4dcc6',
  warn: '#8a5a00',
};
