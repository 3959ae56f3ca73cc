/**
 * Loudspeaker layouts as data (resources/layouts): channel labels, azimuth and elevation ranges of
 * ITU-R BS.2051. A new layout is one file there and its line here.
 */

import fiveOne from '../../resources/layouts/0+5+0.json';
import sevenOne from '../../resources/layouts/0+7+0.json';

export interface Channel {
  /** Label of BS.2051, for example `M+110`. */
  readonly label: string;
  readonly name: string;
  readonly short: string;
  /** Least and greatest azimuth in degrees, positive to the listener's left. */
  readonly azimuth: readonly [number, number];
  readonly nominalAzimuth: number;
  /** Least and greatest elevation in degrees. */
  readonly elevation: readonly [number, number];
}

export interface Layout {
  readonly id: string;
  readonly tradeName: string;
  readonly source: string;
  readonly channels: readonly Channel[];
}

/** JSON lists become pairs here, once. */
const pair = (list: readonly number[]): readonly [number, number] => [list[0] ?? 0, list[1] ?? 0];

export const LAYOUTS: readonly Layout[] = [fiveOne, sevenOne].map((layout) => ({
  ...layout,
  channels: layout.channels.map((channel) => ({
    ...channel,
    azimuth: pair(channel.azimuth),
    elevation: pair(channel.elevation),
  })),
}));

export function layoutOf(id: string): Layout | undefined {
  return LAYOUTS.find((layout) => layout.id === id);
}
