/** A drawing as SVG text: a part of a page with its lines in millimetres of the room, or a whole picture. */

import { escapedInXml } from './xml';
import { hatchLines } from './hatch';
import {
  strokesOfDimension,
  WEIGHTS_MM,
  type Look,
  type Mark,
  type PaperPoint,
  type Tone,
  type Weight,
} from './marks';
import type { Sketch } from './sketch';

/** How marks become SVG. */
export interface SvgLook {
  /** Units of the picture in a metre of the paper's plane. */
  readonly unitsPerM: number;
  readonly color: (tone: Tone) => string;
  readonly widthOf: (weight: Weight) => number;
  /** Dash and gap, in the unit of the widths. */
  readonly dash: readonly [number, number];
  /** Line widths stay as they are however the picture is zoomed. */
  readonly fixedWidths: boolean;
  /** Lettering and figures of dimensions are left out: the page writes them itself. */
  readonly withoutText: boolean;
}

/** Marks in their order; lines that follow each other and look alike become one path. */
export function svgOf(marks: readonly Mark[], look: SvgLook): string {
  const out: string[] = [];
  let open: { readonly key: string; readonly paths: string[] } | null = null;
  const close = (): void => {
    if (open) out.push(`<path d="${open.paths.join('')}" ${open.key}/>`);
    open = null;
  };
  const draw = (
    layer: string,
    stroke: Look,
    paths: readonly (readonly PaperPoint[])[],
    closed: boolean,
  ): void => {
    const key = `data-layer="${layer}" ${strokeOf(stroke, look)}`;
    if (open?.key !== key) {
      close();
      open = { key, paths: [] };
    }
    for (const path of paths) open.paths.push(pathOf(path, closed, look.unitsPerM));
  };
  for (const mark of marks) {
    switch (mark.kind) {
      case 'lines':
        draw(mark.layer, mark, mark.paths, mark.closed ?? false);
        break;
      case 'hatch':
        draw(mark.layer, { tone: mark.tone, weight: 'light' }, hatchLines(mark.rect), false);
        break;
      case 'dimension':
        draw(mark.layer, { tone: mark.tone, weight: 'light' }, strokesOfDimension(mark), false);
        break;
      case 'fill':
        close();
        out.push(
          `<path data-layer="${mark.layer}" d="${pathOf(mark.points, true, look.unitsPerM)}" fill="${look.color(mark.tone)}"${opacityOf(mark.opacity)}/>`,
        );
        break;
      case 'circle': {
        close();
        const { centre, radiusM, fill, stroke, layer } = mark;
        const [x, y] = [centre[0], -centre[1]].map((at) => figure(at * look.unitsPerM));
        out.push(
          `<circle data-layer="${layer}" cx="${x}" cy="${y}" r="${figure(radiusM * look.unitsPerM)}" ${stroke ? strokeOf(stroke, look, fill) : `fill="${fill ? look.color(fill) : 'none'}"`}/>`,
        );
        break;
      }
      case 'text':
        if (look.withoutText) break;
        close();
        out.push(textOf(mark, look));
        break;
    }
  }
  close();
  return out.join('\n');
}

/** A hundredth of a unit is finer than any line. */
const figure = (value: number): string => String(Math.round(value * 100) / 100 || 0);

function pathOf(points: readonly PaperPoint[], closed: boolean, unitsPerM: number): string {
  const text = points
    .map(([x, y], n) => `${n === 0 ? 'M' : 'L'}${figure(x * unitsPerM)} ${figure(-y * unitsPerM)}`)
    .join('');
  return closed ? `${text}Z` : text;
}

const opacityOf = (opacity: number | undefined): string =>
  opacity === undefined || opacity >= 1 ? '' : ` opacity="${opacity}"`;

function strokeOf(
  { tone, weight, dashed, opacity }: Look,
  look: SvgLook,
  fill?: Tone | null,
): string {
  return [
    `fill="${fill ? look.color(fill) : 'none'}"`,
    `stroke="${look.color(tone)}"`,
    `stroke-width="${look.widthOf(weight)}"`,
    'stroke-linejoin="round"',
    ...(dashed ? [`stroke-dasharray="${look.dash.join(' ')}"`] : []),
    ...(opacity !== undefined && opacity < 1 ? [`opacity="${opacity}"`] : []),
    ...(look.fixedWidths ? ['vector-effect="non-scaling-stroke"'] : []),
  ].join(' ');
}

/** Letters' middle above their base line, over their size. */
const RISE = 0.35;

function textOf(mark: Extract<Mark, { kind: 'text' }>, look: SvgLook): string {
  const { unitsPerM, color } = look;
  const [x, y] = [mark.middle[0] * unitsPerM, -mark.middle[1] * unitsPerM];
  const [width, height] = mark.extentM.map((extent) => extent * unitsPerM);
  const size = mark.sizeM * unitsPerM;
  return [
    `<rect data-layer="${mark.layer}" x="${figure(x - (width ?? 0) / 2)}" y="${figure(y - (height ?? 0) / 2)}" width="${figure(width ?? 0)}" height="${figure(height ?? 0)}" fill="${color('raised')}"/>`,
    `<text data-layer="${mark.layer}" x="${figure(x)}" y="${figure(y + RISE * size)}" font-size="${figure(size)}" text-anchor="middle" fill="${color(mark.tone)}"${mark.bold ? ' font-weight="600"' : ''}${mark.turned ? ` transform="rotate(-90 ${figure(x)} ${figure(y)})"` : ''}>${escapedInXml(mark.text)}</text>`,
  ].join('\n');
}

/** Ink on white, as it is printed. */
export const PAPER_COLORS: Readonly<Record<Tone, string>> = {
  raised: '#ffffff',
  ink: '#1b2a35',
  'ink-soft': '#4a5963',
  hairline: '#b9b8ac',
  accent: '#a8391a',
  wall: '#f6f4ee',
  'wall-side': '#f2efe7',
  floor: '#efece3',
  solid: '#dcd7c9',
};

/** Dash and gap on paper, mm. */
const DASH_MM = [1.5, 1] as const;

/** A picture by itself, as large as it prints: 1 to `sketch.scale`, in millimetres, on white. */
export function svgPicture(sketch: Sketch, title: string): string {
  const { bounds, scale, marks } = sketch;
  const unitsPerM = 1000 / scale;
  const [left, top] = [bounds.min[0] * unitsPerM, -bounds.max[1] * unitsPerM];
  const width = (bounds.max[0] - bounds.min[0]) * unitsPerM;
  const height = (bounds.max[1] - bounds.min[1]) * unitsPerM;
  const box = [left, top, width, height].map(figure);
  const body = svgOf(marks, {
    unitsPerM,
    color: (tone) => PAPER_COLORS[tone],
    widthOf: (weight) => WEIGHTS_MM[weight],
    dash: DASH_MM,
    fixedWidths: false,
    withoutText: false,
  });
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${figure(width)}mm" height="${figure(height)}mm" viewBox="${box.join(' ')}" font-family="'Barlow Semi Condensed', 'Arial Narrow', sans-serif">`,
    `<title>${escapedInXml(title)}</title>`,
    `<rect x="${box[0]}" y="${box[1]}" width="${box[2]}" height="${box[3]}" fill="${PAPER_COLORS.raised}"/>`,
    body,
    '</svg>',
    '',
  ].join('\n');
}
