/** Loudspeakers turned to the listener, the ray each sends to the ears, and the layout's windows. */

import { useMemo, type ReactElement } from 'react';
import { BoxGeometry, EdgesGeometry, Vector3 } from 'three';
import type { Point } from '../../../core/room/project';
import { directionVector } from '../../../core/speakers/direction';
import type { SpeakerResult } from '../../../core/speakers/judge';
import type { Layout } from '../../../core/speakers/layouts';
import { nominalElevation } from '../../../core/speakers/nominal-place';
import { toScene } from '../axes';
import type { Palette } from '../palette';
import { Strokes } from './Strokes';

const BOX = new BoxGeometry(0.2, 0.32, 0.2);
const BOX_EDGES = new EdgesGeometry(BOX);
const ARC_RADIUS_M = 0.95;

export interface LoudspeakersProps {
  readonly speakers: readonly SpeakerResult[];
  readonly listening: Point | null;
  readonly layout: Layout | null;
  readonly palette: Palette;
  readonly chosen: string | null;
  /** Draw the layout's azimuth windows around the listener. */
  readonly windows: boolean;
}

export function Loudspeakers(props: LoudspeakersProps): ReactElement | null {
  const { speakers, listening, layout, palette, chosen, windows } = props;
  const arcs = useMemo(
    () => (listening && layout && windows ? windowStrokes(layout, listening) : []),
    [layout, listening, windows],
  );
  if (!listening) return null;
  return (
    <group>
      {speakers.map((speaker) => (
        <Loudspeaker
          key={speaker.channel}
          speaker={speaker}
          listening={listening}
          palette={palette}
          chosen={speaker.channel === chosen}
        />
      ))}
      <Strokes pairs={arcs} color={palette.ink} onTop />
    </group>
  );
}

interface LoudspeakerProps {
  readonly speaker: SpeakerResult;
  readonly listening: Point;
  readonly palette: Palette;
  readonly chosen: boolean;
}

function Loudspeaker({ speaker, listening, palette, chosen }: LoudspeakerProps): ReactElement {
  const at = new Vector3(...toScene(speaker.position));
  const ears = new Vector3(...toScene(listening));
  const turn = Math.atan2(ears.x - at.x, ears.z - at.z);
  const color = speaker.inRange ? palette.ink : palette.accent;
  const ray = useMemo(
    () => [[listening, speaker.position] as const],
    [listening, speaker.position],
  );
  return (
    <group>
      <group position={at} rotation={[0, turn, 0]}>
        <mesh geometry={BOX}>
          <meshBasicMaterial
            color={chosen ? palette.accent : palette.raised}
            polygonOffset
            polygonOffsetFactor={1}
            polygonOffsetUnits={1}
          />
        </mesh>
        <lineSegments geometry={BOX_EDGES}>
          <lineBasicMaterial color={color} />
        </lineSegments>
        <mesh position={[0, -0.03, 0.102]}>
          <ringGeometry args={[0.05, 0.075, 24]} />
          <meshBasicMaterial color={color} />
        </mesh>
        <mesh position={[0, 0.1, 0.102]}>
          <circleGeometry args={[0.025, 16]} />
          <meshBasicMaterial color={color} />
        </mesh>
      </group>
      <Strokes
        pairs={ray}
        color={color}
        dashed={!speaker.inRange}
        opacity={speaker.inRange && !chosen ? 0.6 : 1}
      />
    </group>
  );
}

/** An arc at the nominal elevation of each window, a tick at each of its ends. */
function windowStrokes(layout: Layout, ears: Point): readonly (readonly [Point, Point])[] {
  return layout.channels.flatMap((channel) => {
    const at = (azimuth: number, radius: number): Point => {
      const [x, y, z] = directionVector(azimuth, nominalElevation(channel));
      return [ears[0] + x * radius, ears[1] + y * radius, ears[2] + z * radius];
    };
    const [from, to] = channel.azimuth;
    const steps = Math.max(1, Math.ceil((to - from) / 3));
    const arc = Array.from({ length: from === to ? 0 : steps }, (_, i) => {
      const angle = (share: number): number => from + ((to - from) * share) / steps;
      return [at(angle(i), ARC_RADIUS_M), at(angle(i + 1), ARC_RADIUS_M)] as const;
    });
    const ticks = [...new Set([from, to])].map(
      (azimuth) => [at(azimuth, ARC_RADIUS_M - 0.08), at(azimuth, ARC_RADIUS_M + 0.08)] as const,
    );
    return [...arc, ...ticks];
  });
}
