import { describe, expect, it } from 'vitest';
import { directionFrom } from '../../core/speakers/direction';
import { judgeSpeakers, type SpeakerResult } from '../../core/speakers/judge';
import { given, roomOf } from '../unit/support/rooms';

/** Verdict on one loudspeaker whose place is 2 m from the ears, level with them. */
function heard(layout: string, channel: string, azimuthDeg: number): SpeakerResult {
  const angle = (azimuthDeg * Math.PI) / 180;
  const position = [4 - 2 * Math.sin(angle), 4 - 2 * Math.cos(angle), 1.2];
  const project = roomOf(
    { size: { width: 8, length: 8, height: 3 } },
    {
      seating: { rows: [{ id: 'row-1', seats: 1, y: 4, earHeightM: 1.2 }] },
      speakers: { layout, placed: [{ channel, position }] },
    },
  );
  return given(judgeSpeakers(project).speakers[0]);
}

describe('angles at the listening place', () => {
  it('are 30 degrees and 3 m for a loudspeaker 2.598 m ahead and 1.5 m to the left', () => {
    // ITU-R BS.775-3, fig. 1: left and right at 30 degrees, 60 degrees apart.
    const left = directionFrom([3, 4, 1.2], [1.5, 1.402, 1.2]);
    expect(left.azimuthDeg).toBeCloseTo(30, 2);
    expect(left.elevationDeg).toBe(0);
    expect(left.distanceM).toBeCloseTo(3, 3);
    const right = directionFrom([3, 4, 1.2], [4.5, 1.402, 1.2]);
    expect(left.azimuthDeg - right.azimuthDeg).toBeCloseTo(60, 2);
  });

  it('are 45 degrees up for a loudspeaker 1.2 m above the ears and 1.2 m away', () => {
    // ITU-R BS.2051: elevation positive upwards.
    expect(directionFrom([3, 4, 1.2], [3, 2.8, 2.4]).elevationDeg).toBeCloseTo(45, 10);
  });

  // ITU-R BS.775-3, fig. 1, and BS.2051 system B: surrounds within 100 to 120 degrees.
  // BS.2051 system I: sides within 85 to 110 degrees.
  it.each([
    ['0+5+0', 'M+110', 122, 2],
    ['0+5+0', 'M+110', 100, 0],
    ['0+5+0', 'M+110', 120, 0],
    ['0+5+0', 'M-110', -122, -2],
    ['0+5+0', 'M+030', 45, 15],
    ['0+7+0', 'M+030', 45, 0],
    ['0+7+0', 'M+090', 88, 0],
    ['0+7+0', 'M+090', 80, -5],
    ['0+7+0', 'M-135', -110, 10],
  ] as const)('in %s, %s at %i degrees is %i degrees out', (layout, channel, azimuth, off) => {
    const result = heard(layout, channel, azimuth);
    expect(result.azimuthOffDeg).toBeCloseTo(off, 6);
    expect(result.inRange).toBe(off === 0);
  });
});

describe('delays and levels', () => {
  /** Four loudspeakers straight ahead of the ears at these distances, m. */
  function aligned(temperatureC: number): readonly SpeakerResult[] {
    const places = [
      ['M+000', 3.2],
      ['M+030', 3.0],
      ['M-030', 2.2],
      ['M+110', 1.6],
    ] as const;
    const project = roomOf(
      { size: { width: 5, length: 6, height: 3 } },
      {
        air: { temperatureC },
        seating: { rows: [{ id: 'row-1', seats: 1, y: 4, earHeightM: 1.2 }] },
        speakers: {
          placed: places.map(([channel, far]) => ({ channel, position: [2.5, 4 - far, 1.2] })),
        },
      },
    );
    return judgeSpeakers(project).speakers;
  }

  // 1/c in ms per metre (ISO 9613-1 speed of sound): 2.914 at 20 C, 2.965 at 10 C, 2.865 at 30 C.
  it.each([
    [20, 2.914],
    [10, 2.965],
    [30, 2.865],
  ])('at %i C a metre is worth %f ms', (temperatureC, msPerM) => {
    const delays = aligned(temperatureC).map((speaker) => speaker.delayMs);
    expect(delays[0]).toBe(0);
    expect(delays[1]).toBeCloseTo(0.2 * msPerM, 3);
    expect(delays[2]).toBeCloseTo(1.0 * msPerM, 3);
    expect(Math.abs((delays[3] ?? 0) - 1.6 * msPerM)).toBeLessThan(0.002);
  });

  it('turn the nearer ones down by the inverse distance law', () => {
    // 6.0206 dB per doubling: common practice. 3.2 m against 3.0 and 2.2 m: 0.561 and 3.255 dB.
    const levels = aligned(20).map((speaker) => speaker.levelDb);
    expect(levels[0]).toBeCloseTo(0, 10);
    expect(levels[1]).toBeCloseTo(-0.561, 3);
    expect(levels[2]).toBeCloseTo(-3.255, 3);
    expect(levels[3]).toBeCloseTo(-6.0206, 4);
  });
});
