/** A figure with its sign: `+1.4`, `−0.8`, with a true minus. */
export function signed(value: number, digits = 1): string {
  return `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(digits)}`;
}

/** The same without a plus. */
export function minused(value: number, digits = 1): string {
  return `${value < 0 ? '−' : ''}${Math.abs(value).toFixed(digits)}`;
}
