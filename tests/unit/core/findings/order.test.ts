import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import { SUBJECTS, type Finding } from '../../../../core/findings/finding';
import { orderFor, sortFindings, weightOf } from '../../../../core/findings/order';
import { arbitraryProject } from '../../support/arbitrary-project';
import { example, EXAMPLES, roomOf } from '../../support/rooms';

const finding = (fields: Partial<Finding>): Finding => ({
  ...{ id: 'a', severity: 'warning', subject: 'shell', where: '', message: '', figureName: 'x' },
  ...{ value: 1, limit: 1, unit: 'm', source: '', remedies: [], ...fields },
});

const ids = (findings: readonly Finding[]): readonly string[] => findings.map(({ id }) => id);

describe('the order of findings', () => {
  it('is by severity before all else', () => {
    const note = finding({ id: 'note', severity: 'note', value: 100 });
    const fault = finding({ id: 'fault', severity: 'fault', subject: 'decay' });
    const warning = finding({ id: 'warning', value: 9 });
    expect(ids(sortFindings([note, warning, fault]))).toEqual(['fault', 'warning', 'note']);
  });

  it('puts what can hurt someone first among its severity', () => {
    const far = finding({ id: 'far', value: 50 });
    const low = finding({ id: 'low', value: 0.9, caution: 'Mind your head.' });
    expect(ids(sortFindings([far, low]))).toEqual(['low', 'far']);
  });

  it('puts a decay of four times its corridor before a rule of thumb on axial modes', () => {
    const axial = finding({ id: 'axial', value: 57, limit: 20, unit: 'Hz' });
    const decay = finding({ id: 'decay', subject: 'decay', value: 1.09, limit: 0.27, unit: 's' });
    expect(ids(sortFindings([axial, decay]))).toEqual(['decay', 'axial']);
    const hard = analyze(roomOf({ size: { width: 3, length: 3, height: 3 } })).findings;
    const at = (start: string): number => hard.findIndex(({ id }) => id.startsWith(start));
    expect(at('axial-gap')).toBeGreaterThan(at('decay-long'));
    expect(at('decay-long')).toBeGreaterThanOrEqual(0);
  });

  it('is that of building a room where the weight is the same', () => {
    const same = [...SUBJECTS].reverse().map((subject) => finding({ id: subject, subject }));
    expect(ids(sortFindings(same))).toEqual(SUBJECTS);
  });

  it('weighs by the least change that is heard or seen', () => {
    // ISO 3382-1: 5 % of a decay time, 1 dB of level.
    expect(weightOf({ value: 0.44, limit: 0.4, unit: 's' })).toBeCloseTo(2, 9);
    expect(weightOf({ value: -4, limit: -10, unit: 'dB' })).toBeCloseTo(6, 9);
    expect(weightOf({ value: 0, limit: 5, unit: 'Hz' })).toBeCloseTo(1, 9);
    expect(weightOf({ value: null, limit: null, unit: '' })).toBe(1);
  });
});

describe('findings for an open subject', () => {
  it('are its own, then the others, none lost and each in its order', () => {
    for (const name of EXAMPLES) {
      const { findings } = analyze(example(name));
      const { own, others } = orderFor(findings, ['speakers', 'seats']);
      expect(own.every(({ subject }) => ['speakers', 'seats'].includes(subject))).toBe(true);
      expect(others.some(({ subject }) => ['speakers', 'seats'].includes(subject))).toBe(false);
      expect(sortFindings([...own, ...others])).toEqual(findings);
      expect(own).toEqual(findings.filter((one) => own.includes(one)));
      expect(orderFor(findings, 'decay').own).toEqual(orderFor(findings, ['decay']).own);
    }
  });
});

describe('every finding', () => {
  it('names its figure where it has one', () => {
    fc.assert(
      fc.property(arbitraryProject, (project) => {
        for (const { value, figureName } of analyze(project).findings) {
          if (value !== null) expect(figureName).not.toBe('');
        }
      }),
      { numRuns: 100 },
    );
  });
});
