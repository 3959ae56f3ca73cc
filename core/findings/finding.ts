/** A finding: what is wrong, where, by how much, says who, and what to try. */

import type { Edit } from '../room/edits';
import type { Point } from '../room/project';

export type Severity = 'fault' | 'warning' | 'note';

/** Subjects in the order in which a room is built. */
export const SUBJECTS = [
  'shell',
  'fittings',
  'seats',
  'picture',
  'speakers',
  'bass',
  'decay',
] as const;
export type Subject = (typeof SUBJECTS)[number];

export interface Remedy {
  readonly text: string;
  /** Present where the program can make the change itself. */
  readonly edit?: Edit;
  /** Present where a search finds the way, which takes a while: the window starts it. */
  readonly opens?: 'subwoofer-search';
}

/** What the drawing shows when the finding is chosen. */
export type FindingPlace =
  | { readonly kind: 'side'; readonly side: 'width' | 'length' | 'height' }
  | { readonly kind: 'speaker'; readonly channel: string }
  | { readonly kind: 'subwoofer'; readonly id: string }
  | {
      readonly kind: 'reflection';
      readonly channel: string;
      /** A shell face, or `solid-id:face`. */
      readonly face: string;
      readonly at: Point;
    }
  | { readonly kind: 'row'; readonly row: string }
  | { readonly kind: 'solid'; readonly id: string }
  | { readonly kind: 'screen' }
  | { readonly kind: 'band'; readonly hz: number }
  | { readonly kind: 'span'; readonly fromHz: number; readonly toHz: number };

/**
 * A finding as a watch makes it. Its remedies are what to try; which of them lead home is found out
 * only when somebody asks (`lead-home.ts`), and a function among them is called only then.
 */
export interface Draft extends Omit<Finding, 'remedies'> {
  readonly remedies: readonly Remedy[] | (() => readonly Remedy[]);
  /** What to do where no remedy is left. */
  readonly otherwise?: string;
}

export interface Finding {
  /** Stable while the matter is the same one, for example `speaker-range:M+110`. */
  readonly id: string;
  readonly severity: Severity;
  readonly subject: Subject;
  /** The place in words. */
  readonly where: string;
  readonly message: string;
  /** What the value is, in a few words, for example `widest gap`; empty only where there is no value. */
  readonly figureName: string;
  readonly value: number | null;
  readonly limit: number | null;
  /** Unit of value and limit: `m`, `Hz`, `s`, `deg`, `dB`; empty for plain numbers. */
  readonly unit: string;
  readonly source: string;
  /** Where it can hurt someone: what to heed and whom to ask. */
  readonly caution?: string;
  /** Tried out when it is first read, which takes some milliseconds for each. */
  readonly remedies: readonly Remedy[];
  readonly place?: FindingPlace;
}
