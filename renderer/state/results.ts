/** The window's results: what is quick is computed here and now, what is slow comes in from the worker. */

import { Evaluator } from '../../core/analysis/evaluator';

export const results = new Evaluator();
