/** The shell: the face that is looked at, the grid of the floor, and the line where the faces are cut. */

import type { Project } from '../room/project';
import { farCorner } from '../room/point';
import { cornersOf, type Mark, type PaperRect, type Tone } from './marks';
import { hiddenAxis, linesOnPaper, rectOnPaper, type SpaceLines } from './on-paper';
import type { FlatView } from './views';

/** The shell on the paper. */
export const shellRect = (view: FlatView, { room }: Project): PaperRect =>
  rectOnPaper(view, { min: [0, 0, 0], max: farCorner(room.size) });

const TONES: readonly [Tone, Tone, Tone] = ['wall-side', 'wall', 'floor'];

/** What lies under everything: the far face, and in a plan the lines of the floor, `gridM` apart. */
export function groundMarks(view: FlatView, project: Project, gridM: number): readonly Mark[] {
  const tone = view.id === 'ceiling' ? 'wall' : TONES[hiddenAxis(view)];
  const points = cornersOf(shellRect(view, project));
  const face: Mark = { kind: 'fill', layer: 'ground', points, tone };
  if (view.id !== 'plan') return [face];
  const look = { tone: 'hairline', weight: 'light', opacity: 0.55 } as const;
  return [face, ...linesOnPaper(view, 'grid', floorGrid(project, gridM), look)];
}

/** Lines of the floor, `stepM` apart from the corner of origin. */
export function floorGrid({ room }: Project, stepM: number): SpaceLines {
  const { width, length } = room.size;
  const lines: (readonly [readonly [number, number, number], readonly [number, number, number]])[] =
    [];
  for (let n = 1; n * stepM < width; n++) {
    lines.push([
      [n * stepM, 0, 0],
      [n * stepM, length, 0],
    ]);
  }
  for (let n = 1; n * stepM < length; n++) {
    lines.push([
      [0, n * stepM, 0],
      [width, n * stepM, 0],
    ]);
  }
  return lines;
}

/** The faces that are cut. */
export const shellMarks = (view: FlatView, project: Project): readonly Mark[] => [
  {
    kind: 'lines',
    layer: 'shell',
    paths: [cornersOf(shellRect(view, project))],
    closed: true,
    tone: 'ink',
    weight: 'cut',
  },
];
