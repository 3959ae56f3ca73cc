/**
 * Where the sound of a loudspeaker meets the faces on its way to a seat: a filled diamond where the
 * reflection is over the limit, a ring where it is within; for one of them its way as a line.
 */

import { useFrame } from '@react-three/fiber';
import { useMemo, useRef, type ReactElement } from 'react';
import { CircleGeometry, RingGeometry, type Group } from 'three';
import type { ReflectionMark, ReflectionMarks } from './early-reflections';
import { toScene } from '../../drawing/axes';
import type { Palette } from '../../drawing/palette';
import { Strokes } from '../../drawing/scene/Strokes';

const DIAMOND = new CircleGeometry(0.095, 4);
const RING = new RingGeometry(0.055, 0.08, 24);
const SHOWN_SCALE = 1.5;

export interface ReflectionPointsProps {
  readonly reflections: ReflectionMarks;
  readonly palette: Palette;
}

export function ReflectionPoints(props: ReflectionPointsProps): ReactElement {
  const { reflections, palette } = props;
  const { marks, shown } = reflections;
  const legs = useMemo(
    () =>
      shown
        ? ([
            [shown.way[0], shown.way[1]],
            [shown.way[1], shown.way[2]],
          ] as const)
        : [],
    [shown],
  );
  // Marks lie at the face and turn to the eye: seen edge on, their shape could not be told.
  const group = useRef<Group>(null);
  useFrame(({ camera }) => {
    for (const child of group.current?.children ?? []) child.quaternion.copy(camera.quaternion);
  });
  return (
    <>
      <Strokes pairs={legs} color={palette.accent} onTop />
      <group ref={group}>
        {marks.map((mark) => (
          <Mark key={mark.face} mark={mark} isShown={mark.face === shown?.face} palette={palette} />
        ))}
      </group>
    </>
  );
}

function Mark(props: {
  readonly mark: ReflectionMark;
  readonly isShown: boolean;
  readonly palette: Palette;
}): ReactElement {
  const { mark, isShown, palette } = props;
  return (
    <mesh
      geometry={mark.isOver ? DIAMOND : RING}
      position={toScene(mark.at)}
      scale={isShown ? SHOWN_SCALE : 1}
      renderOrder={12}
    >
      <meshBasicMaterial
        color={mark.isOver ? palette.accent : palette.ink}
        transparent
        depthTest={false}
      />
    </mesh>
  );
}
