/** Loudspeakers with their boxes, turned as they are aimed, and the ray from each to the ears. */

import { useMemo, type ReactElement } from 'react';
import { BoxGeometry, EdgesGeometry } from 'three';
import type { Point, Project } from '../../../core/room/project';
import { aimVector } from '../../../core/speakers/aim';
import { speakerBox, USUAL_BOX_M } from '../../../core/speakers/box';
import { directionFrom } from '../../../core/speakers/direction';
import { degreesOutside, type LaterResult, type SpeakerResult } from '../../../core/speakers/judge';
import type { Channel, Layout } from '../../../core/speakers/layouts';
import { toScene } from '../axes';
import type { Palette } from '../palette';
import { AIM_REACH_M, BAFFLE_M } from '../../../core/drawing/loudspeakers';
import { boxEdges } from '../../../core/drawing/space-lines';
import { Strokes } from './Strokes';

const BOX = new BoxGeometry();
const BOX_EDGES = new EdgesGeometry(BOX);

export interface LoudspeakersProps {
  readonly project: Project;
  readonly speakers: readonly SpeakerResult[];
  /** Of the layout to come: drawn as outlines. */
  readonly later: readonly LaterResult[];
  /** Ears that the rays go to; null where there are none, and nothing can be told of loudspeakers. */
  readonly ears: Point | null;
  readonly layout: Layout | null;
  readonly palette: Palette;
  readonly chosen: string | null;
}

export function Loudspeakers(props: LoudspeakersProps): ReactElement | null {
  const { project, speakers, later, ears, layout, palette, chosen } = props;
  if (!ears) return null;
  return (
    <group>
      {speakers.map((speaker) => (
        <Loudspeaker
          key={speaker.channel}
          speaker={speaker}
          project={project}
          hearing={ears}
          channel={layout?.channels.find((known) => known.label === speaker.channel)}
          palette={palette}
          chosen={speaker.channel === chosen}
        />
      ))}
      {later.map(({ channel, position }) => (
        <Later key={channel} project={project} channel={channel} at={position} palette={palette} />
      ))}
    </group>
  );
}

interface LoudspeakerProps {
  readonly project: Project;
  readonly speaker: SpeakerResult;
  readonly hearing: Point;
  readonly channel: Channel | undefined;
  readonly palette: Palette;
  readonly chosen: boolean;
}

function Loudspeaker(props: LoudspeakerProps): ReactElement {
  const { project, speaker, hearing, channel, palette, chosen } = props;
  const placed = project.speakers.placed.find((one) => one.channel === speaker.channel);
  const box = useMemo(() => (placed ? speakerBox(project, placed) : null), [project, placed]);
  const look = useMemo(
    (): Point => (placed ? aimVector(project, placed) : [0, 1, 0]),
    [project, placed],
  );
  const inRange = channel
    ? degreesOutside(directionFrom(hearing, speaker.position), channel) === 0
    : false;
  const color = inRange ? palette.ink : palette.accent;
  const ray = useMemo(() => [[hearing, speaker.position] as const], [hearing, speaker.position]);
  const axis = useMemo(
    () => [[speaker.position, along(speaker.position, look, AIM_REACH_M)] as const],
    [speaker.position, look],
  );
  return (
    <group>
      {box && box.sunkM > 0 ? (
        <Strokes
          pairs={boxEdges(box.cabinet.min, box.cabinet.max)}
          color={palette['ink-soft']}
          dashed
        />
      ) : null}
      <Cabinet
        position={speaker.position}
        look={look}
        sizeM={placed?.boxM ?? USUAL_BOX_M}
        sunk={box !== null && box.sunkM > 0}
        fill={chosen ? palette.accent : palette.raised}
        color={color}
      />
      <Strokes pairs={ray} color={color} dashed={!inRange} opacity={inRange && !chosen ? 0.6 : 1} />
      {chosen ? <Strokes pairs={axis} color={palette.ink} /> : null}
    </group>
  );
}

/** The outline alone of a loudspeaker that is to come. */
function Later(props: {
  readonly project: Project;
  readonly channel: string;
  readonly at: Point;
  readonly palette: Palette;
}): ReactElement | null {
  const { project, channel, palette } = props;
  const placed = project.speakers.placed.find((one) => one.channel === channel);
  const edges = useMemo(() => {
    const box = placed ? speakerBox(project, placed) : null;
    return box ? boxEdges(box.cabinet.min, box.cabinet.max) : [];
  }, [project, placed]);
  return <Strokes pairs={edges} color={palette['ink-soft']} dashed />;
}

const along = (from: Point, by: Point, reach: number): Point => [
  from[0] + reach * by[0],
  from[1] + reach * by[1],
  from[2] + reach * by[2],
];

/** The cabinet behind its baffle, which looks along `look`, with the two drivers on it. */
function Cabinet(props: {
  readonly position: Point;
  readonly look: Point;
  readonly sizeM: Point;
  readonly sunk: boolean;
  readonly fill: string;
  readonly color: string;
}): ReactElement {
  const { position, look, sizeM, sunk, fill, color } = props;
  const [x, y, z] = toScene(look);
  const [wide, high] = sizeM;
  const deep = sunk ? BAFFLE_M : sizeM[2];
  const driver = Math.min(wide, high) / 2;
  return (
    <group
      position={toScene(position)}
      rotation={[-Math.asin(Math.min(1, Math.max(-1, y))), Math.atan2(x, z), 0, 'YXZ']}
    >
      <mesh geometry={BOX} position={[0, 0, -deep / 2]} scale={[wide, high, deep]}>
        <meshBasicMaterial
          color={fill}
          polygonOffset
          polygonOffsetFactor={1}
          polygonOffsetUnits={1}
        />
      </mesh>
      <lineSegments geometry={BOX_EDGES} position={[0, 0, -deep / 2]} scale={[wide, high, deep]}>
        <lineBasicMaterial color={color} />
      </lineSegments>
      <mesh position={[0, -high * 0.1, 0.003]} scale={driver}>
        <ringGeometry args={[0.5, 0.75, 24]} />
        <meshBasicMaterial color={color} />
      </mesh>
      <mesh position={[0, high * 0.32, 0.003]} scale={driver}>
        <circleGeometry args={[0.25, 16]} />
        <meshBasicMaterial color={color} />
      </mesh>
    </group>
  );
}
