import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as history from '../../../renderer/state/history';
import { bareRoom } from '../../../renderer/state/examples';
import type { Gesture } from '../../../renderer/state/gesture';
import { startBursts, BURST_MS } from '../../../renderer/state/burst';

type H = history.History<number>;

describe('a gesture that is given up', () => {
  it('leaves past, present and redo as they were, however long it went on', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom('change', 'undo', 'redo'), { maxLength: 12 }),
        fc.array(fc.integer({ min: 100, max: 200 }), { minLength: 1, maxLength: 6 }),
        (before, drag) => {
          let work: H = history.startHistory(0);
          before.forEach((step, n) => {
            if (step === 'change') work = history.record(work, n + 1, `step ${n}`);
            else work = step === 'undo' ? history.undo(work) : history.redo(work);
          });
          const dragged = drag.reduce((h, to) => history.record(h, to, 'place', 'drag-1'), work);
          expect(history.takeBack(dragged, 'drag-1')).toEqual(work);
          expect(history.dropPresent(dragged)).toEqual(work);
          expect(history.takeBack(dragged, 'drag-2')).toBe(dragged);
        },
      ),
    );
  });

  it('is over once undo has gone back over it', () => {
    const dragged = history.record(history.startHistory(0), 1, 'place', 'drag-1');
    const there = history.redo(history.undo(dragged));
    expect(history.takeBack(there, 'drag-1')).toBe(there);
  });

  it('brings redo back with what has since become of every state', () => {
    const undone = history.undo(history.record(history.startHistory(0), 1, 'a'));
    const dragged = history.record(undone, 5, 'place', 'drag-1');
    const amended = history.amendAll(dragged, (state) => state + 100);
    expect(history.takeBack(amended, 'drag-1').future.map(({ state }) => state)).toEqual([101]);
  });
});

describe('a burst of key presses', () => {
  const { project } = bareRoom('metric');
  const ended: Gesture[] = [];
  const begin = (): Gesture => {
    const gesture: Gesture = {
      base: project,
      takeBack: () => undefined,
      end: () => void ended.push(gesture),
    };
    return gesture;
  };

  it('is one gesture while the presses follow each other, and ends with a pause', () => {
    const bursts = startBursts(begin);
    const first = bursts.press(0);
    expect(bursts.press(BURST_MS)).toBe(first);
    expect(bursts.press(2 * BURST_MS)).toBe(first);
    expect(ended).not.toContain(first);
    const later = bursts.press(3 * BURST_MS + 1);
    expect(later).not.toBe(first);
    expect(ended).toContain(first);
    expect(startBursts(begin).press(0)).not.toBe(later);
  });

  it('ends when the focus leaves, however soon the next press comes', () => {
    const bursts = startBursts(begin);
    const first = bursts.press(0);
    bursts.end();
    expect(ended).toContain(first);
    expect(bursts.press(1)).not.toBe(first);
  });
});
