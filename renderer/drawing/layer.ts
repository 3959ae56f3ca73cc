/** What the open subject adds to the drawing of the room. The drawing asks nothing else of a subject. */

import type { ComponentType } from 'react';
import type { FlatView } from '../../core/drawing/views';
import type { Point } from '../../core/room/project';
import type { ThingKind } from '../state/selection';
import type { Session } from '../state/session';
import type { LabelContext } from './label-context';
import type { PlacedLabel } from './Labels';
import type { Palette } from './palette';

export interface Layer {
  /** Kinds of things that the hand chooses here: the drawing measures the chosen one. */
  readonly chooses: readonly ThingKind[];
  /** Tags and handles of its own, in room places; name plates of what they name are left out. */
  readonly labels?: (context: LabelContext) => readonly PlacedLabel[];
  /** What it draws in the room in space, in three. */
  readonly Scene?: ComponentType<SceneProps>;
  /** What it draws on a plan or section, as marks in SVG. */
  readonly Flat?: ComponentType<FlatProps>;
  /** Which loudspeaker stands out, and the ears that the rays go to, where that is not the room's own choice. */
  readonly marks?: (session: Session) => Marks;
  /** A seat says here that it is pointed at. */
  readonly pointsAtSeats?: boolean;
}

export interface FlatProps {
  readonly view: FlatView;
}

export interface SceneProps {
  readonly palette: Palette;
}

export interface Marks {
  /** Label of the channel of the loudspeaker that stands out. */
  readonly channel: string | null;
  /** Ears that the rays of the loudspeakers go to; null for the reference place. */
  readonly ears: Point | null;
}
