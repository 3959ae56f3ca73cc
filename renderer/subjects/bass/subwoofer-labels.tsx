/** Handles of the subwoofers: a tag to drag each along the floor, or up and down in the sections. */

import { carried } from '../../../core/scene/stand';
import { formatLength } from '../../../core/quantity/length';
import type { Point, Subwoofer } from '../../../core/room/project';
import { removeThing } from '../../state/remove-thing';
import { DragHandle } from '../../drawing/DragHandle';
import {
  DRAG_NORMAL,
  dragPlace,
  isMarked,
  nudged,
  type LabelContext,
} from '../../drawing/label-context';
import { RANKS } from '../../../core/drawing/label-requests';
import type { PlacedLabel } from '../../drawing/Labels';
import type { Gesture } from '../../state/gesture';

export function subwooferLabels(context: LabelContext): readonly PlacedLabel[] {
  return context.project.speakers.subwoofers.map((sub) => tag(context, sub));
}

function tag(context: LabelContext, sub: Subwoofer): PlacedLabel {
  const { units, stage, change, hold, session } = context;
  const thing = { kind: 'subwoofer', id: sub.id } as const;
  const marked = isMarked(context, thing);
  const [x, y, z] = sub.position;
  // Along the floor it climbs stages and risers, and comes down again.
  const level = DRAG_NORMAL[context.view] === 2;
  const moveTo = (position: Point, gesture: Gesture): void =>
    change({ kind: 'subwoofer', id: sub.id, position }, gesture);
  return {
    key: `subwoofer-${sub.id}`,
    at: sub.position,
    mayShift: true,
    ...(marked ? { rank: RANKS.chosen } : {}),
    node: (
      <DragHandle
        className={marked ? 'row-chip fitting-chip marked' : 'row-chip fitting-chip'}
        label={`Subwoofer ${sub.id}, ${formatLength(x, units)} from the left wall, ${formatLength(y, units)} from the screen wall, ${formatLength(z, units)} up: drag, or arrow keys`}
        stage={stage}
        onStart={() => {
          hold(true);
          session.select(thing);
        }}
        onEnd={() => hold(false)}
        onRemove={() => removeThing(thing)}
        onPress={() => session.select(thing)}
        onDrag={(ray, startRay, fine, gesture) => {
          const start = gesture.base.speakers.subwoofers.find((s) => s.id === sub.id)?.position;
          const to = start ? dragPlace(context, start, ray, startRay, fine) : null;
          if (start && to) moveTo(level ? carried(gesture.base, start, to) : to, gesture);
        }}
        onNudge={(right, up, fine, gesture) => {
          const to = nudged(sub.position, context, right, up, fine);
          moveTo(to[2] === z ? carried(context.project, sub.position, to) : to, gesture);
        }}
      >
        {sub.id}
      </DragHandle>
    ),
  };
}
