/** The room itself: in space, as a plan and in two sections. Here things are changed by hand. */

import { useCallback, useMemo, useRef, useState, type ReactElement } from 'react';
import { shellDimensions } from '../../core/drawing/dimensions';
import { FLAT_VIEWS } from '../../core/drawing/views';
import type { Painting } from '../pressure/painting';
import { chosenThing, selectedId } from '../state/selection';
import { projectOf, useSession } from '../state/session';
import { dimensionLines, type NearSides } from './dimension-lines';
import { drawingLabels } from './drawing-labels';
import { Flat } from './flat/Flat';
import type { LabelContext } from './label-context';
import type { Layer } from './layer';
import { placeDimensions } from './place-dimensions';
import { placeFigures } from './place-figures';
import { Space } from './Space';
import type { Stage } from './stage';
import { useKeptFocus } from './use-kept-focus';
import { viewName } from './view-names';

export interface DrawingProps {
  readonly painting: Painting | null;
  /** What the open subject adds. */
  readonly layer: Layer;
}

export function Drawing({ painting, layer: added }: DrawingProps): ReactElement {
  const session = useSession();
  const { analysis, units, view, refit, selected, findingId, setView, pointSeat } = session;
  const project = projectOf(session);
  const [held, hold] = useState(false);
  const [near, setNear] = useState<NearSides>({ x: 'right', y: 'back' });
  const frame = useRef<HTMLDivElement>(null);
  const stage = useRef<Stage | null>(null);
  useKeptFocus(frame, view);

  const flat = view === 'room' ? null : FLAT_VIEWS[view];
  const place = analysis.findings.find((finding) => finding.id === findingId)?.place ?? null;
  const dimensions = useMemo(
    () => (flat ? shellDimensions(flat, project) : dimensionLines(project.room.size, near)),
    [flat, project, near],
  );
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
  const measured = placeDimensions(project, chosenThing(project, selected, added.chooses), view);

  // How often it was drawn stands on the element, for those who wait for it.
  const frames = useRef(0);
  const onDrawn = useCallback(() => {
    frames.current += 1;
    if (frame.current) frame.current.dataset['frames'] = String(frames.current);
  }, []);
  const shared = {
    label: `Drawing of the room, ${viewName(view)}`,
    project,
    analysis,
    units,
    added,
    marks: added.marks?.(session) ?? { channel: selectedId(selected, 'speaker'), ears: null },
    patch: added.chooses.includes('patch') ? selectedId(selected, 'patch') : null,
    painting,
    measured,
    onPointSeat: added.pointsAtSeats ? pointSeat : null,
    labels: [
      ...placeFigures(measured),
      ...drawingLabels(context),
      ...(added.labels?.(context) ?? []),
    ],
    stage,
    held,
    refit,
    onHome: () => setView(view),
    onDrawn,
  };
  return (
    <div className="drawing" ref={frame} data-view={view}>
      {flat ? (
        <Flat {...shared} view={flat} />
      ) : (
        <Space {...shared} dimensions={dimensions} near={near} onNear={setNear} />
      )}
    </div>
  );
}
