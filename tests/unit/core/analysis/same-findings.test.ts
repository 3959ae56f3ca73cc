import { describe, expect, it } from 'vitest';
import { allFindings, settledRoom } from '../../../../core/analysis/all-findings';
import { Evaluator, resultKey } from '../../../../core/analysis/evaluator';
import { analyzeWhole, wholeEvaluator } from '../../../../core/analysis/slow-work';
import {
  RESULTS,
  type AnswerOf,
  type RequestOf,
  type SlowName,
} from '../../../../core/analysis/results';
import type { Finding } from '../../../../core/findings/finding';
import type { LengthUnits } from '../../../../core/quantity/length';
import type { Project } from '../../../../core/room/project';
import { EXAMPLES, example, roomOf } from '../../support/rooms';

/** What goes to a worker and comes back from it is copied. */
const copied = <T>(value: T): T => structuredClone(value);

/** The findings as the window comes by them: slow results one by one from another evaluator. */
function inTheWindow(project: Project, units: LengthUnits): readonly Finding[] {
  const [window, worker] = [new Evaluator(), wholeEvaluator()];
  const ask = <N extends SlowName>(name: N, request: RequestOf<N>): void => {
    const answer = worker.finish(name, copied(project), copied(request));
    const { sent } = RESULTS[name] as { readonly sent?: (whole: AnswerOf<N>) => AnswerOf<N> };
    window.keep(name, resultKey(name, project, request), copied(sent ? sent(answer) : answer));
  };
  const modesToHz = 200;
  // While the modes as built are on their way the response is that of the plain shell.
  ask('coarseModes', {});
  ask('seatResponses', { modesToHz: null });
  if (project.room.solids.length > 0) ask('roomModes', { limitHz: modesToHz });
  ask('seatResponses', settledRoom(project, modesToHz));
  return allFindings(window, project, { units, modesToHz, search: null });
}

/** `count` boxes in a room with seats, a loudspeaker and a subwoofer. */
function withFittings(count: number): Project {
  const solids = Array.from({ length: count }, (_, n) => {
    const [x, y] = [0.3 + 0.5 * (n % 10), 0.4 + 0.9 * Math.floor(n / 10)];
    return {
      id: `box-${n}`,
      kind: 'other',
      min: [x, y, 0],
      max: [x + 0.2 + 0.003 * (n % 7), y + 0.3 + 0.004 * (n % 5), 0.5 + 0.01 * (n % 9)],
    };
  });
  return roomOf(
    { size: { width: 5.6, length: 6.4, height: 2.5 }, solids },
    {
      seating: { rows: [{ id: 'row', seats: 3, y: 4.6 }] },
      speakers: {
        layout: '0+5+0',
        placed: [{ channel: 'M+030', position: [1.2, 0.2, 1.2] }],
        subwoofers: [{ id: 'sub', position: [5.3, 0.3, 0.2] }],
      },
    },
  );
}

/** All that is told of a finding, its remedies word for word. */
const told = (findings: readonly Finding[]): unknown =>
  findings.map((finding) => ({ ...finding, remedies: [...finding.remedies] }));

describe('the window and the batch command tell the same, word for word', () => {
  const cases: readonly (readonly [string, Project, LengthUnits])[] = [
    ...EXAMPLES.map((name) => [name, example(name), 'metric'] as const),
    ['under-the-ducts in feet', example('under-the-ducts'), 'imperial'],
    ...[1, 10, 60].map((count) => [`${count} fittings`, withFittings(count), 'metric'] as const),
  ];

  it.each(cases)(
    '%s',
    (_name, project, units) => {
      const batch = analyzeWhole(project, units).findings;
      expect(told(inTheWindow(project, units))).toEqual(told(batch));
      // Among them what only slow results know.
      const ids = batch.map(({ id }) => id);
      expect(ids.some((id) => id.startsWith('bass-'))).toBe(true);
      expect(ids.includes('modes-simplified')).toBe(project.room.solids.length === 60);
    },
    120_000,
  );
});
