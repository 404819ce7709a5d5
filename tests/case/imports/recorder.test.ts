import { describe, expect, it } from 'vitest';
import { readCsv } from '~/lib/case/imports/csv';
import { proposeMapping } from '~/lib/case/imports/mapping';
import { previewRecorder, RECORDER_TARGETS, usualChannelUnit } from '~/lib/case/imports/recorder';

function preview(text: string, system: 'us' | 'metric' = 'us') {
  const sheet = readCsv(text);
  if (!sheet.ok) throw new Error(sheet.message);
  const mapping = proposeMapping(sheet.value.header, RECORDER_TARGETS, null, (id) =>
    usualChannelUnit(id, system),
  );
  return previewRecorder(sheet.value, mapping, system);
}

const channel = (result: ReturnType<typeof preview>, id: string): number[] => {
  if (!result.ok) throw new Error(result.message);
  return [...(result.value.series.find((one) => one.channel === id)?.values ?? [])];
};

describe('recorder files', () => {
  it('counts clock times from the first row, and keeps an empty cell as a gap', () => {
    const result = preview('Time,Speed mph,Throttle\n14:00:00,10,3\n14:00:01.5,,idle\n14:00:02,20,2\n');
    expect(channel(result, 'time')).toEqual([0, 1.5, 2]);
    const speed = channel(result, 'speed');
    expect(speed[0]).toBeCloseTo(4.4704, 9);
    expect(speed[1]).toBeNaN();
    expect(channel(result, 'throttle')).toEqual([3, 0, 2]);
  });

  it('reads dates across midnight', () => {
    const result = preview('Timestamp,Speed\n2031-05-06 23:59:59,10\n2031-05-07 00:00:01,10\n');
    expect(channel(result, 'time')).toEqual([0, 2]);
  });

  it('tells of gaps and backward steps without mending them', () => {
    const result = preview('Time,Speed\n0,1\n1,1\n2,1\n30,1\n29,1\n30,1\n');
    expect(result).toMatchObject({ ok: true, value: { problems: [] } });
    if (!result.ok) return;
    expect(result.value.notes).toContainEqual(
      expect.stringContaining('Backward steps of the clock: 1 (1.0 s back at row 6)'),
    );
    expect(result.value.notes).toContainEqual(
      expect.stringContaining('between rows: 1 (28.0 s before row 5)'),
    );
  });

  it('names bad cells by row and column, and impossible values with their unit', () => {
    const result = preview('Time,Speed\nnoon,10\n1,fast\n2,900\n,5\n');
    if (!result.ok) throw new Error(result.message);
    expect(result.value.problems.map(({ row, column }) => `${row} ${column}`)).toEqual([
      '2 Time',
      '5 Time',
      '3 Speed',
      '4 Speed',
    ]);
  });

  it('takes a dynamic brake in per cent for the share, one without a unit for the notch, and km/h for the speed', () => {
    const share = preview('Time,Speed (km/h),Dynamic brake (%)\n0,36,55\n1,36,0\n');
    expect(channel(share, 'dynamicBrakeShare')).toEqual([0.55, 0]);
    expect(channel(share, 'dynamicBrakeNotch')).toEqual([]);
    expect(channel(share, 'speed')[0]).toBeCloseTo(10, 9);
    const notch = preview('Time,Speed,Dynamic brake\n0,10,5\n');
    expect(channel(notch, 'dynamicBrakeNotch')).toEqual([5]);
  });

  it('refuses a file with no time column', () => {
    expect(preview('Speed,Throttle\n1,2\n')).toMatchObject({
      ok: false,
      message: expect.stringContaining('time'),
    });
  });
});
