import { describe, expect, it } from 'vitest';
import { directionFrom } from '../../core/speakers/direction';
import { judgeSpeakers, type SpeakerResult } from '../../core/speakers/judge';
import { layoutOf } from '../../core/speakers/layouts';
import { given, roomOf } from '../unit/support/rooms';

type Window = readonly [label: string, nominal: number, azimuth: number[], elevation: number[]];

// ITU-R BS.2051-1, tables of systems B, I, D and J, in the machine-readable copy that the EBU publishes
// (ear/core/data/2051_layouts.yaml). Left side as in the table, right side its mirror.
const SYSTEM_B: readonly Window[] = [
  ['M+030', 30, [30, 30], [0, 0]],
  ['M-030', -30, [-30, -30], [0, 0]],
  ['M+000', 0, [0, 0], [0, 0]],
  ['M+110', 110, [100, 120], [0, 15]],
  ['M-110', -110, [-120, -100], [0, 15]],
];
const SYSTEM_I: readonly Window[] = [
  ['M+030', 30, [30, 45], [0, 0]],
  ['M-030', -30, [-45, -30], [0, 0]],
  ['M+000', 0, [0, 0], [0, 0]],
  ['M+090', 90, [85, 110], [0, 0]],
  ['M-090', -90, [-110, -85], [0, 0]],
  ['M+135', 135, [120, 150], [0, 0]],
  ['M-135', -135, [-150, -120], [0, 0]],
];

// 4+5+0: its surrounds, unlike those of 0+5+0, stay level with the ears.
const SYSTEM_D: readonly Window[] = [
  ...SYSTEM_B.slice(0, 3),
  ['M+110', 110, [100, 120], [0, 0]],
  ['M-110', -110, [-120, -100], [0, 0]],
  ['U+030', 30, [30, 45], [30, 55]],
  ['U-030', -30, [-45, -30], [30, 55]],
  ['U+110', 110, [100, 135], [30, 55]],
  ['U-110', -110, [-135, -100], [30, 55]],
];
const SYSTEM_J: readonly Window[] = [
  ...SYSTEM_I,
  ['U+045', 45, [30, 45], [30, 55]],
  ['U-045', -45, [-45, -30], [30, 55]],
  ['U+135', 135, [100, 150], [30, 55]],
  ['U-135', -135, [-150, -100], [30, 55]],
];

// ITU-R BS.775-3, fig. 1 and its table, read in a published copy of pages 4 and 5. Note 4, for more
// than two surrounds: the arc from 60 to 150 degrees. That they may be inclined like those of the
// figure is from memory.
const BS775_FIVE = SYSTEM_B;
const BS775_SEVEN: readonly Window[] = [
  ...SYSTEM_B.slice(0, 3),
  ['M+090', 90, [60, 150], [0, 15]],
  ['M-090', -90, [-150, -60], [0, 15]],
  ['M+135', 135, [60, 150], [0, 15]],
  ['M-135', -135, [-150, -60], [0, 15]],
];

describe.each([
  ['0+5+0', 'bs2051', SYSTEM_B],
  ['0+7+0', 'bs2051', SYSTEM_I],
  ['4+5+0', 'bs2051', SYSTEM_D],
  ['4+7+0', 'bs2051', SYSTEM_J],
  ['0+5+0', 'bs775', BS775_FIVE],
  ['0+7+0', 'bs775', BS775_SEVEN],
] as const)('layout %s by %s, windows as transcribed', (id, recommendation, windows) => {
  const layout = given(layoutOf(id, recommendation));

  it('has the channels of the recommendation and no others', () => {
    expect(layout.recommendation.id).toBe(recommendation);
    expect(layout.channels.map((channel) => channel.label)).toEqual(
      windows.map(([label]) => label),
    );
  });

  it.each(windows)('channel %s: nominal %i, azimuth %j, elevation %j', (label, ...window) => {
    const channel = layout.channels.find((candidate) => candidate.label === label);
    expect([channel?.nominalAzimuth, channel?.azimuth, channel?.elevation]).toEqual(window);
  });
});

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
