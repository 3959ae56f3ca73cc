import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { carpenterStepM, snapLength } from '../../../../core/quantity/carpenter-step';
import { formatLength, parseLength, type LengthUnits } from '../../../../core/quantity/length';

const metresOf = (text: string, units: LengthUnits = 'metric'): number | string => {
  const parsed = parseLength(text, units);
  return parsed.ok ? parsed.metres : parsed.sentence;
};

describe('reading a length in metres', () => {
  it.each([
    ['4.03', 4.03],
    ['4,03', 4.03],
    ['4.03 m', 4.03],
    ['4.03m', 4.03],
    ['  4.03  M ', 4.03],
    ['403 cm', 4.03],
    ['4030 mm', 4.03],
    ['4 metres', 4],
    ['1 meter', 1],
    ['.5', 0.5],
    ['0', 0],
    ['4.03\u00a0m', 4.03],
  ])('takes %j for %f m', (text, metres) => {
    expect(metresOf(text)).toBe(metres);
  });
});

describe('reading a length in feet and inches', () => {
  it.each([
    ['13', 3.9624],
    ["13'", 3.9624],
    ['13 ft', 3.9624],
    ['1 foot', 0.3048],
    ['13 feet', 3.9624],
    [`13' 2 1/2"`, 4.0259],
    [`13'2-1/2"`, 4.0259],
    [`13'-2 1/2"`, 4.0259],
    ['13 ft 2.5 in', 4.0259],
    ['13 ft 2,5 inches', 4.0259],
    [`158 1/2"`, 4.0259],
    ['158.5 in', 4.0259],
    ['158.5in', 4.0259],
    [`1/2"`, 0.0127],
    ['1/16 in', 0.00159],
    [`13' 0"`, 3.9624],
    [`13' 2`, 4.0132],
    [`1' 1/2"`, 0.3175],
    [`5' 14"`, 1.8796],
  ])('takes %j for %f m', (text, metres) => {
    expect(metresOf(text, 'imperial')).toBe(metres);
  });

  it('gives marks of feet and inches the same meaning where metres are shown', () => {
    expect(metresOf(`13' 2 1/2"`, 'metric')).toBe(4.0259);
    expect(metresOf('4.03 m', 'imperial')).toBe(4.03);
  });

  it.each([
    ['13′ 2 ½″', 4.0259],
    ['13 ft. 2 1⁄2 in.', 4.0259],
    ['13’ 2½”', 4.0259],
    ["13' 2½''", 4.0259],
    ['13′2⅝″', 4.029075],
    ['⅛″', 0.003175],
    ['¼"', 0.00635],
    ['¾ in', 0.01905],
    ['1⅜"', 0.034925],
    ['⅞"', 0.022225],
  ])('takes the printed marks of %j for %f m', (text, metres) => {
    // Kept to a hundredth of a millimetre.
    expect(Math.abs(Number(metresOf(text, 'imperial')) - metres)).toBeLessThan(0.0000051);
  });
});

describe('a bare number', () => {
  it.each([
    ['16', 'imperial', 'room', 16 * 0.3048],
    ['16', 'imperial', 'part', 16 * 0.0254],
    ['1/2', 'imperial', 'part', 0.0127],
    ['3 1/2', 'imperial', 'part', 0.0889],
    ['3-1/2', 'imperial', 'part', 0.0889],
    ['3½', 'imperial', 'part', 0.0889],
    ['5/16', 'imperial', 'fine', 0.00794],
    ['0.472', 'imperial', 'fine', 0.01199],
    ['12', 'metric', 'fine', 0.012],
    ['0.6', 'metric', 'part', 0.6],
  ] as const)('%j, %s, of a %s is %f m', (text, units, kind, metres) => {
    const parsed = parseLength(text, units, kind);
    expect(parsed.ok ? parsed.metres : parsed.sentence).toBeCloseTo(Number(metres), 5);
  });

  it('says that it was bare, so that another reading can be offered', () => {
    expect(parseLength('16', 'imperial', 'part')).toMatchObject({ bare: 16 });
    expect(parseLength('16"', 'imperial', 'part')).not.toHaveProperty('bare');
    expect(parseLength('1/2', 'imperial', 'part')).not.toHaveProperty('bare');
  });
});

describe('feet and inches without their marks', () => {
  it.each([
    ['13-9', 4.191],
    ['13 9', 4.191],
    ['13 - 9', 4.191],
    ['13 9 1/2', 4.2037],
    ['13-9-1/2', 4.2037],
    ['13 9.5', 4.2037],
    ['0-7', 0.1778],
    ['13 11 15/16', 4.26561],
  ])('%j is read in any field', (text, metres) => {
    expect(metresOf(text, 'imperial')).toBeCloseTo(metres, 5);
    expect(parseLength(text, 'imperial', 'part')).toEqual(parseLength(text, 'imperial'));
  });

  it('are refused where they are doubtful or where metres are shown', () => {
    for (const text of ['13 12', '13-15', '13 9 1/0']) {
      expect(parseLength(text, 'imperial').ok).toBe(false);
    }
    expect(parseLength('13-9', 'metric').ok).toBe(false);
    expect(parseLength('13 9', 'metric').ok).toBe(false);
  });
});

describe('a comma before three digits', () => {
  it.each(['1,234 mm', '1,234', '12,345 mm', '1,234"', "1,234' 6"])('%j is asked', (text) => {
    for (const units of ['metric', 'imperial'] as const) {
      const parsed = parseLength(text, units);
      expect(parsed.ok ? '' : parsed.sentence).toMatch(
        /^"[\d,]+" could be \d+ or [\d.]+\. Type it without the comma, or with a point\.$/,
      );
    }
  });

  it('with more commas is asked to be typed without them', () => {
    const parsed = parseLength('1,234,567 mm', 'metric');
    expect(parsed.ok ? '' : parsed.sentence).toBe(
      '"1,234,567" has commas between its digits. Type it without them: 1234567.',
    );
  });

  it('is a decimal point where no thousand could be meant', () => {
    expect(metresOf('0,125 m')).toBe(0.125);
    expect(metresOf('4,03 m')).toBe(4.03);
    expect(metresOf('1234,567 mm')).toBe(1.23457);
  });
});

describe('what is no length', () => {
  it.each([
    ['-4', 'metric', '"-4" is not a length. Type it like 4.03 m or 403 cm.'],
    ['', 'metric', 'Nothing was typed. Type it like 4.03 m or 403 cm.'],
    ['   ', 'imperial', `Nothing was typed. Type it like 13' 2 1/2" or 158 1/2 in.`],
    ['four', 'imperial', `"four" is not a length. Type it like 13' 2 1/2" or 158 1/2 in.`],
  ] as const)('%j in %s units is refused with a sentence that shows how', (text, units, says) => {
    expect(metresOf(text, units)).toBe(says);
  });

  it.each(['+4', '1e3', '4.', '4 m 3 cm', '1/0"', `13' 2' 1"`, 'Infinity', 'NaN', '4 yards', "'"])(
    'refuses %j',
    (text) => {
      expect(parseLength(text, 'metric').ok).toBe(false);
      expect(parseLength(text, 'imperial').ok).toBe(false);
    },
  );

  it('wants inches marked where metres are shown', () => {
    expect(parseLength('1/2', 'metric').ok).toBe(false);
    expect(parseLength('158 1/2', 'metric').ok).toBe(false);
    expect(parseLength('158 1/2 in', 'metric').ok).toBe(true);
  });

  it('asks for a mark where a figure with a fraction could be feet or inches', () => {
    for (const text of ['13 1/2', '13½', '1/2']) {
      const parsed = parseLength(text, 'imperial');
      expect(parsed.ok ? '' : parsed.sentence).toMatch(/could be feet or inches/);
    }
    expect(metresOf('13 1/2"', 'imperial')).toBe(0.3429);
  });

  it('shows only the beginning of a very long text', () => {
    const parsed = parseLength('x'.repeat(10_000), 'metric');
    expect(parsed.ok ? '' : parsed.sentence).toHaveLength(80);
  });
});

describe('writing a length', () => {
  it.each([
    [4.03, '4.03 m'],
    [4, '4.00 m'],
    [4.035, '4.035 m'],
    [0, '0.00 m'],
    [-0.0004, '0.00 m'],
    [-1.5, '-1.50 m'],
  ])('%f in metres is %j', (metres, text) => {
    expect(formatLength(metres, 'metric')).toBe(text);
  });

  it.each([
    [4.0259, `13' 2 1/2"`],
    [4.02908, `13' 2 5/8"`],
    [3.9624, `13' 0"`],
    [0.3175, `1' 1/2"`],
    [0.0127, `1/2"`],
    [0, `0"`],
    [-0.3048, `-1' 0"`],
    [0.3047, `1' 0"`],
    [2.4, `7' 10 1/2"`],
  ])('%f in feet and inches is %j', (metres, text) => {
    expect(formatLength(metres, 'imperial')).toBe(text);
  });

  it('rounds to the part of an inch that is asked for', () => {
    expect(formatLength(1, 'imperial', 4)).toBe(`3' 3 1/4"`);
    expect(formatLength(1, 'imperial', 16)).toBe(`3' 3 3/8"`);
  });

  it('read back is the same length within half a step', () => {
    const length = fc.integer({ min: 0, max: 6_000_000 }).map((n) => n / 100_000);
    fc.assert(
      fc.property(length, fc.constantFrom<LengthUnits>('metric', 'imperial'), (metres, units) => {
        const halfStepM = units === 'metric' ? 0.0005 : 0.00079375;
        const back = metresOf(formatLength(metres, units), units);
        // What is read is kept to a hundredth of a millimetre.
        expect(Math.abs(Number(back) - metres)).toBeLessThanOrEqual(halfStepM + 0.000005 + 1e-9);
      }),
    );
  });
});

describe('the carpenter’s step', () => {
  it('is 5 mm or a quarter inch, finely 1 mm or a sixteenth', () => {
    expect(carpenterStepM('metric')).toBe(0.005);
    expect(carpenterStepM('metric', true)).toBe(0.001);
    expect(carpenterStepM('imperial')).toBeCloseTo(0.00635, 10);
    expect(carpenterStepM('imperial', true)).toBeCloseTo(0.0015875, 10);
  });

  it('snaps to the nearest one without binary dust', () => {
    expect(snapLength(4.0319, 0.005)).toBe(4.03);
    expect(snapLength(0.30000000000000004, 0.001)).toBe(0.3);
    expect(snapLength(4.02, carpenterStepM('imperial'))).toBe(4.01955);
  });

  it('gives zero without a sign, which a file could not keep', () => {
    expect(snapLength(-0.001, 0.005)).toBe(0);
  });
});
