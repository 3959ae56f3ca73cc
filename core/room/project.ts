/**
 * The Project: plain data, metres, degrees Celsius, percent, kilopascals. Origin at the floor corner
 * on the left hand of a person who faces the screen; x to the right along the front (screen) wall,
 * y from the front wall to the back wall, z up. Nothing computed is stored here. Fields that a file
 * has and this program does not know ride along untouched. Each record is declared once, by the part of
 * the file's schema that reads it.
 */

export * from './kinds';
export type { Project, Seating } from './schema/project';
export type { Bay, Patch, Room, ShellSize, Solid } from './schema/shell';
export type { Reference, Row } from './schema/seating';
export type { Projector, Screen } from './schema/picture';
export type { Aim, PlacedSpeaker, Speakers, Subwoofer } from './schema/speakers';
export type { AbsorptionByBand, CustomFinish, RoomObject, Target } from './schema/sound';

/** A place in the room, [x, y, z] in metres. */
export type Point = readonly [number, number, number];
