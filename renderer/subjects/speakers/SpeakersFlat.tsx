/** On a plan or section: the windows, what a window casts onto the faces, and where reflections meet them. */

import { useMemo, type ReactElement } from 'react';
import type { Mark, PaperPoint } from '../../../core/drawing/marks';
import { linesOnPaper, onPaper } from '../../../core/drawing/on-paper';
import type { FlatView } from '../../../core/drawing/views';
import { FlatMarks } from '../../drawing/flat/FlatMarks';
import type { FlatProps } from '../../drawing/layer';
import type { ReflectionMark, ReflectionMarks } from './early-reflections';
import { stripOutlines, stripSides } from './strip-lines';
import { useSpeakerLayer, type SpeakerLayer } from './use-speaker-layer';

export function SpeakersFlat({ view }: FlatProps): ReactElement {
  const { arcs, strips, ears, reflections } = useSpeakerLayer();
  const marks = useMemo(
    (): readonly Mark[] => [
      ...stripMarks(view, { strips, ears }),
      ...linesOnPaper(view, 'evidence', arcs, { tone: 'ink', weight: 'seen' }),
      ...(reflections ? pointMarks(view, reflections) : []),
    ],
    [view, arcs, strips, ears, reflections],
  );
  return <FlatMarks marks={marks} />;
}

function stripMarks(
  view: FlatView,
  { strips, ears }: Pick<SpeakerLayer, 'strips' | 'ears'>,
): readonly Mark[] {
  if (!strips || !ears) return [];
  return [
    ...strips.map(({ polygon }): Mark => ({
      kind: 'fill',
      layer: 'evidence',
      points: polygon.map((point) => onPaper(view, point)),
      tone: 'accent',
      opacity: 0.3,
    })),
    ...linesOnPaper(view, 'evidence', stripOutlines(strips), { tone: 'accent', weight: 'seen' }),
    ...linesOnPaper(view, 'evidence', stripSides(strips, ears), {
      tone: 'accent',
      weight: 'light',
      dashed: true,
      opacity: 0.8,
    }),
  ];
}

const DIAMOND_M = 0.095;
const RING_M = 0.0675;
const SHOWN_SCALE = 1.5;

/** The way of the shown one, and each mark: a filled diamond over the limit, a ring within it. */
function pointMarks(view: FlatView, { marks, shown }: ReflectionMarks): readonly Mark[] {
  const legs = shown
    ? ([
        [shown.way[0], shown.way[1]],
        [shown.way[1], shown.way[2]],
      ] as const)
    : [];
  return [
    ...linesOnPaper(view, 'evidence', legs, { tone: 'accent', weight: 'seen' }),
    ...marks.map((mark) => pointMark(view, mark, mark.face === shown?.face ? SHOWN_SCALE : 1)),
  ];
}

function pointMark(view: FlatView, { at, isOver }: ReflectionMark, scale: number): Mark {
  const [x, y] = onPaper(view, at);
  if (!isOver) {
    return {
      kind: 'circle',
      layer: 'evidence',
      centre: [x, y],
      radiusM: RING_M * scale,
      fill: null,
      stroke: { tone: 'ink', weight: 'cut' },
    };
  }
  const r = DIAMOND_M * scale;
  const points: readonly PaperPoint[] = [
    [x + r, y],
    [x, y + r],
    [x - r, y],
    [x, y - r],
  ];
  return { kind: 'fill', layer: 'evidence', points, tone: 'accent' };
}
