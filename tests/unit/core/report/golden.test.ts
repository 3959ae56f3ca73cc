import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { analyzeWhole } from '../../../../core/analysis/slow-work';
import type { LengthUnits } from '../../../../core/quantity/length';
import { summary } from '../../../../core/report/summary';
import { tables } from '../../../../core/report/tables';
import { EXAMPLES, example, given, type Example } from '../../support/rooms';

/** Lines of the mode table that are kept: its header and the lowest modes, of the shell and as built. */
const MODE_LINES = 21;
const BUILT_LINES = 12;

/** What a person sees of an example in a terminal, with the head of its mode table. */
function told(name: Example, units: LengthUnits): string {
  const project = example(name);
  const analysis = analyzeWhole(project, units);
  const modes = given(tables(project, analysis).find((table) => table.name === 'modes.csv'));
  const lines = modes.text.split('\r\n');
  const built = lines.filter((line) => line.includes('as built')).slice(0, BUILT_LINES);
  const head = [...lines.slice(0, MODE_LINES), ...built].join('\n');
  return `${summary(project, analysis, units)}\n${head}\n`;
}

describe('what is told about an example room', () => {
  const both = EXAMPLES.flatMap((name) => [
    { name, units: 'metric' as const, file: `${name}.txt` },
    { name, units: 'imperial' as const, file: `${name}-feet.txt` },
  ]);
  it.each(both)(
    '$file is what was read and agreed to (UPDATE_GOLDEN=1 writes it anew)',
    ({ name, units, file }) => {
      const golden = new URL(`../../../golden/${file}`, import.meta.url);
      const text = told(name, units);
      if (process.env['UPDATE_GOLDEN'] === '1') writeFileSync(golden, text);
      expect(text).toBe(readFileSync(golden, 'utf8'));
    },
  );
});
