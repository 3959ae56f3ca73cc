/** The room itself: in space, as a plan and in two sections. Here things are changed by hand. */

import { addAfterEffect, useFrame } from '@react-three/fiber';
import { useEffect, useMemo, useRef, useState, type ReactElement } from 'react';
import { METRES_PER_FOOT } from '../../core/quantity/length';
import type { Painting } from '../pressure/painting';
import { chosenThing, selectedId } from '../state/selection';
import { projectOf, useSession, type View } from '../state/session';
import { CameraRig } from './CameraRig';
import { dimensionLines, dimensionStrokes, type NearSides } from './dimension-lines';
import { drawingLabels } from './drawing-labels';
import type { LabelContext } from './label-context';
import type { Layer } from './layer';
import { EYE_KEYS, eyeMove, type EyeMove } from './eye-keys';
import { LabelLayer, LabelMover } from './Labels';
import { usePalette } from './palette';
import { Openings } from './scene/Openings';
import { ScreenFrame } from './scene/ScreenFrame';
import { SolidBoxes } from './scene/SolidBoxes';
import { Subwoofers } from './scene/Subwoofers';
import { placeDimensions, placeStrokes } from './place-dimensions';
import { placeFigures } from './place-figures';
import { Loudspeakers } from './scene/Loudspeakers';
import { Seats } from './scene/Seats';
import { PreviewMarks } from './scene/PreviewMarks';
import { PressurePaint } from './scene/PressurePaint';
import { Shell } from './scene/Shell';
import { Strokes } from './scene/Strokes';
import type { Stage } from './stage';
import { SceneCanvas } from './SceneCanvas';

const VIEW_NAMES: Readonly<Record<View, string>> = {
  room: 'in space',
  plan: 'plan',
  section: 'long section',
  front: 'cross section to the screen',
};

export interface DrawingProps {
  readonly painting: Painting | null;
  /** What the open subject adds. */
  readonly layer: Layer;
}

export function Drawing({ painting, layer: added }: DrawingProps): ReactElement {
  const session = useSession();
  const { analysis, units, view, refit, selected, findingId, setView, pointSeat } = session;
  const project = projectOf(session);
  const palette = usePalette();
  const [held, hold] = useState(false);
  const [near, setNear] = useState<NearSides>({ x: 'right', y: 'back' });
  const layer = useRef<HTMLDivElement>(null);
  const frame = useRef<HTMLDivElement>(null);
  const stage = useRef<Stage | null>(null);
  const eye = useRef<((move: EyeMove) => void) | null>(null);
  const { size } = project.room;

  const place = analysis.findings.find((finding) => finding.id === findingId)?.place ?? null;
  const dimensions = useMemo(() => dimensionLines(size, view, near), [size, view, near]);
  const strokes = useMemo(() => dimensions.flatMap(dimensionStrokes), [dimensions]);
  const thing = chosenThing(project, selected, added.chooses);
  const marks = added.marks?.(session) ?? { channel: selectedId(selected, 'speaker'), ears: null };
  const context: LabelContext = {
    session,
    handles: added.chooses,
    project,
    analysis,
    units,
    view,
    dimensions,
    stage,
    place,
    change: session.change,
    hold,
  };
  const measured = placeDimensions(project, thing, view);
  const measuredStrokes = measured.flatMap((dimension) => placeStrokes(dimension, view));
  const labels = [
    ...placeFigures(measured),
    ...drawingLabels(context),
    ...(added.labels?.(context) ?? []),
  ];

  // The number of frames drawn so far stands on the element, for those who wait for one.
  useEffect(() => {
    let frames = 0;
    return addAfterEffect(() => {
      frames += 1;
      if (frame.current) frame.current.dataset['frames'] = String(frames);
    });
  }, []);

  return (
    <div className="drawing" ref={frame} data-view={view}>
      <SceneCanvas
        label={`Drawing of the room, ${VIEW_NAMES[view]}`}
        keys={EYE_KEYS}
        onKey={(event) => {
          if (event.ctrlKey || event.metaKey || event.altKey) return false;
          if (event.key === 'Home') setView(view);
          const move = eyeMove(event.key, event.shiftKey);
          if (move) eye.current?.(move);
          return move !== null || event.key === 'Home';
        }}
        over={<LabelLayer labels={labels} layer={layer} />}
      >
        <CameraRig view={view} size={size} held={held} refit={refit} eye={eye} />
        <SideWatcher
          view={view}
          near={near}
          onChange={setNear}
          centre={[size.width, size.length]}
        />
        <Shell size={size} palette={palette} gridM={units === 'metric' ? 0.5 : METRES_PER_FOOT} />
        {painting ? <PressurePaint painting={painting} palette={palette} view={view} /> : null}
        <SolidBoxes project={project} palette={palette} />
        <Subwoofers project={project} palette={palette} />
        <Openings
          project={project}
          palette={palette}
          chosen={added.chooses.includes('patch') ? selectedId(selected, 'patch') : null}
        />
        <ScreenFrame project={project} palette={palette} />
        <PreviewMarks palette={palette} />
        <Seats
          project={project}
          palette={palette}
          onPoint={added.pointsAtSeats ? pointSeat : null}
        />
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
        <Strokes pairs={strokes} color={palette.ink} onTop={view !== 'room'} />
        <Strokes pairs={measuredStrokes} color={palette.accent} onTop />
        <LabelMover layer={layer} stage={stage} labels={labels} />
      </SceneCanvas>
    </div>
  );
}

/** Tells which sides of the room the eye stands on, so that dimension lines stay in front. */
function SideWatcher({
  view,
  near,
  onChange,
  centre,
}: {
  readonly view: View;
  readonly near: NearSides;
  readonly onChange: (near: NearSides) => void;
  readonly centre: readonly [number, number];
}): null {
  useFrame(({ camera }) => {
    if (view !== 'room') {
      if (near.x !== 'left' || near.y !== 'back') onChange({ x: 'left', y: 'back' });
      return;
    }
    const x = camera.position.x >= centre[0] / 2 ? 'right' : 'left';
    const y = camera.position.z >= centre[1] / 2 ? 'back' : 'front';
    if (x !== near.x || y !== near.y) onChange({ x, y });
  });
  return null;
}
