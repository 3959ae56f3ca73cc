/**
 * Loudspeaker layouts as data (resources/layouts): the channels by their label of ITU-R BS.2051, and
 * one or more published recommendations with azimuth and elevation ranges for each channel. Where
 * recommendations differ the person chooses which one judges; the first stands until then. A new
 * layout is one file there and its line here.
 */

import fiveOne from '../../resources/layouts/0+5+0.json';
import sevenOne from '../../resources/layouts/0+7+0.json';
import fiveOneFour from '../../resources/layouts/4+5+0.json';
import sevenOneFour from '../../resources/layouts/4+7+0.json';

/** Where a recommendation wants a channel. */
export interface Window {
  /** Least and greatest azimuth in degrees, positive to the listener's left. */
  readonly azimuth: readonly [number, number];
  readonly nominalAzimuth: number;
  /** Least and greatest elevation in degrees. */
  readonly elevation: readonly [number, number];
}

/** A channel with its window by the recommendation that judges. */
export interface Channel extends Window {
  /** Label of BS.2051, for example `M+110`. */
  readonly label: string;
  readonly name: string;
  readonly short: string;
}

export interface Recommendation {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  /** How its figures are known: read where, or from memory. */
  readonly howKnown: string;
  readonly note?: string;
}

/** A layout as one of its recommendations wants it. */
export interface Layout {
  readonly id: string;
  readonly tradeName: string;
  /** Source of the windows: that of the recommendation which judges. */
  readonly source: string;
  readonly channels: readonly Channel[];
  readonly recommendation: Recommendation;
  /** All that can be chosen from, the one that stands by default first. */
  readonly recommendations: readonly Recommendation[];
}

/** What a file in resources/layouts says. */
interface LayoutFile {
  readonly id: string;
  readonly tradeName: string;
  readonly channels: readonly Pick<Channel, 'label' | 'name' | 'short'>[];
  readonly recommendations: readonly (Recommendation & {
    readonly windows: Readonly<Record<string, WindowInFile>>;
  })[];
}

interface WindowInFile {
  readonly azimuth: readonly number[];
  readonly nominalAzimuth: number;
  readonly elevation: readonly number[];
}

/** JSON lists become pairs here, once. */
const pair = (list: readonly number[]): readonly [number, number] => [list[0] ?? 0, list[1] ?? 0];

/** The layout of a file as each of its recommendations wants it. */
function asRecommended(file: LayoutFile): readonly Layout[] {
  const recommendations = file.recommendations.map(
    ({ id, title, source, howKnown, note }): Recommendation => ({
      id,
      title,
      source,
      howKnown,
      ...(note === undefined ? {} : { note }),
    }),
  );
  return file.recommendations.map(({ windows }, i): Layout => {
    const recommendation = recommendations[i];
    if (!recommendation) throw new Error(`The layout ${file.id} has no recommendation ${i}.`);
    const channels = file.channels.map((channel): Channel => {
      const window = windows[channel.label];
      if (!window) throw new Error(`${file.id} has no window for ${channel.label}.`);
      return {
        ...channel,
        azimuth: pair(window.azimuth),
        nominalAzimuth: window.nominalAzimuth,
        elevation: pair(window.elevation),
      };
    });
    const { id, tradeName } = file;
    return {
      id,
      tradeName,
      source: recommendation.source,
      channels,
      recommendation,
      recommendations,
    };
  });
}

const FILES: readonly LayoutFile[] = [fiveOne, sevenOne, fiveOneFour, sevenOneFour];
const RECOMMENDED: readonly (readonly Layout[])[] = FILES.map(asRecommended);

/** Every layout, by its first recommendation. */
export const LAYOUTS: readonly Layout[] = RECOMMENDED.flatMap((layouts) => layouts.slice(0, 1));

/**
 * The layout of that id as the recommendation wants it, or as the first one does where it has none
 * of that id; undefined where no layout has the id.
 */
export function layoutOf(id: string, recommendation?: string): Layout | undefined {
  const layouts = RECOMMENDED.find(([first]) => first?.id === id);
  return layouts?.find((layout) => layout.recommendation.id === recommendation) ?? layouts?.[0];
}

/** True for a channel that any layout has. */
export function isKnownChannel(label: string): boolean {
  return LAYOUTS.some(({ channels }) => channels.some((channel) => channel.label === label));
}
