import { afterEach, describe, expect, it, vi } from 'vitest';
import { localDate } from '../../../renderer/app/local-date';

describe('the date on the sheet', () => {
  afterEach(() => vi.unstubAllEnvs());

  it.each([
    ['UTC', '2026-03-09'],
    ['Pacific/Kiritimati', '2026-03-10'],
    ['Pacific/Honolulu', '2026-03-09'],
  ])('is the day in %s', (zone, day) => {
    vi.stubEnv('TZ', zone);
    expect(localDate(new Date('2026-03-09T12:00:00Z'))).toBe(day);
  });

  it('is yesterday where the day has not begun', () => {
    vi.stubEnv('TZ', 'America/New_York');
    expect(localDate(new Date('2026-01-01T03:00:00Z'))).toBe('2025-12-31');
  });
});
