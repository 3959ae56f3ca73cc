/**
 * Property tests draw the same examples in every run, so that a check says the same of the same code.
 * To look for new ones, give another seed, or `random`: `TEST_SEED=random npx vitest run --project core`.
 * A room that fails goes into the test's `examples`.
 */

import fc from 'fast-check';

const asked = process.env.TEST_SEED;
const seed = asked === 'random' ? undefined : Number(asked ?? 20260101);
if (seed !== undefined && !Number.isInteger(seed))
  throw new Error(`TEST_SEED is "${asked}": give a whole number, or random.`);

fc.configureGlobal(seed === undefined ? {} : { seed });
