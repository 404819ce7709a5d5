import { describe, expect, it } from 'vitest';
import { findingPlace } from '~/app/findings/place';
import { PART_FORMS } from '~/app/subjects/forms';
import { wayOf } from '~/app/rails/ways';
import type { Finding } from '~/lib/findings/finding';
import { GROUPS } from '~/lib/readings/quantities';
import { buildRecord } from '~/tests/findings/record-builder';

const record = buildRecord({
  vehicle: [{ id: 'car' }],
  wheelset: [{ id: 'axle', fields: { vehicle: 'car' } }],
  wheelDefect: [{ id: 'shell', fields: { wheelset: 'axle' } }],
  truck: [{ id: 'truck', fields: { vehicle: 'car' } }],
  station: [{ id: 'station', fields: { name: '-2' } }],
});

const place = (part: Finding['part'], what: string, subject: Finding['subject']): string =>
  findingPlace(record, { id: 'f', part, what, subject });

describe('where a finding stands beside its readings', () => {
  const at = `/cases/${record.id}`;

  it('opens the thing and the group of readings it came from', () => {
    expect(place('wheels', 'treadHollow', { kind: 'wheelset', id: 'axle' })).toBe(
      `${at}/wheels?wheelset=axle&group=wheelShape#f`,
    );
    expect(place('wheels', 'flangeHeightCheck', { kind: 'wheelset', id: 'axle' })).toBe(
      `${at}/wheels?wheelset=axle&group=wheelChecks#f`,
    );
    expect(place('wheels', 'wedgeRise', { kind: 'truck', id: 'truck' })).toBe(
      `${at}/wheels?truck=truck&group=sideBearings#f`,
    );
  });

  it('opens the wheelset of a defect, and a truck for what both trucks give together', () => {
    expect(place('wheels', 'defectLength', { kind: 'wheelDefect', id: 'shell' })).toBe(
      `${at}/wheels?wheelset=axle#f`,
    );
    expect(place('wheels', 'sideBearingClearanceDiagonal', { kind: 'vehicle', id: 'car' })).toBe(
      `${at}/wheels?truck=truck#f`,
    );
  });

  it('names the station, the way off the rail, or the screen alone', () => {
    expect(place('track', 'gauge', { kind: 'station', id: 'station' })).toBe(`${at}/track?of=-2#f`);
    expect(place('track', 'curvature', null)).toBe(`${at}/track#f`);
    expect(place('mechanics', 'rolloverOtherRail', { kind: 'rail', id: 'rail' })).toBe(
      `${at}/rails?way=rolling#f`,
    );
    expect(place('train', 'wheelLoad', { kind: 'vehicle', id: 'car' })).toBe(`${at}/train#f`);
  });

  it.each([
    ['climbLimitAtDryFriction', 'climbing'],
    ['axleSumLimit', 'climbing'],
    ['dropInShare', 'dropping'],
    ['unbalanceLoad', 'loads'],
  ])('%s belongs to %s', (what, way) => expect(wayOf(what).id).toBe(way));
});

describe('groups of readings of the things shown one at a time', () => {
  it('are groups of the catalogue, and leave none of them out', () => {
    const shown = Object.entries(PART_FORMS).flatMap(([kind, forms]) =>
      forms.map(({ group }) => `${kind}:${group}`),
    );
    const wanted = GROUPS.filter(({ subject }) => subject in PART_FORMS).map(
      ({ id, subject }) => `${subject}:${id}`,
    );
    expect([...shown].sort()).toEqual([...wanted].sort());
  });
});
