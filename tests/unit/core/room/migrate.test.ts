import { describe, expect, it } from 'vitest';
import {
  MIGRATION_STEPS,
  migrateRoom,
  type MigrationStep,
  type RawRoom,
} from '../../../../core/room/migrate';
import { ROOM_VERSION } from '../../../../core/room/project';
import { deepFreeze } from '../../support/freeze';

/** Three toy steps, in the wrong order on purpose. */
const STEPS: readonly MigrationStep[] = [
  { from: 3, change: (raw) => ({ ...raw, trail: `${String(raw['trail'])}c` }) },
  { from: 1, change: (raw) => ({ ...raw, trail: 'a' }) },
  { from: 2, change: (raw) => ({ ...raw, trail: `${String(raw['trail'])}b` }) },
];

const raw = (version: unknown): RawRoom =>
  deepFreeze({ format: 'roomwright-room', version, room: { size: { width: 4 } } });

describe('bringing an older file up to date', () => {
  it('applies every step from its version on, in the order of the versions', () => {
    expect(migrateRoom(raw(1), STEPS, 4)).toEqual({
      ok: true,
      raw: { format: 'roomwright-room', version: 4, room: { size: { width: 4 } }, trail: 'abc' },
    });
    expect(migrateRoom(raw(3), STEPS, 4)).toMatchObject({
      ok: true,
      raw: { version: 4, trail: 'undefinedc' },
    });
  });

  it('leaves its input as it was', () => {
    const input = raw(1);
    migrateRoom(input, STEPS, 4);
    expect(input).toEqual({
      format: 'roomwright-room',
      version: 1,
      room: { size: { width: 4 } },
    });
  });

  it('hands a file of the present version through untouched', () => {
    const input = raw(4);
    const result = migrateRoom(input, STEPS, 4);
    expect(result.ok && result.raw).toBe(input);
  });

  it('refuses a version from which no step leads on', () => {
    const gap = STEPS.filter((step) => step.from !== 2);
    expect(migrateRoom(raw(1), gap, 4)).toEqual({
      ok: false,
      fault: { path: 'version', sentence: 'is 1: no Roomwright ever wrote that version.' },
    });
  });

  it('refuses a newer version', () => {
    const result = migrateRoom(raw(5), STEPS, 4);
    expect(result.ok ? '' : result.fault.sentence).toMatch(/written by a newer Roomwright/);
  });

  it('sets the version itself, whatever a step leaves there', () => {
    const step: MigrationStep = { from: 1, change: (input) => ({ ...input, version: 77 }) };
    expect(migrateRoom(raw(1), [step], 2)).toMatchObject({ ok: true, raw: { version: 2 } });
  });

  it('has one step for each version from 1 to the present one', () => {
    expect(MIGRATION_STEPS.map((step) => step.from)).toEqual(
      Array.from({ length: ROOM_VERSION - 1 }, (_, i) => i + 1),
    );
  });
});
