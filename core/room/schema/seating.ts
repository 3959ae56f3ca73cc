/** The rows of seats, and the place that is judged at. */

import { z } from 'zod';
import { DEFAULT_ROW } from '../defaults';
import { ROW_LIMITS } from '../limits';
import { coordinate, group, id, list, metres, says, whole } from './fields';
import type { Known } from './known';

const row = group({
  id: id(),
  seats: whole('seats', 1, 20).default(DEFAULT_ROW.seats),
  /** Where the ears are. */
  y: coordinate(),
  /** Centre of the row; the middle of the room where it is not given. */
  x: coordinate().exactOptional(),
  pitchM: metres(...ROW_LIMITS.pitchM).default(DEFAULT_ROW.pitchM),
  riserM: metres(...ROW_LIMITS.riserM).default(DEFAULT_ROW.riserM),
  earHeightM: metres(...ROW_LIMITS.earHeightM).default(DEFAULT_ROW.earHeightM),
  eyeHeightM: metres(...ROW_LIMITS.eyeHeightM).default(DEFAULT_ROW.eyeHeightM),
});

/** A row of seats; heights in metres above the row's own floor. */
export type Row = Known<z.output<typeof row>>;

/** Empty where a room has no row of seats. */
const rowName = () =>
  z.union([id(), z.literal('')], says('the id of a row, or empty where there are no rows'));

const named = group({
  row: rowName(),
  seat: whole('seats from the left', 1, 20).exactOptional(),
  middle: z.literal(true, says('true, or left out where a seat is named')).exactOptional(),
});
type Named = z.output<typeof named>;
type OnePlace =
  { readonly row: string; readonly seat: number } | { readonly row: string; readonly middle: true };

const isOnePlace = (place: Named): place is OnePlace =>
  (place.seat === undefined) !== (place.middle === undefined);

const reference = named.transform((place, context) => {
  if (isOnePlace(place)) return place;
  const message = 'must have either "seat", the number of a seat, or "middle": true.';
  context.addIssue({ code: 'custom', message, input: place });
  return z.NEVER;
});

/**
 * The place that angles are judged at: a seat, counted from 1 from the left hand of a person who faces
 * the screen, or the middle of a row, where no seat need be.
 */
export type Reference = Known<z.output<typeof reference>>;

export const seating = group({
  rows: list(row, 12).exactOptional(),
  reference: reference.exactOptional(),
}).prefault({});
