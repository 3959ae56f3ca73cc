/**
 * The lettering of a drawing on paper: the figures of its dimensions and the names of things, placed so
 * that none lies on another. Sizes are of the paper, so a scale is needed to know what place they take.
 */

import type { Measures } from '../quantity/measures';
import { isOpening } from '../room/patch-kinds';
import { FACE_NORMALS, patchSide } from '../room/faces';
import { SIDES, type Patch, type Point, type Project } from '../room/project';
import { screenBox } from './bodies';
import { shellDimensions } from './dimensions';
import {
  besideSpeaker,
  middleOf,
  onFace,
  patchMiddle,
  patchWord,
  rowLabelWish,
  screenLabelWish,
} from './label-places';
import { labelRequest, RANKS, type LabelWish } from './label-requests';
import type { Lettering, Mark, PaperPoint, PaperRect } from './marks';
import type { JudgedSpeakers } from './loudspeakers';
import { depthOf, onPaper } from './on-paper';
import { placeLabels, type LabelRequest, type PagePoint, type PageSize } from './place-labels';
import type { FlatView } from './views';
import { practice } from '../room/practice/practice';

/** Heights of lettering, mm: figures of the shell, and names. */
export const FIGURE_MM = practice('figure-lettering');
export const NAME_MM = practice('name-lettering');

/** Width of a letter over its height; wide scripts and signs take a whole square. */
const LETTER_WIDTH = 0.6;
const WIDE_FROM = 0x1100;
/** Around the letters, mm. */
const PAD_MM = 0.7;

/** What place a text takes on paper, mm. */
export function extentMm(text: string, sizeMm: number): PaperPoint {
  let letters = 0;
  for (const letter of text) {
    letters += (letter.codePointAt(0) ?? 0) >= WIDE_FROM ? 1 : LETTER_WIDTH;
  }
  return [letters * sizeMm + 2 * PAD_MM, sizeMm + 2 * PAD_MM];
}

interface Name extends LabelWish {
  readonly text: string;
  readonly sizeMm: number;
  readonly isFigure?: boolean;
  /** Along a line that runs up the paper. */
  readonly turned?: boolean;
  readonly isOff?: boolean;
}

/** The place on paper that a name takes, mm. */
function placeMm({ text, sizeMm, turned }: Omit<Name, 'at'>): PaperPoint {
  const [along, across] = extentMm(text, sizeMm);
  return turned ? [across, along] : [along, across];
}

/** Every name and figure of a view, before it has its place. */
function namesIn(
  view: FlatView,
  project: Project,
  judged: JudgedSpeakers,
  measures: Measures,
): readonly Name[] {
  const { room, seating, speakers, screen } = project;
  const frame = screenBox(project);
  const cutDepthM = view.looks.sign * view.cutAt(project);
  const isDrawn = (...places: readonly Point[]): boolean =>
    view.beforeCut === 'dashed' || places.some((place) => depthOf(view, place) > cutDepthM + 1e-4);
  const name = (text: string, wish: LabelWish): Name => ({ ...wish, text, sizeMm: NAME_MM });
  const dimensions = shellDimensions(view, project).map(({ side, from, to }): Name => ({
    at: middleOf(from, to),
    text: measures.length(room.size[side]),
    sizeMm: FIGURE_MM,
    isFigure: true,
    turned: SIDES[view.up.axis] === side,
  }));
  const rows = view.people
    ? seating.rows.flatMap((row, n) => {
        const wish = rowLabelWish(project, row, view.id);
        return wish ? [name(`Row ${n + 1} · ${measures.length(row.y)}`, wish)] : [];
      })
    : [];
  const boxes = judged.speakers
    .filter(({ position }) => isDrawn(position))
    .map(({ channel, position, azimuthDeg, inRange }): Name => {
      const short =
        judged.layout?.channels.find(({ label }) => label === channel)?.short ?? channel;
      const awayFrom = besideSpeaker(project, judged.listening, view.id, position);
      return {
        ...name(`${short} ${Math.round(azimuthDeg) || 0}°`, {
          at: position,
          awayFrom,
          mayShift: true,
        }),
        ...(inRange ? {} : { isOff: true }),
      };
    });
  const later = judged.later
    .filter(({ position }) => isDrawn(position))
    .map(({ short, position }) => name(`${short} later`, { at: position, mayShift: true }));
  const solids = room.solids
    .filter(({ min, max }) => isDrawn(min, max))
    .map(({ kind, min, max }) => name(kind, { at: middleOf(min, max), yields: true }));
  const isOnWallSeen = ({ face }: Patch): boolean =>
    view.beforeCut === 'dashed' || FACE_NORMALS[patchSide(face)].axis === view.looks.axis;
  const openings = room.patches
    .filter(isOpening)
    .filter(isOnWallSeen)
    .flatMap((patch) => {
      const at = onFace(room, patch.face, patchMiddle(patch));
      return at && isDrawn(at) ? [name(patchWord(patch), { at, yields: true })] : [];
    });
  const subs = speakers.subwoofers
    .filter(({ position }) => isDrawn(position))
    .map(({ id, position }) => name(id, { at: position, mayShift: true }));
  return [
    ...dimensions,
    ...rows,
    ...boxes,
    ...later,
    ...(isDrawn(frame.min, frame.max)
      ? [
          name(`Screen ${measures.length(screen.widthM)}`, {
            ...screenLabelWish(project, view.id),
            yields: true,
          }),
        ]
      : []),
    ...solids,
    ...openings,
    ...subs,
  ];
}

/** Lettering is placed in the pixels of a page at 96 to the inch. */
const PX_PER_MM = 96 / 25.4;

/** White space around the drawing in which lettering may stand, mm, and how much more it is given. */
const MARGIN_MM = 14;
const MORE_MM = 14;
const TRIES = 12;

export interface PlacedLettering {
  readonly marks: readonly Mark[];
  /** The picture that drawing and lettering fill. */
  readonly bounds: PaperRect;
}

/**
 * Lettering of a drawing that fills `drawn`, at 1 to `scale`. Where the names do not all find a place, the
 * white space around the drawing grows until they do.
 */
export function placedLettering(
  view: FlatView,
  project: Project,
  judged: JudgedSpeakers,
  measures: Measures,
  drawn: PaperRect,
  scale: number,
): PlacedLettering {
  const names = namesIn(view, project, judged, measures);
  const title = `${view.title} · 1:${scale} · ${view.note(project, measures)}`;
  const metresPerPx = scale / 1000 / PX_PER_MM;
  for (let attempt = 1; ; attempt++) {
    const marginM = ((MARGIN_MM + (attempt - 1) * MORE_MM) * scale) / 1000;
    const bounds: PaperRect = {
      min: [drawn.min[0] - marginM, drawn.min[1] - marginM],
      max: [drawn.max[0] + marginM, drawn.max[1] + marginM],
    };
    const picture: PageSize = {
      width: (bounds.max[0] - bounds.min[0]) / metresPerPx,
      height: (bounds.max[1] - bounds.min[1]) / metresPerPx,
    };
    const requests = names.map((name) => {
      const [width, height] = placeMm(name);
      return labelRequest(
        name,
        (place) => {
          const [x, y] = onPaper(view, place);
          return { x: (x - bounds.min[0]) / metresPerPx, y: (bounds.max[1] - y) / metresPerPx };
        },
        { width: width * PX_PER_MM, height: height * PX_PER_MM },
        picture,
      );
    });
    const places = placeLabels([...requests, titleRequest(title, picture)], picture);
    const missing = places.some((place, n) => !place && names[n]?.yields !== true);
    const toPaper = (at: PagePoint): PaperPoint => [
      bounds.min[0] + at.x * metresPerPx,
      bounds.max[1] - at.y * metresPerPx,
    ];
    if (missing && attempt < TRIES) continue;
    const marks = names.flatMap((name, n): readonly Mark[] => {
      const place = places[n];
      const wanted = requests[n]?.at;
      if (!place || !wanted) return [];
      const middle = toPaper(place);
      const leader = leaderOf(middle, held(toPaper(wanted), bounds), (LEAD_MM * scale) / 1000);
      return [...leader, lettering(name, middle, scale)];
    });
    const titleAt = places.at(-1);
    const titled = titleAt
      ? [lettering({ text: title, sizeMm: NAME_MM }, toPaper(titleAt), scale)]
      : [];
    // Leaders lie under all lettering.
    return { bounds, marks: [...marks, ...titled].sort((a, b) => order(a) - order(b)) };
  }
}

/** The title, the scale and where the room is cut, under the drawing at the left. */
function titleRequest(title: string, picture: PageSize): LabelRequest {
  const [width, height] = extentMm(title, NAME_MM).map((extent) => extent * PX_PER_MM);
  return {
    at: { x: 0, y: picture.height },
    size: { width: width ?? 0, height: height ?? 0 },
    rank: RANKS.fixed,
  };
}

const order = ({ kind }: Mark): number => (kind === 'text' ? 1 : 0);

/** Lettering that stands farther than this from where it belongs is joined to it by a line, mm. */
const LEAD_MM = 5;

/** The place, or the nearest to it in the picture. */
const held = ([x, y]: PaperPoint, { min, max }: PaperRect): PaperPoint => [
  Math.min(Math.max(x, min[0]), max[0]),
  Math.min(Math.max(y, min[1]), max[1]),
];

function leaderOf(middle: PaperPoint, wanted: PaperPoint, leastM: number): readonly Mark[] {
  if (Math.hypot(wanted[0] - middle[0], wanted[1] - middle[1]) <= leastM) return [];
  return [
    {
      kind: 'lines',
      layer: 'lettering',
      paths: [[middle, wanted]],
      tone: 'ink-soft',
      weight: 'light',
    },
  ];
}

function lettering(name: Omit<Name, 'at'>, middle: PaperPoint, scale: number): Lettering {
  const [width, height] = placeMm(name);
  return {
    kind: 'text',
    layer: name.isFigure ? 'dimensions' : 'lettering',
    middle,
    text: name.text,
    sizeM: (name.sizeMm * scale) / 1000,
    extentM: [(width * scale) / 1000, (height * scale) / 1000],
    tone: name.isOff ? 'accent' : 'ink',
    ...(name.isFigure ? { bold: true } : {}),
    ...(name.turned ? { turned: true } : {}),
  };
}
