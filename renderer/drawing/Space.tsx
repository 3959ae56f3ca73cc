/** The room in space: the scene in three, with the eye that turns round it. */

import { addAfterEffect, useFrame } from '@react-three/fiber';
import { useEffect, useMemo, useRef, type ReactElement, type RefObject } from 'react';
import type { ShellDimension } from '../../core/drawing/dimensions';
import { placeStrokes } from '../../core/drawing/dimensions';
import type { Analysis } from '../../core/analysis/analyze';
import type { LengthUnits } from '../../core/quantity/length';
import { METRES_PER_FOOT } from '../../core/quantity/length';
import type { Project } from '../../core/room/project';
import type { Painting } from '../pressure/painting';
import { CameraRig } from './CameraRig';
import { dimensionStrokes, type NearSides } from './dimension-lines';
import { EYE_KEYS, eyeMove, type EyeMove } from './eye-keys';
import { LabelMover } from './LabelMover';
import { LabelLayer, type PlacedLabel } from './Labels';
import type { Layer, Marks } from './layer';
import { usePalette } from './palette';
import { axesIn, type PlaceDimension } from './place-dimensions';
import { Loudspeakers } from './scene/Loudspeakers';
import { Openings } from './scene/Openings';
import { PressurePaint } from './scene/PressurePaint';
import { PreviewMarks } from './scene/PreviewMarks';
import { ScreenFrame } from './scene/ScreenFrame';
import { Seats } from './scene/Seats';
import { Shell } from './scene/Shell';
import { SolidBoxes } from './scene/SolidBoxes';
import { Strokes } from './scene/Strokes';
import { Subwoofers } from './scene/Subwoofers';
import { SceneCanvas } from './SceneCanvas';
import type { Stage } from './stage';

export interface SpaceProps {
  readonly label: string;
  readonly project: Project;
  readonly analysis: Analysis;
  readonly units: LengthUnits;
  readonly added: Layer;
  readonly marks: Marks;
  readonly patch: string | null;
  readonly painting: Painting | null;
  readonly dimensions: readonly ShellDimension[];
  readonly measured: readonly PlaceDimension[];
  readonly near: NearSides;
  readonly onNear: (near: NearSides) => void;
  readonly onPointSeat: ((seat: string | null) => void) | null;
  readonly labels: readonly PlacedLabel[];
  readonly stage: RefObject<Stage | null>;
  readonly held: boolean;
  readonly refit: number;
  readonly onHome: () => void;
  readonly onDrawn: () => void;
}

export function Space(props: SpaceProps): ReactElement {
  const { label, project, analysis, units, added, marks, patch, painting } = props;
  const { dimensions, measured, near, onNear, onPointSeat, labels, stage } = props;
  const { held, refit, onHome, onDrawn } = props;
  const palette = usePalette();
  const layer = useRef<HTMLDivElement>(null);
  const eye = useRef<((move: EyeMove) => void) | null>(null);
  const { size } = project.room;
  const strokes = useMemo(() => dimensions.flatMap(dimensionStrokes), [dimensions]);
  const measuredStrokes = measured.flatMap((line) => placeStrokes(line, axesIn('room')));
  useEffect(() => addAfterEffect(onDrawn), [onDrawn]);
  return (
    <SceneCanvas
      label={label}
      keys={EYE_KEYS}
      onKey={(event) => {
        if (event.ctrlKey || event.metaKey || event.altKey) return false;
        if (event.key === 'Home') onHome();
        const move = eyeMove(event.key, event.shiftKey);
        if (move) eye.current?.(move);
        return move !== null || event.key === 'Home';
      }}
      over={<LabelLayer labels={labels} layer={layer} />}
    >
      <CameraRig size={size} held={held} refit={refit} eye={eye} />
      <SideWatcher near={near} onChange={onNear} centre={[size.width, size.length]} />
      <Shell size={size} palette={palette} gridM={units === 'metric' ? 0.5 : METRES_PER_FOOT} />
      {painting ? <PressurePaint painting={painting} palette={palette} /> : null}
      <SolidBoxes project={project} palette={palette} />
      <Subwoofers project={project} palette={palette} />
      <Openings project={project} palette={palette} chosen={patch} />
      <ScreenFrame project={project} palette={palette} />
      <PreviewMarks palette={palette} />
      <Seats project={project} palette={palette} onPoint={onPointSeat} />
      <Loudspeakers
        project={project}
        ears={marks.ears ?? analysis.listening}
        speakers={analysis.speakers}
        later={analysis.later}
        layout={analysis.layout}
        palette={palette}
        chosen={marks.channel}
      />
      {added.Scene ? <added.Scene palette={palette} /> : null}
      <Strokes pairs={strokes} color={palette.ink} />
      <Strokes pairs={measuredStrokes} color={palette.accent} onTop />
      <LabelMover layer={layer} stage={stage} labels={labels} />
    </SceneCanvas>
  );
}

/** Tells which sides of the room the eye stands on, so that dimension lines stay in front. */
function SideWatcher({
  near,
  onChange,
  centre,
}: {
  readonly near: NearSides;
  readonly onChange: (near: NearSides) => void;
  readonly centre: readonly [number, number];
}): null {
  useFrame(({ camera }) => {
    const x = camera.position.x >= centre[0] / 2 ? 'right' : 'left';
    const y = camera.position.z >= centre[1] / 2 ? 'back' : 'front';
    if (x !== near.x || y !== near.y) onChange({ x, y });
  });
  return null;
}
