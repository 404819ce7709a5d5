/** How an outline can come into the case; each is a screen of its own. */
export const TRACE_WAYS = [
  {
    id: 'file',
    label: 'From a file of points',
    explain: 'What a profilometer or a drawing program writes: CSV or text, in mm or inches.',
  },
  {
    id: 'photo',
    label: 'From a picture of the drawn line',
    explain: 'A photo or scan of the pencil outline, with something of known length in it.',
  },
  {
    id: 'pins',
    label: 'Typed from a pin gauge',
    explain: 'How far each pin stands out, one after the other, at an even distance.',
  },
] as const;
export type TraceWay = (typeof TRACE_WAYS)[number]['id'];

export const isTraceWay = (text: unknown): text is TraceWay => TRACE_WAYS.some(({ id }) => id === text);

export const wayHref = (caseId: string, way: TraceWay, about: string): string =>
  `/cases/${caseId}/traces/${way}?about=${encodeURIComponent(about)}`;
