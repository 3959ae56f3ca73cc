import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { analyzeWhole } from '../../../../core/analysis/whole';
import { summary } from '../../../../core/report/summary';
import { tables } from '../../../../core/report/tables';
import { EXAMPLES, example, given, type Example } from '../../support/rooms';

/** Lines of the mode table that are kept: its header and the lowest modes, of the shell and as built. */
const MODE_LINES = 21;
const BUILT_LINES = 12;

/** What a person sees of an example in a terminal, with the head of its mode table. */
function told(name: Example): string {
  const project = example(name);
  const analysis = analyzeWhole(project);
  const modes = given(tables(project, analysis).find((table) => table.name === 'modes.csv'));
  const lines = modes.text.split('\r\n');
  const built = lines.filter((line) => line.includes('as built')).slice(0, BUILT_LINES);
  const head = [...lines.slice(0, MODE_LINES), ...built].join('\n');
  return `${summary(project, analysis)}\n${head}\n`;
}

describe('what is told about an example room', () => {
  it.each(EXAMPLES)(
    '%s is what was read and agreed to (UPDATE_GOLDEN=1 writes it anew)',
    (name) => {
      const file = new URL(`../../../golden/${name}.txt`, import.meta.url);
      const text = told(name);
      if (process.env['UPDATE_GOLDEN'] === '1') writeFileSync(file, text);
      expect(text).toBe(readFileSync(file, 'utf8'));
    },
  );
});
