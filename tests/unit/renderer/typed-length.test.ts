import { describe, expect, it } from 'vitest';
import { typedLength, type LengthRange } from '../../../renderer/kit/controls/typed-length';

const width: LengthRange = { label: 'Width', lowM: 1, highM: 30, units: 'imperial', kind: 'room' };
const duct: LengthRange = { label: 'Duct', lowM: 0.02, highM: 6, units: 'imperial', kind: 'part' };
const fill: LengthRange = { label: 'Fill', lowM: 0.003, highM: 1, units: 'imperial', kind: 'part' };
const hole: LengthRange = { ...fill, label: 'Hole', lowM: 0.0002, highM: 0.05, kind: 'fine' };

describe('a bare number with feet and inches', () => {
  it('is feet for the room', () => {
    expect(typedLength('14', width)).toEqual({ ok: true, metres: 4.2672 });
  });

  it('is inches for a part, and feet are offered where they fit', () => {
    expect(typedLength('16', duct)).toEqual({
      ok: true,
      metres: 0.4064,
      doubt: { sentence: 'Read as 16 in.', other: { text: '16 ft', metres: 4.8768 } },
    });
    expect(typedLength('4', fill)).toEqual({ ok: true, metres: 0.1016 });
  });

  it('is told and offered in inches where the room could be meant in them', () => {
    expect(typedLength('40', width)).toMatchObject({
      ok: true,
      metres: 12.192,
      doubt: { sentence: 'Read as 40 ft.', other: { text: '40 in', metres: 1.016 } },
    });
  });

  it('is refused with the reading that fits where its own does not', () => {
    expect(typedLength('165', width)).toEqual({
      ok: false,
      sentence: `165 was read as 165 ft. Width can be 3' 4" to 98'; the nearest is 98'.`,
      other: { text: '165 in', metres: 4.191 },
    });
    expect(typedLength('8', hole)).toMatchObject({ other: { text: '8 mm', metres: 0.008 } });
  });

  it('with a mark is never in doubt', () => {
    expect(typedLength('16"', duct)).toEqual({ ok: true, metres: 0.4064 });
    expect(typedLength(`13' 9"`, width)).toEqual({ ok: true, metres: 4.191 });
    expect(typedLength('13-9', width)).toEqual({ ok: true, metres: 4.191 });
  });
});

describe('a bare number with metres', () => {
  const part: LengthRange = { ...duct, units: 'metric' };
  it('is metres; centimetres and millimetres are offered where metres do not fit', () => {
    expect(typedLength('0.6', part)).toEqual({ ok: true, metres: 0.6 });
    expect(typedLength('1', part)).toEqual({ ok: true, metres: 1 });
    expect(typedLength('60', part)).toMatchObject({ ok: false, other: { text: '60 cm' } });
    expect(typedLength('2400', part)).toMatchObject({ ok: false, other: { text: '2400 mm' } });
  });
});

describe('a length out of range', () => {
  it('typed as its limit is shown is taken as the limit', () => {
    const range: LengthRange = { ...width, lowM: 0, highM: 4.0305 };
    expect(typedLength(`13' 2 11/16"`, range)).toEqual({ ok: true, metres: 4.0305 });
  });

  it('names no limit that cannot be typed', () => {
    const said = typedLength('99 m', width);
    expect(said.ok ? '' : said.sentence).toBe(`Width can be 3' 4" to 98'; the nearest is 98'.`);
  });
});
