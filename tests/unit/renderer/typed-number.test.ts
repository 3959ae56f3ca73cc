import { describe, expect, it } from 'vitest';
import { typedNumber } from '../../../renderer/kit/controls/typed-number';

const people = { label: 'Group 1, how many', unit: '', low: 0, high: 100, whole: true } as const;
const floor = { label: 'Least floor', unit: 'm²', low: 0, high: 900 } as const;

describe('a number that is typed', () => {
  it.each([
    ['3', people, 3],
    [' 100 ', people, 100],
    ['2.5', floor, 2.5],
    ['2,5', floor, 2.5],
  ] as const)('as "%s" is taken', (text, range, value) => {
    expect(typedNumber(text, range)).toEqual({ ok: true, value });
  });

  it.each(['2.5', '2,5', '', 'two', '-1', '101', '1e999'])(
    'as "%s" is no number of people',
    (text) => {
      const sentence = 'Group 1, how many must be a whole number from 0 to 100.';
      expect(typedNumber(text, people)).toEqual({ ok: false, sentence });
    },
  );

  it('out of range is refused with its unit', () => {
    const sentence = 'Least floor must be a number from 0 to 900 m².';
    expect(typedNumber('901', floor)).toEqual({ ok: false, sentence });
  });
});
