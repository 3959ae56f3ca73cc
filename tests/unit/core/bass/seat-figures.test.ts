import { describe, expect, it } from 'vitest';
import { seatFigures, smoothed } from '../../../../core/bass/seat-figures';
import { bandGrid } from '../../../../core/bass/transfer';
import { given } from '../../support/rooms';

const HZ = bandGrid([20, 120], 24);
const flat = (level: number): Float64Array => HZ.map(() => level);

describe('the figures that bass at the seats is judged by', () => {
  it('are those of the definition: root of the mean over frequency of the variance, divisor N - 1', () => {
    // Two seats 4 dB apart: 2 from their average each, (4 + 4)/1 = 8 dB2 at every frequency.
    const found = given(seatFigures(HZ, [flat(80), flat(84)], null));
    expect(found.meanSpatialVarianceDb2).toBeCloseTo(8, 9);
    expect(found.spreadDb).toBeCloseTo(Math.sqrt(8), 9);
    expect(found).toMatchObject({ bandHz: [20, 120], seats: 2, peak: null, dip: null });
  });

  it('have neither peak nor dip in what is level', () => {
    const { peak, dip } = given(seatFigures(HZ, [flat(80)], flat(80)));
    expect(peak?.levelDb).toBeCloseTo(0, 9);
    expect(dip?.levelDb).toBeCloseTo(0, 9);
  });

  it('find the peak and the dip where they are, over the mean of the band', () => {
    const levels = HZ.map((hz) => (hz > 35 && hz < 50 ? 12 : hz > 70 && hz < 100 ? -12 : 0));
    const mean = smoothed(HZ, levels).reduce((sum, level) => sum + level, 0) / HZ.length;
    const { peak, dip } = given(seatFigures(HZ, [levels], levels));
    expect(peak?.frequencyHz).toBeGreaterThan(35);
    expect(peak?.frequencyHz).toBeLessThan(50);
    expect(peak?.levelDb).toBeCloseTo(12 - mean, 9);
    expect(dip?.frequencyHz).toBeGreaterThan(70);
    expect(dip?.frequencyHz).toBeLessThan(100);
    expect(dip?.levelDb).toBeCloseTo(-12 - mean, 9);
  });

  it('let a narrow notch count for what it takes of a third of an octave', () => {
    const notch = flat(0);
    notch[30] = -100;
    // One of the seven lines within a sixth of an octave is gone: 10 lg(6/7).
    expect(smoothed(HZ, notch)[30]).toBeCloseTo(10 * Math.log10(6 / 7), 9);
  });
});
