/**
 * What every seat gets of an alignment that was made for the reference place: angle, distance, and how
 * much later and louder each channel comes than there. By distance alone (1/c and the inverse distance
 * law): no directivity, no room.
 */

import { speedOfSoundMS } from '../air/medium';
import type { PlacedSpeaker, Project } from '../room/project';
import { listeningPlaces, referencePlace, type ListeningPlace } from '../room/seats';
import { coverage, type OffAxis } from './aim';
import { directionFrom, type Direction } from './direction';
import { degreesOutside, placedOf } from './judge';
import { layoutOf, type Channel } from './layouts';

export interface AtSeat extends Direction {
  readonly channel: string;
  readonly row: string;
  /** Null in the middle of the row, between two seats. */
  readonly seat: number | null;
  /** Later (positive) than the channel arrives at the reference place, ms. */
  readonly arrivalMs: number;
  /** Louder (positive) than the channel is at the reference place, dB. */
  readonly levelDb: number;
  /** Degrees outside the channel's window as this seat hears it, azimuth and elevation together. */
  readonly outsideDeg: number;
  /** How the seat lies from the axis of the loudspeaker. */
  readonly offAxis: OffAxis;
}

/** Least and greatest over the seats of one channel. */
export interface ChannelSpread {
  readonly channel: string;
  readonly levelDb: readonly [number, number];
  readonly arrivalMs: readonly [number, number];
  /** At the seat that hears it farthest outside its window. */
  readonly worstOutsideDeg: number;
  readonly worstOffAxisDeg: number;
}

/** What a listener at one place hears between the channels: 0 at the reference place. */
export interface AlignmentSpread {
  readonly row: string;
  readonly seat: number | null;
  /** Greatest minus least arrival of the channels, ms. */
  readonly arrivalMs: number;
  /** Greatest minus least level of the channels, dB. */
  readonly levelDb: number;
  readonly channelsOutside: number;
}

export interface SeatTable {
  /** Channel by channel in the order of the file, and in each seat by seat, the reference place among them. */
  readonly cells: readonly AtSeat[];
  readonly channels: readonly ChannelSpread[];
  readonly seats: readonly AlignmentSpread[];
}

/** A distance never counts as less than this, m: ears at a loudspeaker have no level. */
const LEAST_M = 0.01;

/** The table of all channels of the layout that have a place, at all seats; empty without a seat. */
export function atSeats(project: Project): SeatTable {
  const layout = layoutOf(project.speakers.layout, project.speakers.recommendation) ?? null;
  const reference = referencePlace(project);
  if (!reference) return { cells: [], channels: [], seats: [] };
  const seats = listeningPlaces(project);
  const placed = placedOf(project, layout);
  const speedMS = speedOfSoundMS(project.air.temperatureC);
  const cells = placed.flatMap((speaker) => {
    const channel = layout?.channels.find(({ label }) => label === speaker.channel);
    return rowOf(project, speaker, channel, seats, reference, speedMS);
  });
  return {
    cells,
    channels: placed.map(({ channel }) => {
      const own = cells.filter((cell) => cell.channel === channel && cell.seat !== null);
      return {
        channel,
        levelDb: extent(own.map((cell) => cell.levelDb)),
        arrivalMs: extent(own.map((cell) => cell.arrivalMs)),
        worstOutsideDeg: Math.max(0, ...own.map((cell) => cell.outsideDeg)),
        worstOffAxisDeg: Math.max(0, ...own.map((cell) => cell.offAxis.offAxisDeg)),
      };
    }),
    seats: seats.map(({ row, seat }) => {
      const own = cells.filter((cell) => cell.row === row && cell.seat === seat);
      const [soonest, latest] = extent(own.map((cell) => cell.arrivalMs));
      const [quietest, loudest] = extent(own.map((cell) => cell.levelDb));
      return {
        row,
        seat,
        arrivalMs: latest - soonest,
        levelDb: loudest - quietest,
        channelsOutside: own.filter((cell) => cell.outsideDeg > 0).length,
      };
    }),
  };
}

function rowOf(
  project: Project,
  speaker: PlacedSpeaker,
  channel: Channel | undefined,
  seats: readonly ListeningPlace[],
  reference: ListeningPlace,
  speedMS: number,
): readonly AtSeat[] {
  const thereM = directionFrom(reference.position, speaker.position).distanceM;
  const off = coverage(project, speaker, seats);
  return seats.flatMap(({ row, seat, position }, i): readonly AtSeat[] => {
    const direction = directionFrom(position, speaker.position);
    const offAxis = off[i];
    if (!offAxis) return [];
    const { distanceM } = direction;
    return [
      {
        channel: speaker.channel,
        row,
        seat,
        ...direction,
        arrivalMs: ((distanceM - thereM) / speedMS) * 1000,
        levelDb: 20 * Math.log10(Math.max(thereM, LEAST_M) / Math.max(distanceM, LEAST_M)),
        outsideDeg: channel ? degreesOutside(direction, channel) : 0,
        offAxis,
      },
    ];
  });
}

const extent = (values: readonly number[]): readonly [number, number] =>
  values.length === 0 ? [0, 0] : [Math.min(...values), Math.max(...values)];
