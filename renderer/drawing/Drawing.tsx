/** The room itself: in space, as a plan and in two sections. Here things are changed by hand. */

import { addAfterEffect, useFrame } from '@react-three/fiber';
import { useEffect, useMemo, useRef, useState, type ReactElement } from 'react';
import { subwooferPlaces } from '../../core/bass/places';
import { stripsOf } from '../../core/speakers/strips';
import { METRES_PER_FOOT } from '../../core/quantity/length';
import { usePlaces } from '../subjects/bass/places-store';
import type { Painting } from '../pressure/painting';
import { chosenThing } from '../state/chosen';
import { useChosenSpeaker } from '../subjects/speakers/chosen-speaker';
import { useHearingSeat, useSpeakerEvidence } from '../subjects/speakers/shown-evidence';
import { useReflectionMarks } from '../subjects/speakers/early-reflections';
import { useAnalysis, useProject, useSession, type OpenSubject, type View } from '../state/session';
import { aimLabels } from '../subjects/speakers/aim-label';
import { CameraRig } from './CameraRig';
import { dimensionLines, dimensionStrokes, type NearSides } from './dimension-lines';
import { drawingLabels } from './drawing-labels';
import type { LabelContext } from './label-context';
import { EYE_KEYS, eyeMove, type EyeMove } from './eye-keys';
import { fittingLabels } from '../subjects/fittings/fitting-labels';
import { LabelLayer, LabelMover } from './Labels';
import { usePalette } from './palette';
import { patchLabels } from './patch-labels';
import { Openings } from './scene/Openings';
import { ScreenFrame } from './scene/ScreenFrame';
import { SolidBoxes } from './scene/SolidBoxes';
import { Subwoofers } from './scene/Subwoofers';
import { placeDimensions, placeStrokes } from './place-dimensions';
import { placeFigures } from './place-figures';
import { reflectionLabels } from '../subjects/speakers/reflection-labels';
import { Loudspeakers } from './scene/Loudspeakers';
import { ReflectionPoints } from '../subjects/speakers/ReflectionPoints';
import { Seats } from './scene/Seats';
import { PreviewMarks } from './scene/PreviewMarks';
import { PressurePaint } from './scene/PressurePaint';
import { Shell } from './scene/Shell';
import { Strokes } from './scene/Strokes';
import { Strips } from '../subjects/speakers/Strips';
import { SubwooferPlaces } from '../subjects/bass/SubwooferPlaces';
import type { Stage } from './stage';
import { SceneCanvas } from './SceneCanvas';
import { subwooferLabels } from '../subjects/bass/subwoofer-labels';

const VIEW_NAMES: Readonly<Record<View, string>> = {
  room: 'in space',
  plan: 'plan',
  section: 'long section',
  front: 'cross section to the screen',
};

const HANDLES: Partial<Readonly<Record<OpenSubject, LabelContext['handles']>>> = {
  fittings: 'fittings',
  bass: 'subwoofers',
  decay: 'patches',
};

export function Drawing({ painting }: { readonly painting: Painting | null }): ReactElement {
  const project = useProject();
  const analysis = useAnalysis();
  const units = useSession((session) => session.units);
  const view = useSession((session) => session.view);
  const refit = useSession((session) => session.refit);
  const subject = useSession((session) => session.subject);
  const channel = useSession((session) => session.channel);
  const findingId = useSession((session) => session.findingId);
  const fitting = useSession((session) => session.fitting);
  const chooseFitting = useSession((session) => session.chooseFitting);
  const patch = useSession((session) => session.patch);
  const choosePatch = useSession((session) => session.choosePatch);
  const subwoofer = useSession((session) => session.subwoofer);
  const chooseSubwoofer = useSession((session) => session.chooseSubwoofer);
  const change = useSession((session) => session.change);
  const chooseChannel = useSession((session) => session.chooseChannel);
  const palette = usePalette();
  const [held, hold] = useState(false);
  const [near, setNear] = useState<NearSides>({ x: 'right', y: 'back' });
  const layer = useRef<HTMLDivElement>(null);
  const frame = useRef<HTMLDivElement>(null);
  const stage = useRef<Stage | null>(null);
  const started = useRef(project);
  const eye = useRef<((move: EyeMove) => void) | null>(null);
  const setView = useSession((session) => session.setView);
  const { size } = project.room;

  const placesOpen = usePlaces((store) => store.open);
  const { stepM, boxM } = usePlaces((store) => store.options);
  const places = useMemo(
    () => (placesOpen ? subwooferPlaces(project, { stepM, boxM }) : { allowed: [], forbidden: [] }),
    [placesOpen, project, stepM, boxM],
  );

  const pointSeat = useSpeakerEvidence((store) => store.point);
  const hearing = useHearingSeat();
  const chosenChannel = useChosenSpeaker()?.channel ?? null;
  const strips = useMemo(() => {
    const window = analysis.layout?.channels.find(({ label }) => label === chosenChannel);
    return subject === 'speakers' && window && hearing
      ? stripsOf(project.room, hearing.position, window)
      : null;
  }, [subject, analysis.layout, chosenChannel, project.room, hearing]);

  const reflections = useReflectionMarks();
  const place = analysis.findings.find((finding) => finding.id === findingId)?.place ?? null;
  const dimensions = useMemo(() => dimensionLines(size, view, near), [size, view, near]);
  const row = useSession((session) => session.row);
  const chooseRow = useSession((session) => session.chooseRow);
  const thing = chosenThing(project, { subject, fitting, patch, row, subwoofer, channel });
  const strokes = useMemo(() => dimensions.flatMap(dimensionStrokes), [dimensions]);
  const context = {
    handles: HANDLES[subject] ?? null,
    subwoofer,
    chooseSubwoofer,
    fitting,
    chooseFitting,
    patch,
    choosePatch,
    row,
    chooseRow,
    project,
    analysis,
    units,
    view,
    dimensions,
    stage,
    channel,
    place,
    change,
    chooseChannel,
    hold,
    started,
  };
  const measured = placeDimensions(project, thing, view);
  const measuredStrokes = measured.flatMap((dimension) => placeStrokes(dimension, view));
  const labels = [
    ...placeFigures(measured),
    ...reflectionLabels(reflections, view),
    ...drawingLabels(context),
    ...(context.handles === 'fittings' ? fittingLabels(context) : []),
    ...(context.handles === 'fittings' || context.handles === 'patches'
      ? patchLabels(context)
      : []),
    ...(subject === 'speakers' ? aimLabels({ ...context, channel: chosenChannel }) : []),
    ...(context.handles === 'subwoofers' ? subwooferLabels(context) : []),
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
          chosen={context.handles === 'subwoofers' ? null : patch}
        />
        <ScreenFrame project={project} palette={palette} />
        {subject === 'bass' && placesOpen ? (
          <SubwooferPlaces places={places} boxM={boxM} palette={palette} />
        ) : null}
        <PreviewMarks palette={palette} />
        <Seats
          project={project}
          palette={palette}
          onPoint={subject === 'speakers' ? pointSeat : null}
        />
        {strips && hearing ? (
          <Strips strips={strips} ears={hearing.position} palette={palette} />
        ) : null}
        <Loudspeakers
          project={project}
          hearing={subject === 'speakers' ? (hearing?.position ?? null) : null}
          speakers={analysis.speakers}
          later={analysis.later}
          listening={analysis.listening}
          layout={analysis.layout}
          palette={palette}
          chosen={subject === 'speakers' ? chosenChannel : channel}
          windows={subject === 'speakers'}
        />
        {reflections ? <ReflectionPoints reflections={reflections} palette={palette} /> : null}
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
