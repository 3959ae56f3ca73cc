import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../../../core/room/edits';
import { saveRoom } from '../../../../core/room/open-room';
import { readBack } from '../../../../core/room/read-back';
import { roomOf } from '../../support/rooms';

describe('a room that is read back', () => {
  it('is the same whatever the order of its fields, known or not', () => {
    const placed = { model: 'invented', channel: 'M+000', pinned: true, position: [2, 1, 1] };
    const room = roomOf({}, { note: 'mine', speakers: { placed: [placed] } });
    const held = applyEdit(room, {
      kind: 'mounting',
      channel: 'M+000',
      change: { mount: 'on-wall', boxM: [0.2, 0.3, 0.2] },
    });
    expect(readBack(held)).toEqual({ ok: true, text: saveRoom(held) });
  });

  it('is refused with the place of what a file cannot hold', () => {
    const room = { ...roomOf(), name: 'x'.repeat(200) };
    expect(readBack(room)).toMatchObject({ ok: false, faults: [{ path: 'name' }] });
  });

  it('is refused where it would come back changed', () => {
    const room = { ...roomOf(), note: Number.NaN };
    expect(readBack(room)).toMatchObject({ ok: true });
    const bare = { ...roomOf(), screen: { ...roomOf().screen, gain: undefined as never } };
    expect(readBack(bare)).toMatchObject({ ok: false, faults: [{ path: '' }] });
  });
});
