import type { Source } from '../../findings/finding';
import type { RuleSet } from '../rule-set';
import { lengths } from './printed';

const RULES: Source = {
  text: 'Transport Canada, Railway Freight Car Inspection and Safety Rules, part II, 9.1, read on the regulator’s pages',
  status: 'published',
};
const freight = (printed: string) => lengths({ freightCar: printed });
const at = (item: string) =>
  ({ applies: 'both', citation: `Freight Car Rules 9.1(${item})`, source: RULES }) as const;

/** Canadian freight-car wheel limits. */
export const caFreightCar: RuleSet = {
  id: 'ca-freight-car',
  name: 'Railway Freight Car Inspection and Safety Rules, wheels',
  jurisdiction: 'Canada',
  edition: 'As on the regulator’s pages when read; the text in force on the day of the occurrence decides.',
  notes: ['Straight-plate wheels have further limits (item ix), which are not in this set.'],
  kind: 'equipment',
  classes: [
    {
      id: 'freightCar',
      label: 'freight car',
      vehicleTypes: [
        'coveredHopper',
        'openHopper',
        'gondola',
        'boxcar',
        'flat',
        'centrebeam',
        'tank',
        'autorack',
        'intermodal',
      ],
    },
  ],
  limits: [
    {
      id: 'flange-chip',
      quantity: 'flangeChipLength',
      sense: 'max',
      strict: true,
      ...freight('1 1/2"'),
      onlyWhere: 'the chip or gouge is also more than 1/2 in wide',
      ...at('ii'),
    },
    {
      id: 'shelled',
      quantity: 'shelledSpot',
      sense: 'max',
      strict: true,
      ...freight('1 1/2"'),
      onlyWhere: 'the shelled spot is also more than 1 1/4 in wide',
      ...at('iii'),
    },
    { id: 'flat', quantity: 'flatSpot', sense: 'max', strict: true, ...freight('2 1/2"'), ...at('iv') },
    {
      id: 'flat-adjoining',
      quantity: 'flatSpotAdjoining',
      sense: 'max',
      strict: true,
      ...freight('2"'),
      ...at('iv'),
    },
    {
      id: 'flange-thickness',
      quantity: 'flangeThickness',
      sense: 'min',
      strict: false,
      ...freight('7/8"'),
      ...at('vi'),
    },
    {
      id: 'flange-height',
      quantity: 'flangeHeight',
      sense: 'max',
      strict: true,
      ...freight('1 1/2"'),
      ...at('vii'),
    },
    { id: 'rim', quantity: 'rimThickness', sense: 'min', strict: false, ...freight('11/16"'), ...at('viii') },
  ],
  conventions: [],
};
