import path from 'node:path';
import { ESLint } from 'eslint';
import { describe, expect, it } from 'vitest';

const root = path.resolve(import.meta.dirname, '../../..');
const RULE = 'import-x/no-restricted-paths';

const linter = new ESLint({
  cwd: root,
  ruleFilter: ({ ruleId }) => ruleId === RULE,
  // The rule asks for paths alone: without the types of the whole house it answers at once.
  overrideConfig: [{ languageOptions: { parserOptions: { projectService: false } } }],
});

/** What the rule of the floors says of a file of the house, if it had this one line. */
async function saysOf(file: string, line: string): Promise<readonly string[]> {
  const [result] = await linter.lintText(`${line}\n`, { filePath: path.join(root, file) });
  return (result?.messages ?? [])
    .filter(({ ruleId }) => ruleId === RULE)
    .map(({ message }) => message);
}

describe('the rule of the floors', () => {
  it.each([
    ['renderer/host/host.ts', '../workers/messages', 'a folder of the same floor'],
    ['renderer/state/session.ts', '../kit/controls/Choice', 'a folder above'],
    ['renderer/kit/controls/Choice.tsx', '../../subjects/registry', 'a folder far above'],
    ['renderer/drawing/Drawing.tsx', '../subjects/bass/bass', 'a subject'],
    ['renderer/subjects/bass/bass.ts', '../decay/decay', 'another subject'],
    ['renderer/subjects/bass/bass.ts', '../registry', 'the registry of subjects'],
    ['renderer/findings/FindingsPanel.tsx', '../app/App', 'the window itself'],
    ['core/room/edits.ts', '../findings/finding', 'an upper floor of core'],
    ['core/room/edits.ts', '../../renderer/state/session', 'the window from core'],
  ])(
    'refuses %s to import %s: %s',
    async (file, from) => {
      expect(await saysOf(file, `import '${from}';`)).toHaveLength(1);
    },
    60_000,
  );

  it.each([
    ['renderer/subjects/bass/bass.ts', '../../kit/controls/Choice'],
    ['renderer/subjects/bass/bass.ts', '../subject'],
    ['renderer/subjects/registry.ts', './bass/bass'],
    ['renderer/app/App.tsx', '../subjects/registry'],
    ['core/findings/finding.ts', '../room/edits'],
  ])(
    'lets %s import %s',
    async (file, from) => {
      expect(await saysOf(file, `import '${from}';`)).toEqual([]);
    },
    60_000,
  );
});
