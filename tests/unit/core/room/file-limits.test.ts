import { describe, expect, it } from 'vitest';
import { openRoom, saveRoom } from '../../../../core/room/open-room';
import { MAX_ROOM_BYTES, utf8Bytes } from '../../../../core/room/read-json';
import { faultsOf, fileOf, opened, roomOf } from '../../support/rooms';

const withNote = (note: string): string =>
  JSON.stringify(fileOf()).replace('"format"', `"note":${note},"format"`);

describe('figures that a file cannot keep', () => {
  it.each(['1e999', '-1e999', '[1,{"a":1e400}]'])('%s is refused with its place', (figure) => {
    const [fault] = faultsOf(withNote(figure));
    expect(fault?.path).toMatch(/^note/);
    expect(fault?.sentence).toMatch(/too large to be kept/);
  });

  it('minus zero is zero', () => {
    const project = opened(withNote('[-0, {"x": -0.0}]'));
    expect(project).toMatchObject({ note: [0, { x: 0 }] });
    expect(openRoom(saveRoom(project))).toEqual({ ok: true, project });
  });
});

describe('a file near the limit of size', () => {
  it('that is compact can be saved and opened again', () => {
    const text = withNote(`[${'1,'.repeat(2_240_000)}1]`);
    expect(utf8Bytes(text)).toBeLessThan(MAX_ROOM_BYTES);
    const project = opened(text);
    const saved = saveRoom(project);
    expect(utf8Bytes(saved)).toBeLessThanOrEqual(MAX_ROOM_BYTES);
    expect(openRoom(saved).ok).toBe(true);
  });

  it('that would grow over it when written out is refused when it is opened', () => {
    const text = withNote(`[${'1e20,'.repeat(900_000)}1]`);
    expect(utf8Bytes(text)).toBeLessThan(MAX_ROOM_BYTES);
    expect(faultsOf(text)[0]?.sentence).toMatch(/could not be saved/);
  });

  it('is measured in bytes, not in letters', () => {
    const text = withNote(JSON.stringify('ö'.repeat(3_000_000)));
    expect(faultsOf(text)[0]?.sentence).toMatch(/6\.1 MB/);
  });

  it('a usual room is written with one field a line', () => {
    expect(saveRoom(roomOf()).split('\n').length).toBeGreaterThan(40);
  });
});
