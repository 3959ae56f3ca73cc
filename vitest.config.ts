import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'core',
          include: ['tests/{unit,published,locked,electron}/**/*.test.{ts,tsx}'],
          environment: 'node',
          // Styles of the kit have the names of their files, so that a golden page can link to them.
          css: { modules: { classNameStrategy: 'non-scoped' } },
          setupFiles: ['tests/support/seed.ts'],
          testTimeout: 20_000,
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          environment: 'node',
          setupFiles: ['tests/support/seed.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
