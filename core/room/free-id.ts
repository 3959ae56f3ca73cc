/** `name-1`, or the next number that none of `taken` has. */
export function freeId(name: string, taken: Iterable<string>): string {
  const known = new Set(taken);
  for (let n = 1; ; n++) if (!known.has(`${name}-${n}`)) return `${name}-${n}`;
}
