import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { beforeAll, describe, expect, it } from 'vitest';
import { SUBJECTS as TOLD_OF } from '../../../core/findings/finding';
import type { Subject } from '../../../renderer/subjects/subject';
import { stubPage } from './support/window-stubs';

const RENDERER = path.resolve(import.meta.dirname, '../../../renderer');

/** Source files under `folder`, as paths from `renderer/`. */
const sources = (folder = ''): readonly string[] =>
  readdirSync(path.join(RENDERER, folder), { withFileTypes: true }).flatMap((entry) => {
    const file = path.posix.join(folder, entry.name);
    if (entry.isDirectory()) return sources(file);
    return /\.tsx?$/.test(entry.name) ? [file] : [];
  });

/**
 * Where a source names one of `ids` as a value: compares with it, switches by it, keys a table with it,
 * hands it on. Types are no switchboard. The shell is also what plain modes are of: its word counts where
 * a subject is spoken of.
 */
function namings(source: string, ids: readonly string[]): readonly string[] {
  const file = ts.createSourceFile('source.tsx', source, ts.ScriptTarget.Latest, true);
  const said: string[] = [];
  const isOther = (word: string, said: string): boolean =>
    word === 'shell' && !/subject/i.test(said);
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node)) return;
    const { parent } = node;
    const isKey = ts.isPropertyAssignment(parent ?? node) && parent.getChildAt(0, file) === node;
    const word = ts.isStringLiteralLike(node) || (ts.isIdentifier(node) && isKey) ? node.text : '';
    // One key alone is a field; a table by subject has at least two of them.
    const isTable =
      isKey &&
      ts.isObjectLiteralExpression(parent.parent) &&
      parent.parent.properties.filter((p) => p.name && ids.includes(p.name.getText(file))).length >
        1;
    const here = isTable ? 'subjects' : parent.getText(file);
    if (ids.includes(word) && (!isKey || isTable) && !isOther(word, here))
      said.push(parent.getText(file));
    ts.forEachChild(node, visit);
  };
  ts.forEachChild(file, visit);
  return said;
}

let subjects: readonly Subject[];
beforeAll(async () => {
  stubPage();
  subjects = (await import('../../../renderer/subjects/registry')).SUBJECTS;
});

describe('a subject of the window', () => {
  it('is one folder and one line of the registry', () => {
    const folders = readdirSync(path.join(RENDERER, 'subjects'), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => name);
    expect([...folders].sort()).toEqual(subjects.map(({ id }) => id).sort());
    expect(new Set(subjects.map(({ title }) => title)).size).toBe(subjects.length);
  });

  it('is named nowhere else in the window', () => {
    const ids = subjects.map(({ id }) => id);
    for (const file of sources()) {
      const [top, folder] = file.split('/');
      const own = top === 'subjects' && folder !== undefined ? [folder] : [];
      const others = ids.filter((id) => !own.includes(id));
      const text = readFileSync(path.join(RENDERER, file), 'utf8');
      expect({ file, names: namings(text, others) }).toEqual({ file, names: [] });
    }
  });

  it('shows the findings of one or more subjects of core, each of which is shown once', () => {
    expect(subjects.flatMap(({ tells }) => tells).sort()).toEqual([...TOLD_OF].sort());
  });
});

describe('the search for names of subjects', () => {
  it.each([
    ["const open = subject === 'bass';", 1],
    ["switch (subject) { case 'decay': go(); }", 1],
    ["const TITLES = { shell: 'Shell', bass: 'Bass' };", 2],
    ["setSubject('bass');", 1],
    ["const of = <PatchList of={'decay'} />;", 1],
    ["type Open = 'shell' | 'bass';", 0],
    ["const isFirst = subject === 'shell';", 1],
    ["const built = mode.of === 'shell';", 0],
    ["choose({ kind: 'mode', of: 'shell' });", 0],
    ['const inputs = { decay: analysis.decay, air };', 0],
  ])('finds in %s', (source, count) => {
    expect(namings(source, ['shell', 'bass', 'decay'])).toHaveLength(count);
  });
});
