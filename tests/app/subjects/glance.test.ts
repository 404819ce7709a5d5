import { describe, expect, it } from 'vitest';
import { findingValue } from '~/app/findings/view.server';
import { glance } from '~/app/subjects/glance';
import { shortTitle } from '~/app/subjects/short-title';
import { findings } from '~/lib/findings';
import { buildRecord } from '~/tests/findings/record-builder';

const record = buildRecord({
  vehicle: [{ id: 'car', fields: { position: 3, mark: 'MARL', number: '51882', type: 'hopper' } }],
  wheelset: [
    {
      id: 'axle',
      fields: { vehicle: 'car', axle: 1, disturbance: 'undisturbed' },
      readings: [
        { quantity: 'flangeThickness', slot: 'left', entered: '1 1/8' },
        { quantity: 'flangeThickness', slot: 'right', entered: '1' },
        { quantity: 'flangeHeightCheck', slot: 'right', state: 'fail' },
        { quantity: 'backToBack', slot: '0', entered: '53' },
      ],
    },
  ],
});

const rows = glance(
  findings(record, { seed: 1 }).filter(({ subject }) => subject?.id === 'axle'),
  (finding) => findingValue(finding, 'us'),
  ({ title }) => shortTitle(title, 'Axle 1, 3 · MARL 51882'),
);
const row = (label: string) => rows.find((each) => each.label === label);

describe('findings of a wheelset at a glance', () => {
  it('puts left and right of a kind on one line, without side or axle in its label', () => {
    const cells = row('Flange thickness')?.cells;
    expect(cells?.map(({ place }) => place)).toEqual(['Left', 'Right']);
    expect(cells?.map(({ value }) => value.split(' ±')[0])).toEqual(['1 1/8', '1']);
  });

  it('says the coverage factor once, below, and not in every cell', () => {
    expect(rows.flatMap(({ cells }) => cells).filter(({ value }) => value.includes('k ='))).toEqual([]);
  });

  it('keeps a go/no-go check a pass or fail', () => {
    expect(row('Flange height check')?.cells).toMatchObject([
      { place: 'Right', value: 'Fails', tone: 'bad' },
    ]);
  });

  it('says that the swing was not measured, for both wheels together', () => {
    expect(row('Back-to-back, swing round the wheel')?.cells).toMatchObject([
      { place: '', value: 'not measured', tone: 'care' },
    ]);
  });
});

describe('a title without the name of its thing', () => {
  it.each([
    ['Flange height, left wheel, axle 1, 3 · X 1', 'Axle 1, 3 · X 1', 'Flange height, left wheel'],
    ['Loss, Right rail, Station -1', 'Right rail, Station -1', 'Loss'],
    ['Gap', 'East switch', 'Gap'],
    ['East switch', 'East switch', 'East switch'],
  ])('%s', (title, name, short) => expect(shortTitle(title, name)).toBe(short));
});
