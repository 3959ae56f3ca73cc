/**
 * The Project: plain data, metres, degrees Celsius, percent, kilopascals. Origin at the floor corner
 * on the left hand of a person who faces the screen; x to the right along the front (screen) wall,
 * y from the front wall to the back wall, z up. Nothing computed is stored here. Fields that a file
 * has and this program does not know ride along untouched.
 */

import type { Air } from '../air/medium';
import type { OctaveHz } from '../quantity/bands';

export const ROOM_FORMAT = 'roomwright-room';
export const ROOM_VERSION = 1;

/** A place in the room, [x, y, z] in metres. */
export type Point = readonly [number, number, number];

/** Sides, named as the person sees them; of a solid's sides, `floor` is its underside. */
export const FACES = ['front', 'back', 'left', 'right', 'floor', 'ceiling'] as const;
export type Face = (typeof FACES)[number];

/** Sides of the shell along x, y and z. */
export const SIDES = ['width', 'length', 'height'] as const;
export type Side = (typeof SIDES)[number];

/** Finished inner size of the shell in metres: width along x, length along y, height along z. */
export interface ShellSize {
  readonly width: number;
  readonly length: number;
  readonly height: number;
}

export const SOLID_KINDS = [
  'soffit',
  'riser',
  'closet',
  'column',
  'beam',
  'stage',
  'other',
] as const;
export type SolidKind = (typeof SOLID_KINDS)[number];

/** A box that fills part of the shell, corners in metres. */
export interface Solid {
  readonly id: string;
  readonly kind: SolidKind;
  readonly min: Point;
  readonly max: Point;
  /** Finish id of its exposed sides. */
  readonly finish: string;
}

/** Where the hinges of a door are, seen by a person in the room who faces it. */
export const HINGES = ['left', 'right'] as const;
export type Hinge = (typeof HINGES)[number];

/** How a door opens: into the room, out of it, or along its wall. */
export const SWINGS = ['in', 'out', 'slides'] as const;
export type Swing = (typeof SWINGS)[number];

/** A rectangle of another finish on a face: [u0, v0, u1, v1] in metres along the face's two axes. */
export interface Patch {
  readonly id: string;
  /** A shell face, or `solid-id:face`. */
  readonly face: string;
  readonly rect: readonly [number, number, number, number];
  readonly finish: string;
  /** Of a door; at the nearer end of its wall where it is not given. */
  readonly hinge?: Hinge;
  /** Of a door; into the room where it is not given. */
  readonly swing?: Swing;
}

/** Absorption coefficient by octave; a band without a figure is left out. */
export type AbsorptionByBand = Partial<Readonly<Record<`${OctaveHz}`, number>>>;

export interface CustomFinish {
  readonly id: string;
  readonly name: string;
  readonly absorption: AbsorptionByBand;
  readonly source: string;
  /** How far its front stands off what it is fixed to, m, 0 to 3; 0 where it is not given. */
  readonly depthM?: number;
  /** The absorber it was computed from, where it was designed here; the program's own record. */
  readonly design?: unknown;
}

/** A row of seats; heights in metres above the row's own floor, `y` where the ears are. */
export interface Row {
  readonly id: string;
  readonly seats: number;
  readonly y: number;
  /** Centre of the row; the middle of the room where it is not given. */
  readonly x?: number;
  readonly pitchM: number;
  readonly riserM: number;
  readonly earHeightM: number;
  readonly eyeHeightM: number;
}

/**
 * The place that angles are judged at: a seat, counted from 1 from the left hand of a person who faces
 * the screen, or the middle of a row, where no seat need be.
 */
export type Reference =
  { readonly row: string; readonly seat: number } | { readonly row: string; readonly middle: true };

export interface Seating {
  readonly rows: readonly Row[];
  readonly reference: Reference;
}

export interface Screen {
  readonly widthM: number;
  readonly aspect: readonly [number, number];
  /** Lower edge of the picture above the floor, m. */
  readonly bottomM: number;
  readonly gain: number;
  /** True where the picture lets sound through, so that a loudspeaker can stand behind it. */
  readonly soundThrough: boolean;
  /** Centre along x; the middle of the front wall where it is not given. */
  readonly centreX?: number;
}

export interface Projector {
  readonly position: Point;
  readonly throwRatio: readonly [number, number];
  readonly verticalOffsetPercent: readonly [number, number];
  readonly horizontalOffsetPercent: readonly [number, number];
  readonly lumens: number;
}

/** What holds a loudspeaker. */
export const MOUNTS = [
  'on-wall',
  'in-wall',
  'ceiling',
  'stand',
  'soffit',
  'behind-screen',
] as const;
export type Mount = (typeof MOUNTS)[number];

/**
 * Where a baffle looks: a direction of the room (azimuth 0 towards the screen wall, positive to the
 * left of a person who faces it; 180 looks from the screen to the seats), or a seat.
 */
export type Aim =
  | { readonly azimuthDeg: number; readonly elevationDeg: number }
  | { readonly seat: { readonly row: string; readonly seat: number } };

/** A loudspeaker by its acoustic centre in the middle of its baffle; channel as in ITU-R BS.2051. */
export interface PlacedSpeaker {
  readonly channel: string;
  readonly position: Point;
  /** By the nearest surface where it is not given: see core/speakers/box.ts. */
  readonly mount?: Mount;
  /** True where the program may not move it. */
  readonly pinned?: boolean;
  /** Width, height and depth of the cabinet, m; a usual box where it is not given. */
  readonly boxM?: Point;
  /** The reference place where it is not given. */
  readonly aim?: Aim;
}

/** What a room file and its fields hold of the subwoofers: how many, and how each may be driven. */
export const SUBWOOFER_LIMITS = { count: 16, delayMs: [0, 30], levelDb: [-20, 6] } as const;

/** A subwoofer by its acoustic centre, and how it is driven; what is absent is 0, or not inverted. */
export interface Subwoofer {
  readonly id: string;
  readonly position: Point;
  /** 0 to 30 ms. */
  readonly delayMs?: number;
  /** -20 to 6 dB. */
  readonly levelDb?: number;
  readonly inverted?: boolean;
}

export interface Speakers {
  /** Layout label of ITU-R BS.2051 as upper+middle+bottom, for example `0+5+0`. */
  readonly layout: string;
  /** Id of the recommendation that judges; the layout's first where it is not given. */
  readonly recommendation?: string;
  /** Layout to come, whose further channels are placed and wired for; none where it is not given. */
  readonly later?: string;
  readonly placed: readonly PlacedSpeaker[];
  readonly subwoofers: readonly Subwoofer[];
}

export type Target =
  | { readonly kind: 'bs1116' }
  /** A home-cinema corridor: see core/decay/target.ts. */
  | { readonly kind: 'home-cinema' }
  | {
      readonly kind: 'custom';
      readonly seconds: Partial<Readonly<Record<`${OctaveHz}`, number>>>;
      /** How far a decay may leave the target, percent; 25 where it is not given. */
      readonly tolerancePercent?: number;
    };

/** What is in the room a number of times and absorbs by the piece: people, chairs. */
export interface RoomObject {
  readonly id: string;
  /** Id of a row in resources/items. */
  readonly item: string;
  readonly count: number;
}

/** What can be built: the limits of the bay that the finished room has to stay within, m. */
export interface Bay {
  readonly largest: ShellSize;
  readonly least: ShellSize;
  /** Step in which the carpenter can set a lining, m. */
  readonly stepM: number;
  /** Sides that stay as they are. */
  readonly fixed: readonly Side[];
  /** Least floor area, m2. */
  readonly leastFloorM2: number;
}

export interface Room {
  readonly size: ShellSize;
  readonly solids: readonly Solid[];
  readonly finishes: Readonly<Record<Face, string>>;
  readonly patches: readonly Patch[];
  /** Absent until the person has said what the bay allows. */
  readonly bay?: Bay;
}

export interface Project {
  readonly format: typeof ROOM_FORMAT;
  readonly version: typeof ROOM_VERSION;
  readonly name: string;
  readonly room: Room;
  readonly air: Air;
  readonly finishesCustom: readonly CustomFinish[];
  readonly seating: Seating;
  readonly screen: Screen;
  /** Absent where none is hung yet. */
  readonly projector?: Projector;
  readonly speakers: Speakers;
  readonly target: Target;
  readonly objects: readonly RoomObject[];
}

/** Smallest and largest shell that the program takes, m. */
export const SIZE_LIMITS_M = {
  width: [1, 30],
  length: [1, 30],
  height: [1, 12],
} as const satisfies Record<Side, readonly [number, number]>;

/** Places may lie a little outside the shell (a wall can have been moved past them), never far, m. */
export const PLACE_LIMITS_M = [-10, 60] as const;

/** Figures of a row of seats, m. */
export const ROW_LIMITS = {
  y: PLACE_LIMITS_M,
  x: PLACE_LIMITS_M,
  pitchM: [0.3, 3],
  riserM: [0, 5],
  earHeightM: [0.3, 2.5],
  eyeHeightM: [0.3, 2.5],
} as const;

/** Figures of the screen: lengths in m, the gain a factor. */
export const SCREEN_LIMITS = {
  widthM: [0.2, 30],
  bottomM: [0, 12],
  gain: [0.1, 10],
  centreX: PLACE_LIMITS_M,
} as const;

/** Figures of the air that the formulas are taken to hold for. */
export const AIR_LIMITS = {
  temperatureC: [-20, 50],
  humidityPercent: [10, 100],
  pressureKPa: [50, 120],
} as const;

/** A side of a loudspeaker's cabinet, m. */
export const BOX_SIDE_LIMITS_M = [0.02, 3] as const;

/** Raw test values exceed 1 where a sample absorbs at its edges (ISO 354); the library's go to 1.24. */
export const MOST_ABSORPTION = 1.25;

/** Patches that a room file may hold at most. */
export const MOST_PATCHES = 60;
