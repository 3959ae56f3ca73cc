/** The handle that turns the chosen loudspeaker: it stands where the baffle looks, a little before it. */

import { degrees } from '../../../core/quantity/angle';
import type { Point } from '../../../core/room/project';
import { aimVector } from '../../../core/speakers/aim';
import { directionFrom } from '../../../core/speakers/direction';
import { DragHandle } from '../../drawing/DragHandle';
import { AIM_REACH_M } from '../../../core/drawing/loudspeakers';
import { DRAG_NORMAL, type LabelContext } from '../../drawing/label-context';
import { RANKS } from '../../../core/drawing/label-requests';
import type { PlacedLabel } from '../../drawing/Labels';
import { onPlane } from '../../drawing/stage';
import type { Gesture } from '../../state/gesture';

const NUDGE_DEG = 1;
const FINE_DEG = 0.1;

/** `channel` is the label of the loudspeaker that it turns. */
export function aimLabels(context: LabelContext, channel: string | null): readonly PlacedLabel[] {
  const { project, view, stage, change, hold } = context;
  const speaker = project.speakers.placed.find((placed) => placed.channel === channel);
  if (!speaker) return [];
  const { position } = speaker;
  const look = aimVector(project, speaker);
  const at: Point = [
    position[0] + AIM_REACH_M * look[0],
    position[1] + AIM_REACH_M * look[1],
    position[2] + AIM_REACH_M * look[2],
  ];
  const now = directionFrom([0, 0, 0], look);
  // The angle is set in the plane that is looked at: turned in the room and plan, tilted in sections.
  const tilts = DRAG_NORMAL[view] !== 2;
  const set = (azimuthDeg: number, elevationDeg: number, fine: boolean, gesture: Gesture): void => {
    const step = fine ? FINE_DEG : NUDGE_DEG;
    const snap = (deg: number): number => Math.round(Math.round(deg / step) * step * 10) / 10;
    const aim = {
      azimuthDeg: snap(azimuthDeg),
      elevationDeg: Math.min(90, Math.max(-90, snap(elevationDeg))),
    };
    change({ kind: 'mounting', channel: speaker.channel, change: { aim } }, gesture);
  };
  return [
    {
      key: `aim-${speaker.channel}`,
      at,
      outwardFrom: position,
      rank: RANKS.grip,
      node: (
        <DragHandle
          className="grip aim-grip"
          label={`Aim of ${speaker.channel}, turned ${now.azimuthDeg.toFixed(0)}, tilted ${now.elevationDeg.toFixed(0)} degrees: drag to ${tilts ? 'tilt' : 'turn'} it, or arrow keys`}
          stage={stage}
          onStart={() => hold(true)}
          onEnd={() => hold(false)}
          onDrag={(ray, _start, fine, gesture) => {
            const to = onPlane(ray, position, DRAG_NORMAL[view]);
            if (!to) return;
            const wanted = directionFrom(position, to);
            const sine = Math.min(1, Math.max(-1, (to[2] - position[2]) / AIM_REACH_M));
            if (tilts) set(now.azimuthDeg, degrees(Math.asin(sine)), fine, gesture);
            else if (wanted.distanceM > 0.05)
              set(wanted.azimuthDeg, now.elevationDeg, fine, gesture);
          }}
          onNudge={(right, up, fine, gesture) => {
            const step = fine ? FINE_DEG : NUDGE_DEG;
            const turned = now.azimuthDeg - (tilts ? 0 : right * step);
            const tilted = now.elevationDeg + (tilts ? (up || right) * step : 0);
            set(turned, tilted, fine, gesture);
          }}
        />
      ),
    },
  ];
}
