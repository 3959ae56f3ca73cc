/** The room as a plan or section: core's drawing with what is painted under it and what a subject adds. */

import { useMemo, type ReactElement, type RefObject } from 'react';
import type { Analysis } from '../../../core/analysis/analyze';
import { placeMarks } from '../../../core/drawing/dimensions';
import { drawRoom } from '../../../core/drawing/sketch';
import type { FlatView } from '../../../core/drawing/views';
import type { LengthUnits } from '../../../core/quantity/length';
import { measuresIn } from '../../../core/quantity/measures';
import type { Project } from '../../../core/room/project';
import type { Painting } from '../../pressure/painting';
import type { PlacedLabel } from '../Labels';
import type { Layer, Marks } from '../layer';
import { usePalette } from '../palette';
import type { PlaceDimension } from '../place-dimensions';
import type { Stage } from '../stage';
import { FlatDrawing } from './FlatDrawing';
import { FlatMarks } from './FlatMarks';
import { FlatPaint } from './FlatPaint';
import { FlatPreview } from './FlatPreview';
import { SeatAreas } from './SeatAreas';

export interface FlatViewProps {
  readonly view: FlatView;
  readonly label: string;
  readonly project: Project;
  readonly analysis: Analysis;
  readonly units: LengthUnits;
  readonly added: Layer;
  readonly marks: Marks;
  /** Id of the chosen door, window or panel. */
  readonly patch: string | null;
  readonly painting: Painting | null;
  readonly measured: readonly PlaceDimension[];
  readonly onPointSeat: ((seat: string | null) => void) | null;
  readonly labels: readonly PlacedLabel[];
  readonly stage: RefObject<Stage | null>;
  readonly held: boolean;
  readonly refit: number;
  readonly onHome: () => void;
  readonly onDrawn: () => void;
}

export function Flat(props: FlatViewProps): ReactElement {
  const { view, label, project, analysis, units, added, marks, patch, painting } = props;
  const { measured, onPointSeat, labels, stage, held, refit, onHome, onDrawn } = props;
  const { channel, ears } = marks;
  const palette = usePalette();
  const painted = painting !== null;
  const drawn = useMemo(
    () =>
      drawRoom(view, project, {
        measures: measuresIn(units),
        judged: analysis,
        hearing: ears,
        channel,
        patch,
        painted,
      }),
    [view, project, units, analysis, ears, channel, patch, painted],
  );
  return (
    <FlatDrawing
      view={view}
      size={project.room.size}
      label={label}
      labels={labels}
      stage={stage}
      held={held}
      refit={refit}
      onHome={onHome}
      onDrawn={onDrawn}
    >
      <FlatMarks marks={drawn.ground} />
      {painting ? <FlatPaint view={view} painting={painting} palette={palette} /> : null}
      <FlatMarks marks={drawn.marks} />
      {added.Flat ? <added.Flat view={view} /> : null}
      <FlatPreview view={view} />
      <FlatMarks marks={placeMarks(view, measured)} />
      {onPointSeat ? <SeatAreas view={view} project={project} onPoint={onPointSeat} /> : null}
    </FlatDrawing>
  );
}
