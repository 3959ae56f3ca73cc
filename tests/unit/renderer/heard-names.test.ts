import { describe, expect, it } from 'vitest';
import { heardNames } from '../../../renderer/subjects/speakers/heard-names';

const EDGES = [20, 180] as const;

describe('names of loudspeakers in the panorama', () => {
  it('stand above a mark that is alone', () => {
    expect(heardNames([{ text: 'L', x: 50, y: 100 }], EDGES)).toEqual([88]);
  });

  it('part where two marks stand close beside each other', () => {
    const [first = 0, second = 0] = heardNames(
      [
        { text: 'Lss', x: 60, y: 100 },
        { text: 'Lrs', x: 76, y: 100 },
      ],
      EDGES,
    );
    expect(first).toBe(88);
    expect(Math.abs(second - first)).toBeGreaterThanOrEqual(11);
  });

  it('stand below a mark that is under its window', () => {
    expect(heardNames([{ text: 'C', x: 50, y: 100, below: true }], EDGES)).toEqual([120]);
  });

  it('keep off another mark above their own', () => {
    const [, low = 0] = heardNames(
      [
        { text: 'Rss', x: 60, y: 86 },
        { text: 'Rrs', x: 68, y: 100 },
      ],
      EDGES,
    );
    expect(low).toBeGreaterThan(100);
  });
});
