/** One figure of practice. */

export interface Figure {
  readonly value: unknown;
  /** `share` of something, or `number` where it has none. */
  readonly unit: string;
  /** A fact of the trade, or what this program chose. */
  readonly source: 'common practice' | 'our own convention';
  /** A standard that the trade follows in this. */
  readonly after?: string;
  /** What the figure is, or is for. */
  readonly what: string;
}
