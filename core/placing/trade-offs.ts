/** What the chosen places cost, in words and figures. */

import type { LengthUnits } from '../quantity/length';
import { measuresIn } from '../quantity/measures';
import { USUAL_BOX_M } from '../speakers/box';
import { directionFrom } from '../speakers/direction';
import { degreesOutside } from '../speakers/judge';
import type { Candidate } from './candidates';
import { twinOf } from './choose';
import { unevenDeg } from './harm';
import type { PlacingContext } from './placing-context';

export interface TradeOff {
  readonly kind: 'screen' | 'beside' | 'outside' | 'level' | 'uneven' | 'stud';
  readonly channel: string;
  readonly text: string;
  readonly value: number;
  readonly unit: 'm' | 'deg' | 'dB' | '';
}

/** Less than this is not worth a sentence: degrees, and dB. */
const TOLD_DEG = 1;
const TOLD_DB = 3;

/** Every trade, the largest of each kind first. */
export function tradeOffsOf(
  context: PlacingContext,
  chosen: readonly Candidate[],
  units: LengthUnits,
): readonly TradeOff[] {
  const nameOf = (label: string): string =>
    context.layout.channels.find((channel) => channel.label === label)?.name ?? label;
  const falling = (trades: readonly TradeOff[]): readonly TradeOff[] =>
    [...trades].sort((a, b) => b.value - a.value);
  return [
    ...chosen.flatMap((place) => behindScreen(context, place, nameOf(place.channel), units)),
    ...chosen.flatMap((place) => besidePicture(place, nameOf(place.channel))),
    ...falling(chosen.flatMap((place) => outside(context, place, nameOf(place.channel)))),
    ...falling(chosen.flatMap((place) => level(place, nameOf(place.channel)))),
    ...falling(chosen.flatMap((place) => uneven(place, chosen, nameOf, units))),
    ...chosen
      .filter(({ onStud }) => !onStud)
      .map(({ channel }): TradeOff => {
        const text = `${nameOf(channel)} finds no stud within its window: it needs a board between two studs.`;
        return { kind: 'stud', channel, text, value: 1, unit: '' };
      }),
  ];
}

/** What a place behind the picture asks for. */
function behindScreen(
  { project }: PlacingContext,
  place: Candidate,
  name: string,
  units: LengthUnits,
): readonly TradeOff[] {
  if (place.mount !== 'behind-screen') return [];
  const known = project.speakers.placed.find(({ channel }) => channel === place.channel);
  const depthM = (known?.boxM ?? USUAL_BOX_M)[2];
  const text = `${name} plays through the picture: it needs a screen that lets sound through, and ${measuresIn(units).about(depthM)} of depth behind it for its box, in a false wall or in the wall.`;
  return [{ kind: 'screen', channel: place.channel, text, value: depthM, unit: 'm' }];
}

/** What a place below or above the picture costs. */
function besidePicture(
  { channel, beside, direction }: Candidate,
  name: string,
): readonly TradeOff[] {
  if (beside === null) return [];
  const deg = Math.abs(direction.elevationDeg);
  const nearer = beside === 'below' ? 'raised' : 'lowered';
  const text = `${name} goes ${beside} the picture, which lets no sound through: it sounds from ${deg.toFixed(1)} degrees ${direction.elevationDeg < 0 ? 'below' : 'above'} the ears. With the picture ${nearer} it comes nearer to their height; behind a picture that lets sound through it is level with them.`;
  return [{ kind: 'beside', channel, text, value: deg, unit: 'deg' }];
}

/** The worst seat of every row that hears the channel outside its window. */
function outside(context: PlacingContext, place: Candidate, name: string): readonly TradeOff[] {
  const channel = context.layout.channels.find(({ label }) => label === place.channel);
  if (!channel) return [];
  const rows = new Map<string, { readonly seat: number; readonly deg: number }>();
  for (const { row, seat, position } of context.others) {
    const deg = degreesOutside(directionFrom(position, place.position), channel);
    if (deg >= TOLD_DEG && deg > (rows.get(row)?.deg ?? 0)) rows.set(row, { seat, deg });
  }
  return [...rows].map(([row, { seat, deg }]): TradeOff => {
    const number = context.project.seating.rows.findIndex(({ id }) => id === row) + 1;
    const text = `Row ${number} hears ${name} up to ${deg.toFixed(0)} degrees outside its window (seat ${seat}).`;
    return { kind: 'outside', channel: place.channel, text, value: deg, unit: 'deg' };
  });
}

function level({ channel, harm }: Candidate, name: string): readonly TradeOff[] {
  if (harm.spreadDb < TOLD_DB) return [];
  const text = `${name} is ${harm.spreadDb.toFixed(1)} dB louder at the nearest seat than at the farthest.`;
  return [{ kind: 'level', channel, text, value: harm.spreadDb, unit: 'dB' }];
}

function uneven(
  place: Candidate,
  chosen: readonly Candidate[],
  nameOf: (label: string) => string,
  units: LengthUnits,
): readonly TradeOff[] {
  const twin = chosen.find(({ channel }) => channel === twinOf(place.channel));
  if (!twin || !place.channel.includes('+')) return [];
  const deg = unevenDeg(place.direction, twin.direction);
  if (deg < TOLD_DEG) return [];
  const at = ({ direction: { azimuthDeg, elevationDeg, distanceM } }: Candidate): string =>
    `${azimuthDeg.toFixed(0)} degrees, ${elevationDeg.toFixed(0)} up, ${measuresIn(units).rounded(distanceM)}`;
  const text = `${nameOf(place.channel)} and ${nameOf(twin.channel)} do not mirror each other (${at(place)}; ${at(twin)}).`;
  return [{ kind: 'uneven', channel: place.channel, text, value: deg, unit: 'deg' }];
}
