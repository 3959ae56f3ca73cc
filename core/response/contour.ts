/** Lines of equal value on a sampled plane, by marching squares. */

/** A stretch of line [u0, v0, u1, v1], in the coordinates of the samples. */
export type Stretch = readonly [number, number, number, number];

/**
 * Where `values` (us x vs, the second axis fastest) pass through `level`, straight across each square of
 * four samples. Squares with a sample that is not a number have no line. Where all four sides are
 * crossed, the value in the middle says which corners hang together.
 */
export function contour(
  values: Float32Array,
  us: Float64Array,
  vs: Float64Array,
  level: number,
): readonly Stretch[] {
  const found: Stretch[] = [];
  const wide = vs.length;
  for (let i = 0; i + 1 < us.length; i++)
    for (let j = 0, n = i * wide; j + 1 < wide; j++, n++) {
      const a = (values[n] ?? NaN) - level;
      const b = (values[n + wide] ?? NaN) - level;
      const c = (values[n + wide + 1] ?? NaN) - level;
      const d = (values[n + 1] ?? NaN) - level;
      // Most squares are all above or all below; comparing with what is no number is neither.
      if (a >= 0 ? b >= 0 && c >= 0 && d >= 0 : b < 0 && c < 0 && d < 0) continue;
      if (!Number.isFinite(a + b + c + d)) continue;
      const [u0, u1, v0, v1] = [us[i]!, us[i + 1]!, vs[j]!, vs[j + 1]!];
      const share = (from: number, to: number): number => from / (from - to);
      const crossings: (readonly [number, number])[] = [];
      if (a >= 0 !== b >= 0) crossings.push([u0 + (u1 - u0) * share(a, b), v0]);
      if (b >= 0 !== c >= 0) crossings.push([u1, v0 + (v1 - v0) * share(b, c)]);
      if (c >= 0 !== d >= 0) crossings.push([u0 + (u1 - u0) * share(d, c), v1]);
      if (d >= 0 !== a >= 0) crossings.push([u0, v0 + (v1 - v0) * share(a, d)]);
      // In the order bottom, right, top, left: a saddle is parted around the corners that stand alone.
      const pairs =
        crossings.length === 4 && a + b + c + d >= 0 === a >= 0
          ? ([
              [0, 1],
              [2, 3],
            ] as const)
          : ([
              [0, crossings.length - 1],
              [1, 2],
            ] as const);
      for (const [from, to] of pairs) {
        const [p, q] = [crossings[from], crossings[to]];
        if (p && q && from !== to && (crossings.length === 4 || from === 0)) {
          found.push([...p, ...q]);
        }
      }
    }
  return found;
}
