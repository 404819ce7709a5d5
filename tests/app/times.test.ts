import { describe, expect, it } from 'vitest';
import { isLocalTime } from '~/app/times';

describe('a local time as a form sends it', () => {
  it.each(['2026-03-14T09:30', '2026-03-14T09:30:59', '2024-02-29T00:00'])('takes %s', (text) =>
    expect(isLocalTime(text)).toBe(true),
  );

  it.each([
    '',
    '2026-03-14',
    '2026-03-14 09:30',
    '2026-02-30T09:30',
    '2025-02-29T09:30',
    '2026-13-01T00:00',
    '2026-03-14T24:30',
    '2026-03-14T09:30Z',
  ])('refuses “%s”', (text) => expect(isLocalTime(text)).toBe(false));
});
