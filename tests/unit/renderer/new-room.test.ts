import { describe, expect, it } from 'vitest';
import { targetSource } from '../../../core/decay/target';
import { openRoom } from '../../../core/room/open-room';
import { bareRoom } from '../../../renderer/state/examples';

describe('the target of a room', () => {
  it('is that of a home cinema where the room is new', () => {
    const { target } = bareRoom('imperial').project;
    expect(target).toEqual({ kind: 'home-cinema' });
    // A rule that no standard prints is told as one of the trade, and as nobody's in particular.
    expect(targetSource(target)).toMatch(/^trade rule for home cinemas \(common practice\)/);
  });

  it('is what the format says where a file is silent', () => {
    const room = { size: { width: 4, length: 6, height: 2.4 } };
    const opened = openRoom(
      JSON.stringify({ format: 'roomwright-room', version: 1, name: '', room }),
    );
    expect(opened.ok && opened.project.target).toEqual({ kind: 'bs1116' });
  });
});
