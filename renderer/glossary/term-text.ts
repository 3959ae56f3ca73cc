/** What is said of a word of the trade. */

export interface TermText {
  /** Plain words, with which it leads. */
  readonly plain: string;
  /** Word of the trade, in brackets after the plain words; left out where the plain words are it. */
  readonly term?: string;
  /** What it is, in a sentence or two. */
  readonly says: string;
  /** What is good, or how to read it. */
  readonly good?: string;
  /** Where that comes from. */
  readonly source: string;
  /** Other words that lead here when one searches. */
  readonly also?: string;
}
