import type { Source } from '../../findings/finding';
import type { RuleSet } from '../rule-set';
import { kmh, lengths } from './printed';

const memory = (text: string): Source => ({ text, status: 'from memory' });

const GAUGE = memory(
  'EN 13848-5 immediate action limits as repeated in Regulation (EU) No 1299/2014, annex, 4.2.8.4; editions differ on the least gauge',
);
const TWIST = memory(
  'EN 13848-5 immediate action limits as repeated in Regulation (EU) No 1299/2014, annex, 4.2.8.3',
);
const LEVEL = memory(
  'EN 13848-5:2008+A1:2010, immediate action limits for isolated defects, longitudinal level, D1',
);
const ALIGNMENT = memory(
  'EN 13848-5:2008+A1:2010, immediate action limits for isolated defects, alignment, D1',
);

const bands = (upTo80: string, to120: string, to160: string, to200: string, to230: string, to300: string) =>
  lengths({ v80: upTo80, v120: to120, v160: to160, v200: to200, v230: to230, v300: to300 });

const band = (id: string, label: string, speed: number) => ({
  id,
  label,
  freightSpeedMs: kmh(speed),
  passengerSpeedMs: kmh(speed),
});

/** European immediate action limits for isolated defects, by speed band, standard gauge. */
export const en13848_5: RuleSet = {
  id: 'en13848-5',
  name: 'EN 13848-5, track geometry quality, immediate action limits',
  choice: 'EN 13848-5 (track)',
  jurisdiction: 'Europe, 1435 mm gauge, plain line',
  edition:
    'EN 13848-5:2008+A1:2010 and Regulation (EU) No 1299/2014, from memory: check every value before relying on it.',
  notes: [
    'Alignment and longitudinal level are held against signals filtered to wavelengths of 3 to 25 m (D1), mean to peak. They are not mid-ordinates of a chord, and hand-measured mid-ordinates are not compared with them.',
    'Twist on curves with much cant has a limit of its own up to 200 km/h. It is compared where the radius and the cant of the place were read.',
  ],
  kind: 'track',
  classBy: 'speed',
  classSpeeds: {
    citation: 'EN 13848-5, speed bands',
    source: memory('EN 13848-5:2008+A1:2010, speed bands'),
  },
  classes: [
    band('v80', 'up to 80 km/h', 80),
    band('v120', 'over 80 to 120 km/h', 120),
    band('v160', 'over 120 to 160 km/h', 160),
    band('v200', 'over 160 to 200 km/h', 200),
    band('v230', 'over 200 to 230 km/h', 230),
    band('v300', 'over 230 to 300 km/h', 300),
  ],
  limits: [
    {
      id: 'gauge-min',
      quantity: 'gauge',
      sense: 'min',
      strict: true,
      applies: 'both',
      ...bands('1426 mm', '1426 mm', '1427 mm', '1428 mm', '1428 mm', '1430 mm'),
      citation: 'EN 13848-5, gauge',
      source: GAUGE,
    },
    {
      id: 'gauge-max',
      quantity: 'gauge',
      sense: 'max',
      strict: true,
      applies: 'both',
      ...bands('1470 mm', '1470 mm', '1470 mm', '1463 mm', '1463 mm', '1463 mm'),
      citation: 'EN 13848-5, gauge',
      source: GAUGE,
    },
    {
      id: 'twist3m',
      quantity: 'twist3m',
      sense: 'max',
      strict: true,
      applies: 'both',
      ...bands('21 mm', '21 mm', '21 mm', '21 mm', '15 mm', '15 mm'),
      base: { kind: 'within', lengthM: 3, includesExact: true },
      overBase: { fromM: 1.3, toM: 20, mm: 20, mmPerM: 3 },
      citation: 'EN 13848-5, twist',
      source: TWIST,
      note: 'Printed over 3 m. Over a base l of 1.3 to 20 m: 20/l + 3 mm per metre, at most 7 mm per metre up to 200 km/h and 5 above; 35 mm over 5 m.',
    },
    {
      id: 'twist3m-much-cant',
      quantity: 'twist3m',
      sense: 'max',
      strict: true,
      applies: 'curve',
      cantOver: { lessM: 100, perMm: 2 },
      ...lengths({ v80: '18 mm', v120: '18 mm', v160: '18 mm', v200: '18 mm', v230: null, v300: null }),
      base: { kind: 'within', lengthM: 3, includesExact: true },
      overBase: { fromM: 1.3, toM: 20, mm: 20, mmPerM: 1.5 },
      citation: 'EN 13848-5, twist, cant above (R − 100)/2',
      source: memory('EN 13848-5:2008+A1:2010, twist on curves, after ORE B55 report 8'),
      note: 'Where the cant in mm is above (R − 100)/2, R in m: 20/l + 1.5 mm per metre over a base l of 1.3 to 20 m, at most 6 mm per metre.',
    },
    {
      id: 'longitudinal-level',
      quantity: 'longitudinalLevelD1',
      sense: 'max',
      strict: true,
      applies: 'both',
      ...bands('28 mm', '26 mm', '23 mm', '20 mm', '20 mm', '16 mm'),
      citation: 'EN 13848-5, longitudinal level',
      source: LEVEL,
    },
    {
      id: 'alignment',
      quantity: 'alignmentD1',
      sense: 'max',
      strict: true,
      applies: 'both',
      ...bands('22 mm', '17 mm', '14 mm', '12 mm', '12 mm', '10 mm'),
      citation: 'EN 13848-5, alignment',
      source: ALIGNMENT,
    },
  ],
  conventions: [
    {
      id: 'twist-base',
      text: 'Twist is the difference of crosslevel of two stations that were both taken, over the base between them: 3 m, or any from 1.3 to 20 m with the limit for that base. Nothing is interpolated. A base is compared as it was read, with the wavelengths it picks up: stations 5 m apart do not see a short twist between them.',
      source: memory('EN 13848-1, definition of twist'),
    },
  ],
};
