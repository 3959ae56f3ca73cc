/** A view of a room as a drawing: every line, fill, hatch, dimension and name, the farthest first. */

import type { Measures } from '../quantity/measures';
import { METRES_PER_FOOT } from '../quantity/length';
import type { Point, Project } from '../room/project';
import { subwooferBox } from '../scene/subwoofer-box';
import { judgeSpeakers } from '../speakers/judge';
import { boxBody, drawnBodies, referenceMarks, screenBox, seatBodies, solidBody } from './bodies';
import { shellDimensionMarks } from './dimensions';
import { groundMarks, shellMarks } from './ground';
import { placedLettering } from './lettering';
import { aimMarks, loudspeakerBodies, rayMarks, type JudgedSpeakers } from './loudspeakers';
import { around, reachOf, type Mark, type PaperRect } from './marks';
import { linesOnPaper } from './on-paper';
import { drawnPatches } from './patches';
import { windowArcs } from './space-lines';
import type { FlatView } from './views';

/** What a drawing shows besides the room as it is. */
export interface SketchWants {
  readonly measures: Measures;
  /** Of the room, where it is at hand. */
  readonly judged?: JudgedSpeakers;
  /** Ears that the rays go to; the reference place's where it is not given. */
  readonly hearing?: Point | null;
  /** Channel of the chosen loudspeaker, and id of the chosen patch. */
  readonly channel?: string | null;
  readonly patch?: string | null;
  /** The layout's windows around the ears, and where the chosen loudspeaker looks. */
  readonly windows?: boolean;
  /** Something is painted under the drawing: what would hide it is drawn without its fill. */
  readonly painted?: boolean;
}

export interface Drawn {
  /** What lies under everything, also under what is painted. */
  readonly ground: readonly Mark[];
  readonly marks: readonly Mark[];
}

/** The room in a view, without its lettering. */
export function drawRoom(view: FlatView, project: Project, wants: SketchWants): Drawn {
  const { measures, painted = false, channel = null, patch = null, windows = false } = wants;
  const judged = wants.judged ?? judgeSpeakers(project);
  const heard = { judged, hearing: wants.hearing ?? null, chosen: channel };
  const cutM = view.cutAt(project);
  const patches = drawnPatches(view, project, cutM, patch);
  const equipment = { top: 'raised', side: 'solid' } as const;
  const bodies = [
    ...project.room.solids.map((solid) => solidBody(view, cutM, solid, painted)),
    boxBody(view, 'screen', screenBox(project), { top: 'raised', side: 'raised' }),
    ...(view.people ? seatBodies(view, project) : []),
    ...project.speakers.subwoofers.map((sub) =>
      boxBody(view, 'subwoofers', subwooferBox(project, sub).box, equipment),
    ),
    ...loudspeakerBodies(view, project, heard),
    ...patches.bodies,
  ];
  const ears = judged.listening;
  const arcs = ears && judged.layout && windows ? windowArcs(judged.layout, ears) : [];
  const gridM = measures.units === 'metric' ? 0.5 : METRES_PER_FOOT;
  return {
    ground: groundMarks(view, project, gridM),
    marks: [
      ...drawnBodies(view, cutM, bodies),
      ...(view.people ? [...rayMarks(view, heard), ...referenceMarks(view, project)] : []),
      ...aimMarks(view, project, channel),
      ...linesOnPaper(view, 'rays', arcs, { tone: 'ink', weight: 'seen' }),
      ...shellMarks(view, project),
      ...patches.over,
      ...shellDimensionMarks(view, project, measures),
    ],
  };
}

export interface Sketch {
  readonly view: FlatView;
  /** 1 to this many. */
  readonly scale: number;
  /** The picture, m on the paper's plane. */
  readonly bounds: PaperRect;
  readonly marks: readonly Mark[];
}

/** The room in a view as it stands on paper at 1 to `scale`, with its lettering. */
export function sketch(
  project: Project,
  view: FlatView,
  scale: number,
  wants: SketchWants,
): Sketch {
  const judged = wants.judged ?? judgeSpeakers(project);
  const { ground, marks } = drawRoom(view, project, { ...wants, judged });
  const drawn = [...ground, ...marks];
  const reach = around(drawn.flatMap(reachOf)) ?? { min: [0, 0], max: [1, 1] };
  const lettering = placedLettering(view, project, judged, wants.measures, reach, scale);
  return { view, scale, bounds: lettering.bounds, marks: [...drawn, ...lettering.marks] };
}
