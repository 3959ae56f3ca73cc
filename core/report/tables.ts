/**
 * The tables that go with the build: comma-separated text, one header line. Figures are in SI units; for
 * who builds in feet and inches, columns in those follow them.
 */

import type { Analysis } from '../analysis/analyze';
import { formatLength, METRES_PER_FOOT, type LengthUnits } from '../quantity/length';
import { modeKind } from '../modes/shell-modes';
import { escapedInJson, onOneLine } from '../room/fault';
import { finishLookup } from '../room/finishes';
import type { Project } from '../room/project';
import { speakerBox } from '../speakers/box';
import { published } from './published';

export interface Table {
  readonly name: string;
  readonly text: string;
}

type Cell = string | number | null;

/** Every table of `project`, analysis.json among them. */
export function tables(
  project: Project,
  analysis: Analysis,
  units: LengthUnits = 'metric',
): readonly Table[] {
  const isFeet = units === 'imperial';
  return [
    {
      name: 'placements.csv',
      text: csv(withFeet(placementRows(project, analysis), isFeet ? PLACEMENTS_IN_FEET : [])),
    },
    { name: 'modes.csv', text: csv(modeRows(analysis)) },
    { name: 'decay.csv', text: csv(withFeet(decayRows(analysis), isFeet ? DECAY_IN_FEET : [])) },
    {
      name: 'materials.csv',
      text: csv(withFeet(materialRows(project, analysis, units), isFeet ? MATERIALS_IN_FEET : [])),
    },
    {
      name: 'analysis.json',
      text: `${escapedInJson(JSON.stringify(published(analysis), null, 2))}\n`,
    },
  ];
}

/** A column of another, its name and its cells in feet and inches or square feet. */
interface FeetColumn {
  readonly of: string;
  readonly name: string;
  readonly cell: (value: string | number) => Cell;
}

const tape = (lengthM: number): string => formatLength(lengthM, 'imperial');

const inFeet = (of: string): FeetColumn => ({
  of,
  name: of.replace(/_m$/, '_ft_in'),
  // A box is three lengths in one cell.
  cell: (value) => String(value).split(' x ').map(Number).map(tape).join(' x '),
});

const inSquareFeet = (of: string): FeetColumn => ({
  of,
  name: of.replace(/_m2$/, '_sq_ft'),
  cell: (value) => round(Number(value) / METRES_PER_FOOT ** 2, 1),
});

const PLACEMENTS_IN_FEET = [
  'from_left_wall_m',
  'from_front_wall_m',
  'above_floor_m',
  'distance_m',
  'box_m',
].map(inFeet);
const DECAY_IN_FEET = ['absorption_m2', 'air_absorption_m2', 'objects_absorption_m2'].map(
  inSquareFeet,
);
const MATERIALS_IN_FEET = ['area_m2'].map(inSquareFeet);

/** `rows` with `columns` after their own. */
function withFeet(
  rows: readonly (readonly Cell[])[],
  columns: readonly FeetColumn[],
): readonly (readonly Cell[])[] {
  const [header = []] = rows;
  return rows.map((row, i) => [
    ...row,
    ...columns.map(({ of, name, cell }) => {
      if (i === 0) return name;
      const value = row[header.indexOf(of)] ?? null;
      return value === null ? null : cell(value);
    }),
  ]);
}

/** What is placed where, measured from the front left floor corner. */
function placementRows(project: Project, analysis: Analysis): readonly Cell[][] {
  return [
    [
      'what',
      'name',
      'from_left_wall_m',
      'from_front_wall_m',
      'above_floor_m',
      'azimuth_deg',
      'elevation_deg',
      'distance_m',
      'delay_ms',
      'level_db',
      'in_range',
      'held',
      'box_m',
    ],
    ...analysis.speakers.map((speaker) => [
      'loudspeaker',
      speaker.channel,
      ...speaker.position.map((at) => round(at, 3)),
      round(speaker.azimuthDeg, 1),
      round(speaker.elevationDeg, 1),
      round(speaker.distanceM, 3),
      round(speaker.delayMs, 2),
      round(speaker.levelDb, 1),
      speaker.inRange ? 'yes' : 'no',
      ...held(project, speaker.channel),
    ]),
    ...analysis.later.map((speaker) => [
      'loudspeaker for later',
      speaker.channel,
      ...speaker.position.map((at) => round(at, 3)),
      round(speaker.azimuthDeg, 1),
      round(speaker.elevationDeg, 1),
      round(speaker.distanceM, 3),
      null,
      null,
      speaker.inRange ? 'yes' : 'no',
      ...held(project, speaker.channel),
    ]),
    ...project.speakers.subwoofers.map((sub) => [
      'subwoofer',
      sub.id,
      ...sub.position.map((at) => round(at, 3)),
      ...Array.from({ length: 3 }, () => null),
      round(sub.delayMs ?? 0, 2),
      round(sub.levelDb ?? 0, 1),
      sub.inverted ? 'polarity reversed' : null,
      null,
      null,
    ]),
    ...analysis.seats.map((seat) => [
      'ears',
      `${seat.row} seat ${seat.seat}`,
      ...seat.position.map((at) => round(at, 3)),
      ...Array.from({ length: 8 }, () => null),
    ]),
  ];
}

/** How a loudspeaker is held, and its box as width x height x depth where that is stated. */
function held(project: Project, channel: string): readonly Cell[] {
  const placed = project.speakers.placed.find((speaker) => speaker.channel === channel);
  if (!placed) return [null, null];
  const box = placed.boxM ? placed.boxM.map((side) => round(side, 3)).join(' x ') : null;
  return [speakerBox(project, placed).mount, box];
}

function modeRows(analysis: Analysis): readonly Cell[][] {
  const { shell, shaped = [] } = analysis.modes;
  return [
    [
      'frequency_hz',
      'nx_width',
      'ny_length',
      'nz_height',
      'kind',
      'room',
      'shift_hz',
      'error_percent',
    ],
    ...shell.map((mode) => [
      round(mode.frequencyHz, 2),
      ...mode.order,
      mode.kind,
      'plain shell',
      null,
      0,
    ]),
    ...shaped.map((mode) => [
      round(mode.frequencyHz, 2),
      ...(mode.likeShell ?? [null, null, null]),
      mode.likeShell ? modeKind(mode.likeShell) : 'mixed',
      'as built',
      round(mode.shiftHz, 2),
      round(mode.errorPercent, 3),
    ]),
  ];
}

function decayRows(analysis: Analysis): readonly Cell[][] {
  return [
    [
      'octave_hz',
      'sabine_s',
      'eyring_s',
      'target_s',
      'low_s',
      'high_s',
      'absorption_m2',
      'air_absorption_m2',
      'mean_coefficient',
      'objects_absorption_m2',
      'millington_s',
      'fitzroy_s',
      'arau_puchades_s',
      'kuttruff_paths_s',
      'kuttruff_uneven_s',
      'eyring_least_s',
      'eyring_most_s',
    ],
    ...analysis.decay.bands.map((band) => [
      band.hz,
      ...[band.sabineS, band.eyringS, band.targetS, band.lowS, band.highS].map((s) => round(s, 3)),
      round(band.absorptionM2, 2),
      round(band.airAbsorptionM2, 3),
      round(band.meanCoefficient, 3),
      round(band.objectsM2, 2),
      round(band.methods.millington, 3),
      round(band.methods.fitzroy, 3),
      round(band.methods.arauPuchades, 3),
      round(band.methods.kuttruffPaths, 3),
      round(band.methods.kuttruffUneven, 3),
      round(band.coefficientBandS?.[0] ?? null, 3),
      round(band.coefficientBandS?.[1] ?? null, 3),
    ]),
  ];
}

function materialRows(project: Project, analysis: Analysis, units: LengthUnits): readonly Cell[][] {
  const lookup = finishLookup(project);
  return [
    ['face', 'finish', 'name', 'area_m2', 'source'],
    ...analysis.geometry.surfaces.map((surface) => [
      surface.face,
      surface.finish,
      lookup(surface.finish)?.names[units] ?? '',
      round(surface.areaM2, 3),
      lookup(surface.finish)?.sources[units] ?? '',
    ]),
  ];
}

function round(value: number | null, digits: number): number | null {
  return value === null ? null : Number(value.toFixed(digits));
}

/** What a spreadsheet may take for a formula: a sign at the start, of full width too, also after blanks. */
const FORMULA = /^\s*[=+\-@\uff1d\uff0b\uff0d\uff20]/;

/** RFC 4180 text, each row on one line; cells that a spreadsheet would take for a formula are led by an apostrophe. */
function csv(rows: readonly (readonly Cell[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}

function cellText(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const plain = onOneLine(cell);
  const safe = FORMULA.test(plain) ? `'${plain}` : plain;
  return /[",]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
