import { readdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { createNodeResolver, importX } from 'eslint-plugin-import-x';
import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

const root = path.dirname(fileURLToPath(import.meta.url));

/** The floors of core/, lowest first. A folder may import only folders of lower floors. */
const FLOORS = [
  ['quantity', 'air'],
  ['room'],
  ['scene'],
  ['modes', 'room-modes', 'decay', 'speakers', 'absorbers', 'seating', 'picture'],
  ['response', 'reflections', 'placing'],
  ['proportions', 'bass'],
  ['findings'],
  ['analysis'],
  ['drawing'],
  ['report'],
];

/** The floors of renderer/, lowest first. */
const RENDERER_FLOORS = [
  ['host', 'workers'],
  ['state'],
  ['kit'],
  ['glossary'],
  ['pressure'],
  ['drawing'],
  ['finishes'],
  ['subjects'],
  ['findings'],
  ['app'],
];

const zonesOf = (top, floors) =>
  floors.flatMap((folders, floor) =>
    folders.map((folder) => ({
      target: path.join(root, top, folder),
      from: path.join(root, top),
      except: [
        `./${folder}`,
        ...floors.slice(0, floor).flatMap((below) => below.map((f) => `./${f}`)),
      ],
      message: `${top}/${folder} may import only the floors below it (see DEVELOPERS.md).`,
    })),
  );

/** What two subjects share goes below them; only the registry knows them all. */
const subjectZones = readdirSync(path.join(root, 'renderer/subjects'), { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => ({
    target: path.join(root, 'renderer/subjects', name),
    from: path.join(root, 'renderer/subjects'),
    except: [`./${name}`, './subject.ts'],
    message: 'A subject imports no other subject, and not the registry (see DEVELOPERS.md).',
  }));

const floorZones = [
  ...zonesOf('core', FLOORS),
  ...zonesOf('renderer', RENDERER_FLOORS),
  ...subjectZones,
];
/**
 * Dense loops, which read without a check (`values[i]!`): what an index out of range reads is undefined
 * there and NaN in the sum, where a stand-in of 0 would hide it. Their entries check lengths
 * (`core/quantity/shape.ts`).
 */
const KERNELS = [
  'core/room-modes/*.ts',
  ...[
    'room-modes-tail',
    'shell-tail',
    'path',
    'pressure-plane',
    'field',
    'modes-behind',
    'contour',
  ].map((name) => `core/response/${name}.ts`),
  ...['transfer', 'cost', 'frequency-order', 'every-set', 'descent', 'smooth-tail'].map(
    (name) => `core/bass/${name}.ts`,
  ),
];

const wallZones = [
  { target: './core', from: './renderer', message: 'core imports neither renderer nor electron.' },
  { target: './core', from: './electron', message: 'core imports neither renderer nor electron.' },
  {
    target: './renderer',
    from: './electron',
    message: 'renderer meets electron only at the host.',
  },
  {
    target: './electron',
    from: './renderer',
    except: ['./host/host.ts', './host/autosave-record.ts'],
    message: 'electron knows the renderer only by its host interface and its records of kept work.',
  },
].map((zone) => ({
  ...zone,
  target: path.join(root, zone.target),
  from: path.join(root, zone.from),
}));

export default tseslint.config(
  { ignores: ['out/**', 'node_modules/**', 'coverage/**', '.cache/**'] },
  ...tseslint.configs.recommendedTypeChecked,
  {
    languageOptions: {
      parserOptions: {
        projectService: { allowDefaultProject: ['eslint.config.js'] },
        tsconfigRootDir: root,
      },
    },
    plugins: { 'import-x': importX, 'react-hooks': reactHooks },
    settings: {
      'import-x/resolver-next': [
        createNodeResolver({ extensions: ['.ts', '.tsx', '.d.ts', '.js', '.json'] }),
      ],
      'import-x/parsers': { '@typescript-eslint/parser': ['.ts', '.tsx'] },
    },
    rules: {
      'import-x/no-restricted-paths': ['error', { zones: [...wallZones, ...floorZones] }],
      'import-x/no-cycle': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      'no-console': 'error',
      eqeqeq: 'error',
      'react-hooks/rules-of-hooks': 'error',
      'react-hooks/exhaustive-deps': 'error',
    },
  },
  {
    files: ['core/**/*.ts'],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              regex: '^(?!\\.|zod$|ml-matrix$)',
              message: 'core depends on nothing but ml-matrix and the schema library.',
            },
          ],
        },
      ],
    },
  },
  { files: KERNELS, rules: { '@typescript-eslint/no-non-null-assertion': 'off' } },
  {
    files: ['tests/**', 'electron/start/**', 'electron/batch/**'],
    rules: { 'no-console': 'off' },
  },
  { files: ['**/*.js'], ...tseslint.configs.disableTypeChecked },
);
