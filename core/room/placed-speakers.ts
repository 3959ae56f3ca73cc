/** Changes to the list of placed loudspeakers. */

import type { Aim, PlacedSpeaker, Project } from './project';

/** Fields of a placed loudspeaker that say how it is held. */
export type Mounting = {
  readonly [K in 'mount' | 'pinned' | 'boxM' | 'aim']?: NonNullable<PlacedSpeaker[K]> | null;
};

/** The list with the channel moved, or added at its end where it was missing. */
export function placedWith(
  project: Project,
  { channel, position, mount }: Pick<PlacedSpeaker, 'channel' | 'position' | 'mount'>,
): readonly PlacedSpeaker[] {
  const { placed } = project.speakers;
  const change = mount === undefined ? { position } : { position, mount };
  return placed.some((speaker) => speaker.channel === channel)
    ? placed.map((speaker) => (speaker.channel === channel ? { ...speaker, ...change } : speaker))
    : [...placed, { channel, ...change }];
}

/** The same direction in the angles that a file may hold: -180 to 180 and -90 to 90 degrees. */
function heldAim(aim: Aim): Aim {
  if ('seat' in aim) return aim;
  const turned = aim.azimuthDeg - 360 * Math.ceil((aim.azimuthDeg - 180) / 360);
  return { azimuthDeg: turned, elevationDeg: Math.min(90, Math.max(-90, aim.elevationDeg)) };
}

/** The list with the channel held otherwise; null takes a field out. */
export function mountedWith(
  project: Project,
  { channel, change }: { readonly channel: string; readonly change: Mounting },
): readonly PlacedSpeaker[] {
  return project.speakers.placed.map((speaker) =>
    speaker.channel === channel ? mounted(speaker, change) : speaker,
  );
}

function mounted(speaker: PlacedSpeaker, wanted: Mounting): PlacedSpeaker {
  const change = wanted.aim ? { ...wanted, aim: heldAim(wanted.aim) } : wanted;
  const fields = Object.entries({ ...speaker, ...change }).filter(([, value]) => value !== null);
  return Object.fromEntries(fields) as unknown as PlacedSpeaker;
}
