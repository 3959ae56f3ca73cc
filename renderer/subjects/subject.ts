/**
 * A subject of the window: one concern of the room, with all that it shows and asks. It is a folder beside
 * this file and a line in `registry.ts`; nothing else knows it by its name.
 */

import type { ComponentType } from 'react';
import type { FindingPlace, Remedy, Subject as ToldOf } from '../../core/findings/finding';
import type { Layer } from '../drawing/layer';

export interface Subject {
  /** Also the end of the class of its evidence: `evidence-shell`. */
  readonly id: string;
  readonly title: string;
  /** Of what it is, in a few words. */
  readonly about: string;
  readonly Inputs: ComponentType;
  readonly Evidence: ComponentType;
  readonly layer: Layer;
  /** Subjects of findings that are shown under it. */
  readonly tells: readonly ToldOf[];
  /** Stands in place of an empty list of findings, where that may mean that something is still unknown. */
  readonly NothingFound?: ComponentType;
  /** Opens what a finding speaks of, once its thing is chosen and the subject is open. */
  readonly goTo?: (place: FindingPlace) => void;
  /** Searches that a remedy may open, by its name for them. */
  readonly searches?: Partial<Readonly<Record<NonNullable<Remedy['opens']>, () => void>>>;
  /** Always there and draws nothing: keeps up to date what the subject and its findings need. */
  readonly Follower?: ComponentType<{ readonly isOpen: boolean }>;
}
