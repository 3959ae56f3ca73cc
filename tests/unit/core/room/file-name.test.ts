import { describe, expect, it } from 'vitest';
import { plainFileName, roomFileName } from '../../../../core/room/file-name';

describe('a name that is offered for a file', () => {
  it.each([
    ['CON', 'room-CON.room.json'],
    ['nul.room.json', 'room-nul.room.json'],
    ['com1.txt', 'room-com1.txt.room.json'],
    ['Lpt²', 'room-Lpt².room.json'],
    ['console', 'console.room.json'],
    ['den\u202egnp', 'dengnp.room.json'],
    ['\u2066den\u2069\u200f', 'den.room.json'],
    ['a\u001b[31mb', 'a-[31mb.room.json'],
    ['a\u009bb', 'a-b.room.json'],
    ['../den', '-den.room.json'],
    ['\u200e', 'room.room.json'],
    ['den.json', 'den.room.json'],
  ])('%j becomes %j', (suggested, offered) => {
    expect(roomFileName(suggested)).toBe(offered);
  });

  it('is short enough for every file system', () => {
    expect(Buffer.byteLength(roomFileName('𝄞'.repeat(400)))).toBeLessThanOrEqual(255);
  });

  it('keeps its own ending where only the characters are in question', () => {
    expect(plainFileName('aux.room.json')).toBe('room-aux.room.json');
    expect(plainFileName('den.room.json')).toBe('den.room.json');
  });
});
