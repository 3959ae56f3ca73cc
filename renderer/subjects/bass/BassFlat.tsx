/**
 * On a plan or section, turned to the eye: a square where a subwoofer may stand, a cross where none may,
 * while places are looked for.
 */

import { useMemo, type ReactElement } from 'react';
import type { Mark, PaperPoint } from '../../../core/drawing/marks';
import { onPaper } from '../../../core/drawing/on-paper';
import type { FlatView } from '../../../core/drawing/views';
import { FlatMarks } from '../../drawing/flat/FlatMarks';
import type { FlatProps } from '../../drawing/layer';
import { useBassEvidence } from './shown-evidence';
import { CANDIDATE_M, foot, useCandidates, type Candidates } from './use-candidates';

export function BassFlat(props: FlatProps): ReactElement | null {
  const [shown] = useBassEvidence();
  return shown === 'places' ? <Shown {...props} /> : null;
}

function Shown({ view }: FlatProps): ReactElement {
  const candidates = useCandidates();
  const { places, boxM } = candidates;
  const marks = useMemo(() => candidateMarks(view, { places, boxM }), [view, places, boxM]);
  return <FlatMarks marks={marks} />;
}

function candidateMarks(view: FlatView, { places, boxM }: Candidates): readonly Mark[] {
  const around = ([x, y]: PaperPoint, i: number, j: number): PaperPoint => [
    x + i * CANDIDATE_M,
    y + j * CANDIDATE_M,
  ];
  const square = (at: PaperPoint): readonly PaperPoint[] => [
    around(at, -1, -1),
    around(at, 1, -1),
    around(at, 1, 1),
    around(at, -1, 1),
  ];
  const cross = (at: PaperPoint): readonly (readonly PaperPoint[])[] => [
    [around(at, -1, -1), around(at, 1, 1)],
    [around(at, -1, 1), around(at, 1, -1)],
  ];
  const squares = places.allowed.map((at) => square(onPaper(view, foot(at, boxM))));
  const crosses = places.forbidden.flatMap(({ position }) =>
    cross(onPaper(view, foot(position, boxM))),
  );
  const layer = 'evidence';
  return [
    { kind: 'lines', layer, paths: squares, closed: true, tone: 'ink', weight: 'light' },
    { kind: 'lines', layer, paths: crosses, tone: 'accent', weight: 'light' },
  ];
}
