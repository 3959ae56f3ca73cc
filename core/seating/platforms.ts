/**
 * Platforms that can be built: joists on edge under sheathing, one tier on another. The height of a
 * platform is always one of these sums. Sizes in metres.
 */

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
  thicknessM: 1.5 * INCH,
});

/** North American nominal lumber with its actual sizes, and floor sheathing (common practice). */
export const NOMINAL_STOCK: PlatformStock = {
  lumber: [
    nominal('2x4', 3.5),
    nominal('2x6', 5.5),
    nominal('2x8', 7.25),
    nominal('2x10', 9.25),
    nominal('2x12', 11.25),
  ],
  sheets: [{ name: '3/4 in plywood', thicknessM: 0.75 * INCH }],
};

const timber = (widthMm: number): Lumber => ({
  name: `45 x ${widthMm} mm`,
  widthM: widthMm / 1000,
  thicknessM: 0.045,
});

/** Planed construction timber of the usual metric widths and floor board (common practice). */
export const METRIC_STOCK: PlatformStock = {
  lumber: [95, 120, 145, 170, 195, 220].map(timber),
  sheets: [{ name: '22 mm floor board', thicknessM: 0.022 }],
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

/** Tiers that are built on one another at most (our own convention). */
export const MOST_TIERS = 3;
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
