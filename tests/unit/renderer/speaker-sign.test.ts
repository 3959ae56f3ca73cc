import { describe, expect, it } from 'vitest';
import { speakerSign } from '../../../renderer/drawing/speaker-sign';

describe('the sign of a loudspeaker', () => {
  const outside = { channel: 'M+000', inRange: false };

  it('is that of the finding on its place', () => {
    for (const [severity, sign] of [
      ['fault', '▲'],
      ['warning', '△'],
      ['note', '○'],
    ] as const) {
      const findings = [
        { id: 'speaker-range:M+030', severity: 'warning' as const },
        { id: 'speaker-range:M+000', severity },
      ];
      expect(speakerSign(outside, findings)).toBe(sign);
    }
  });

  it('is none within the window', () => {
    expect(speakerSign({ channel: 'M+000', inRange: true }, [])).toBe(null);
  });
});
