/**
 * Bringing an older file up to the present version, in small pure steps without gaps. A step takes
 * the plain data of its `from` version and returns that of the next one; it never changes its input.
 */

import { describe, type Fault } from './fault';
import { ROOM_VERSION } from './project';
import type { RawRoom } from './raw-room';
import { withKinds } from './version-2';

export type { RawRoom } from './raw-room';

export interface MigrationStep {
  readonly from: number;
  readonly change: (raw: RawRoom) => RawRoom;
}

/** Steps of the room file. */
export const MIGRATION_STEPS: readonly MigrationStep[] = [{ from: 1, change: withKinds }];

export type Migrated =
  { readonly ok: true; readonly raw: RawRoom } | { readonly ok: false; readonly fault: Fault };

/** Apply every step from the file's version up to `present`; refuse newer and unknown versions. */
export function migrateRoom(
  raw: RawRoom,
  steps: readonly MigrationStep[] = MIGRATION_STEPS,
  present: number = ROOM_VERSION,
): Migrated {
  const { version } = raw;
  if (typeof version !== 'number' || !Number.isInteger(version)) {
    return refuse(`must be the whole number ${present}; the file says ${describe(version)}.`);
  }
  if (version > present) {
    return refuse(
      `is ${version}: the file was written by a newer Roomwright; this one reads up to version ${present}. Update the program, then open the file again.`,
    );
  }
  let current = raw;
  for (let at = version; at < present; at++) {
    const step = steps.find((candidate) => candidate.from === at);
    if (!step) return refuse(`is ${version}: no Roomwright ever wrote that version.`);
    current = { ...step.change(current), version: at + 1 };
  }
  return { ok: true, raw: current };
}

const refuse = (sentence: string): Migrated => ({
  ok: false,
  fault: { path: 'version', sentence },
});
