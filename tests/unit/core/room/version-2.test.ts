import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import { obstacleOf } from '../../../../core/bass/obstacles';
import { migrateRoom } from '../../../../core/room/migrate';
import { saveRoom } from '../../../../core/room/open-room';
import { PATCH_KINDS, type PatchKind, type Project } from '../../../../core/room/project';
import { kindInVersion1 } from '../../../../core/room/version-2';
import { deepFreeze } from '../../support/freeze';
import { at, example, EXAMPLES, faultsOf, fileOf, only, opened, roomOf } from '../../support/rooms';

const PATCH = { face: 'left', rect: [1, 0, 1.8, 2], finish: 'door-solid' };
const BOX = [0.4, 0.4, 0.4] as const;

/** The kinds of the patches of these ids in a file of version 1. */
const kindsOf = (...ids: readonly string[]): readonly PatchKind[] =>
  roomOf({ patches: ids.map((id) => ({ ...PATCH, id })) }).room.patches.map(({ kind }) => kind);

describe('a room file of version 1', () => {
  it.each(EXAMPLES)('of %s opens and means the same', (name) => {
    const file = new URL(`../../../fixtures/version-1/${name}.room.json`, import.meta.url);
    const text = readFileSync(file, 'utf8');
    expect(at(JSON.parse(text), ['version'])).toBe(1);
    const [old, now] = [opened(text), example(name)];
    expect(old).toEqual(now);
    expect(analyze(old).findings).toEqual(analyze(now).findings);
  });

  it('has doors, windows and passages by the beginning of their ids, and panels else', () => {
    expect(kindsOf('door', 'door-2', 'doorway', 'window-1', 'passage-1', 'opening')).toEqual([
      'door',
      'door',
      'door',
      'window',
      'passage',
      'passage',
    ]);
    expect(kindsOf('panel-1', 'rug', 'screen', 'indoor', 'Door')).toEqual([
      'panel',
      'panel',
      'panel',
      'panel',
      'panel',
    ]);
  });

  it('keeps what it did not know, under another name where it now means something', () => {
    const file = fileOf(
      { patches: [{ ...PATCH, id: 'door', kind: 'sliding', 'x-note': 1 }] },
      { speakers: { subwoofers: [{ id: 'a', position: [1, 1, 0.2], boxM: 'big' }] } },
    );
    const { room, speakers } = opened(JSON.stringify(file));
    expect(only(room.patches)).toMatchObject({
      kind: 'door',
      kindInVersion1: 'sliding',
      'x-note': 1,
    });
    expect(only(speakers.subwoofers)).toEqual({
      id: 'a',
      position: [1, 1, 0.2],
      boxMInVersion1: 'big',
    });
  });

  it('is told its faults where they are', () => {
    expect(faultsOf(fileOf({ patches: 'none' })).map(({ path }) => path)).toEqual(['room.patches']);
    expect(faultsOf(fileOf({ patches: [7] })).map(({ path }) => path)).toEqual(['room.patches[0]']);
    expect(faultsOf(fileOf({ patches: [PATCH] })).map(({ path }) => path)).toEqual([
      'room.patches[0].id',
    ]);
    expect(faultsOf(fileOf({}, { speakers: 3 })).map(({ path }) => path)).toEqual(['speakers']);
  });

  it('is not changed by being brought up to date', () => {
    const raw = fileOf(
      { patches: [{ ...PATCH, id: 'door', kind: 1 }] },
      { speakers: { subwoofers: [{ id: 'a', boxM: 1 }] } },
    );
    const before = JSON.stringify(raw);
    expect(migrateRoom(deepFreeze(raw)).ok).toBe(true);
    expect(JSON.stringify(raw)).toBe(before);
  });

  it('is brought up to date whatever is in it', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (patches, subwoofers) => {
        const raw = { version: 1, room: { patches }, speakers: { subwoofers }, other: patches };
        const result = migrateRoom(raw);
        expect(result.ok && result.raw['other']).toBe(patches);
        const list = result.ok ? at(result.raw, ['room', 'patches']) : null;
        if (Array.isArray(patches)) expect(list).toHaveLength(patches.length);
        else expect(list).toBe(patches);
      }),
    );
  });
});

describe('a room file of version 2', () => {
  const file = (patch: object, rest: object = {}) => ({
    ...fileOf({ patches: [{ ...PATCH, id: 'a', ...patch }] }, { ...rest }),
    version: 2,
  });
  const project = (patch: object, rest: object = {}): Project =>
    opened(JSON.stringify(file(patch, rest)));

  it('says what a patch is; what it does not say is something else', () => {
    for (const kind of PATCH_KINDS) expect(only(project({ kind }).room.patches).kind).toBe(kind);
    expect(only(project({ id: 'door-1' }).room.patches).kind).toBe('other');
    const fault = only(faultsOf(file({ kind: 'gate' })));
    expect(fault.path).toBe('room.patches[0].kind');
    expect(fault.sentence).toMatch(/one of door, window, passage, screen, panel, other; .*"gate"/);
  });

  it('lets what may stand before a patch follow its kind, not its name', () => {
    const nobody = { seating: { rows: [] }, screen: { widthM: 1, bottomM: 1 } };
    const before = (patch: object) => obstacleOf(project(patch, nobody), [0.3, 1.4, 0.2], BOX);
    expect(before({ id: 'entry', kind: 'door' })).toEqual({ kind: 'door', id: 'entry' });
    expect(before({ id: 'door-1', kind: 'panel' })).toBeNull();
    expect(before({ id: 'door-1' })).toBeNull();
  });

  it('says how large the box of a subwoofer is, and keeps it when it is written', () => {
    const boxed = (boxM: unknown) => ({
      speakers: { subwoofers: [{ id: 's', position: [1, 1, 0.3], boxM }] },
    });
    const there = project({}, boxed([0.5, 0.6, 0.55]));
    expect(only(there.speakers.subwoofers).boxM).toEqual([0.5, 0.6, 0.55]);
    expect(opened(saveRoom(there))).toEqual(there);
    for (const wrong of [0.4, [0.4, 0.4], [0.4, 0, 0.4], 'usual', null])
      expect(only(faultsOf(file({}, boxed(wrong)))).path).toMatch(
        /^speakers\.subwoofers\[0\]\.boxM/,
      );
  });

  it('is written as such, whatever it was read from', () => {
    const old = roomOf({ patches: [{ ...PATCH, id: 'window-1' }] });
    expect(JSON.parse(saveRoom(old))).toMatchObject({
      version: 2,
      room: { patches: [{ id: 'window-1', kind: 'window' }] },
    });
    expect(kindInVersion1('window-1')).toBe('window');
  });
});
