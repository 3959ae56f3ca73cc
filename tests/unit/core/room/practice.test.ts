import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { practice, practiceTable } from '../../../../core/room/practice/practice';

const TABLE = path.join('core', 'room', 'practice');
const CLAIM = /common practice|our own (convention|choice)/i;

const sources = ['core', 'renderer']
  .flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((file) =>
      path.join(folder, file),
    ),
  )
  .filter((file) => /\.tsx?$/.test(file) && !file.startsWith(TABLE));

/** Figures in what a function computes with are no constants. */
const hasFigure = (node: ts.Node): boolean =>
  !ts.isFunctionLike(node) &&
  (ts.isNumericLiteral(node) || (ts.forEachChild(node, hasFigure) ?? false));

/** Names of the constants and fields with a figure whose comment claims it as practice. */
function claimedFigures(text: string, file = 'any.tsx'): readonly string[] {
  if (!CLAIM.test(text)) return [];
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const claimed: string[] = [];
  const visit = (node: ts.Node): void => {
    const ranges = [
      ...(ts.getLeadingCommentRanges(text, node.getFullStart()) ?? []),
      ...(ts.getTrailingCommentRanges(text, node.getEnd()) ?? []),
    ];
    const claims = ranges.some(({ pos, end }) => CLAIM.test(text.slice(pos, end)));
    if (claims && (ts.isVariableStatement(node) || ts.isPropertyAssignment(node))) {
      if (hasFigure(node)) claimed.push(node.getText().split('\n')[0] ?? '');
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return claimed;
}

describe('the table of figures that are practice', () => {
  it('has a unit, a source and a sentence for each', () => {
    for (const [id, { value, unit, source, what }] of practiceTable()) {
      expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(value, id).toBeDefined();
      expect(unit, id).toMatch(/^(m|mm|cm, in|in|deg|dB|Hz|ms|s|share|number)$/);
      expect(['common practice', 'our own convention'], id).toContain(source);
      expect(what, id).toMatch(/^[A-Z].{10,}\.$/s);
    }
  });

  it('keeps every figure that is in one of its parts', () => {
    const declared = readdirSync(TABLE).flatMap((file) => [
      ...readFileSync(path.join(TABLE, file), 'utf8').matchAll(/^ {2}'?([a-z-]+)'?: \{$/gm),
    ]);
    const ids = declared.map(([, id]) => id);
    expect(ids.length).toBeGreaterThan(70);
    expect([...ids].sort()).toEqual(
      practiceTable()
        .map(([id]) => id)
        .sort(),
    );
  });

  it('is the only place for them', () => {
    const elsewhere = sources.flatMap((file) =>
      claimedFigures(readFileSync(file, 'utf8'), file).map((name) => `${file}: ${name}`),
    );
    expect(elsewhere).toEqual([]);
  });

  it('would notice one that is kept beside it', () => {
    expect(claimedFigures('/** Width, m (common practice). */\nconst WALK_M = 0.6;')).toHaveLength(
      1,
    );
    expect(claimedFigures('const A = 5; // our own convention')).toHaveLength(1);
    expect(claimedFigures('const A = {\n  /** Our own choice. */\n  b: [1, 2],\n};')).toHaveLength(
      1,
    );
    expect(claimedFigures("/** Common practice. */\nconst A = practice('walk-width');")).toEqual(
      [],
    );
  });

  it('has each figure used', () => {
    const code = sources.map((file) => readFileSync(file, 'utf8')).join('\n');
    const idle = practiceTable().filter(([id]) => !code.includes(`practice('${id}')`));
    expect(idle.map(([id]) => id)).toEqual([]);
  });

  it('is the list that was read and agreed to (UPDATE_GOLDEN=1 writes it anew)', () => {
    const rows = practiceTable().map(
      ([id, { value, unit, source, after, what }]) =>
        `${id}: ${JSON.stringify(value)} ${unit} (${source}${after ? `, after ${after}` : ''}). ${what}`,
    );
    const text = `${rows.join('\n')}\n`;
    const golden = path.join('tests', 'golden', 'practice.txt');
    if (process.env['UPDATE_GOLDEN'] === '1') writeFileSync(golden, text);
    expect(text).toBe(readFileSync(golden, 'utf8'));
  });

  it('gives figures as they stand in it', () => {
    expect(practice('stud-pitch')).toEqual({ metric: 0.4, imperial: 0.4064 });
    expect(practice('usual-cabinet')).toEqual([0.2, 0.35, 0.2]);
  });
});
