/** Columns of the list of wheelsets; those named after a field show it. */
export const WHEELSET_COLUMNS = [
  { id: 'firstDerailed', label: 'First to derail' },
  { id: 'measuredWhere', label: 'When it was read' },
  { id: 'state', label: 'State when read' },
  { id: 'beyond', label: 'Beyond a limit' },
  { id: 'readings', label: 'Readings', number: true },
];

export const TRUCK_COLUMNS = [
  { id: 'design', label: 'Design' },
  { id: 'sideBearings', label: 'Side bearings' },
  { id: 'state', label: 'State when read' },
  { id: 'beyond', label: 'Beyond a limit' },
  { id: 'readings', label: 'Readings', number: true },
];
