import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../core/findings/finding';
import { changesText } from '../../../renderer/findings/changes-text';

const finding = (id: string, severity: Finding['severity'] = 'note'): Finding =>
  ({ id, severity, where: `place of ${id}` }) as Finding;

describe('what is said of changed findings', () => {
  it('is nothing where the same matters are found, with other figures', () => {
    expect(changesText([finding('a')], [{ ...finding('a'), value: 3 }])).toBe('');
  });

  it('counts what is gone and names what is new', () => {
    const before = [finding('a'), finding('b')];
    const after = [finding('b'), finding('c', 'fault')];
    expect(changesText(before, after)).toBe(
      '1 finding is gone. New: fault, place of c. 2 findings in all.',
    );
  });

  it('names three at most', () => {
    const after = ['a', 'b', 'c', 'd', 'e'].map((id) => finding(id));
    expect(changesText([], after)).toBe(
      'New: note, place of a; note, place of b; note, place of c and 2 more. 5 findings in all.',
    );
  });
});
