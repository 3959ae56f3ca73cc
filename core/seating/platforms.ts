/**
 * Platforms that can be built: joists on edge under sheathing, one tier on another. The height of a
 * platform is always one of these sums. Sizes in metres.
 */

import { practice } from '../room/practice/practice';

export interface Lumber {
  readonly name: string;
  /** The wider side, which stands upright in a joist on edge. */
  readonly widthM: number;
  readonly thicknessM: number;
}

export interface Sheet {
  readonly name: string;
  readonly thicknessM: number;
}

export interface PlatformStock {
  readonly lumber: readonly Lumber[];
  readonly sheets: readonly Sheet[];
}

const INCH = 0.0254;
const nominal = (name: string, widthIn: number): Lumber => ({
  name,
  widthM: widthIn * INCH,
  thicknessM: practice('lumber-thickness') * INCH,
});

/** North American nominal lumber with its actual sizes, and floor sheathing. */
export const NOMINAL_STOCK: PlatformStock = {
  lumber: Object.entries(practice('lumber-widths')).map(([name, widthIn]) =>
    nominal(name, widthIn),
  ),
  sheets: [{ name: '3/4 in plywood', thicknessM: practice('plywood-thickness') * INCH }],
};

const timber = (widthMm: number): Lumber => ({
  name: `${practice('timber-thickness')} x ${widthMm} mm`,
  widthM: widthMm / 1000,
  thicknessM: practice('timber-thickness') / 1000,
});

/** Planed construction timber of the usual metric widths and floor board. */
export const METRIC_STOCK: PlatformStock = {
  lumber: practice('timber-widths').map(timber),
  sheets: [
    {
      name: `${practice('floor-board-thickness')} mm floor board`,
      thicknessM: practice('floor-board-thickness') / 1000,
    },
  ],
};

export interface Tier {
  readonly lumber: Lumber;
  readonly sheet: Sheet;
}

export interface PlatformBuild {
  readonly heightM: number;
  /** From the floor up; none for a row that stands on the floor itself. */
  readonly tiers: readonly Tier[];
}

/** Tiers that are built on one another at most. */
export const MOST_TIERS = practice('most-tiers');
/** Heights closer than this are one, m. */
const SAME_M = 0.0005;

/**
 * Heights that can be built, from the bare floor (0) up to `mostM`, rising; where several builds come
 * to one height, that with the fewest tiers.
 */
export function buildableHeights(
  { lumber, sheets }: PlatformStock,
  mostM: number,
): readonly PlatformBuild[] {
  const tiers = lumber.flatMap((board) => sheets.map((sheet): Tier => ({ lumber: board, sheet })));
  const heightOf = ({ lumber: board, sheet }: Tier): number => board.widthM + sheet.thicknessM;
  let last: readonly PlatformBuild[] = [{ heightM: 0, tiers: [] }];
  const all: PlatformBuild[] = [...last];
  for (let count = 1; count <= MOST_TIERS; count++) {
    // The lower tier is no lower than the one on it, so that no two builds differ in order alone.
    last = last.flatMap((build) =>
      tiers
        .filter((tier) => heightOf(tier) <= heightOf(build.tiers.at(-1) ?? tier) + SAME_M)
        .map((tier) => ({
          heightM: build.heightM + heightOf(tier),
          tiers: [...build.tiers, tier],
        }))
        .filter(({ heightM }) => heightM <= mostM + SAME_M),
    );
    all.push(...last);
  }
  const rising = all.sort((a, b) =>
    Math.abs(a.heightM - b.heightM) < SAME_M
      ? a.tiers.length - b.tiers.length
      : a.heightM - b.heightM,
  );
  return rising.filter(
    ({ heightM }, n) => n === 0 || heightM - (rising[n - 1]?.heightM ?? -1) >= SAME_M,
  );
}
