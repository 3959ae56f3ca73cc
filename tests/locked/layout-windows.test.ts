/** The windows of the layouts, held to the copy that they were transcribed from: kept, not checked. */

import { describe, expect, it } from 'vitest';
import { layoutOf } from '../../core/speakers/layouts';
import { given } from '../unit/support/rooms';

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
] as const)('layout %s by %s', (id, recommendation, windows) => {
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
