import type { Fact } from '../fact';
import { defectiveTiesMargin } from '../margins/defective-ties';
import { counted, looked } from './build';

export const railsWeaklyHeld: Fact = {
  id: 'railsWeaklyHeld',
  name: 'The rails were weakly held',
  definition:
    'Ties, plates and fastenings at the POD could not have held the rails to gauge and upright under the side forces of an ordinary train.',
  negation: 'ties and fastenings held the rails as track in service does',
  witnesses: [
    defectiveTiesMargin,
    looked('obsTiesClustered', {
      ifTrue: 0.65,
      ifFalse: 0.1,
      needsUndisturbed: true,
      reason:
        'Three bad ties together leave about five feet of rail with nothing to hold it. One such place in ten is met on secondary track that holds well enough.',
    }),
    looked('obsFreshPlateSlide', {
      ifTrue: 0.7,
      ifFalse: 0.15,
      needsUndisturbed: true,
      reason:
        'A rail that moves under every train keeps its slide marks bright. Derailed wheels can push plates beyond the damage one can see.',
    }),
    looked('obsPlatesCutField', {
      ifTrue: 0.55,
      ifFalse: 0.15,
      needsUndisturbed: true,
      reason: 'Plates cut in at the field edge show years of outward load on ties that were giving way.',
    }),
    counted('fasteningsMissing', {
      bands: [
        [0, 0.25, 0.7],
        [4, 0.35, 0.22],
        [10, 0.4, 0.08],
      ],
      reason:
        'Ten or more fastenings gone in ten ties means about one on every tie; up to three is found on track in good order.',
    }),
  ],
};
