/** The day at the person's own place, as `2026-03-09`. */
export function localDate(at: Date): string {
  const two = (part: number): string => String(part).padStart(2, '0');
  return [at.getFullYear(), two(at.getMonth() + 1), two(at.getDate())].join('-');
}
