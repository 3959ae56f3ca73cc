/** What the kinds of patches are: how they are called, and what the program may do with them. */

import type { Patch, PatchKind } from './project';

interface KindOfPatch {
  /** As a sentence calls it. */
  readonly name: string;
  /** Part of the building, and not hung for the sound. */
  readonly isOpening: boolean;
  /** A way into the room: it stays at its height, and the floor before it stays clear. */
  readonly isWay: boolean;
  /** Hung for the sound: a remedy may give it another finish or another size. */
  readonly isTreatment: boolean;
  /** Drawn with the swing of a leaf, where it swings. */
  readonly hasLeaf: boolean;
  /** What is drawn in it where it is cut: the glass of a window, the edges of what one walks through. */
  readonly onEdge: 'pane' | 'sill' | null;
}

export const PATCH_KIND: Readonly<Record<PatchKind, KindOfPatch>> = {
  door: {
    name: 'door',
    isOpening: true,
    isWay: true,
    isTreatment: false,
    hasLeaf: true,
    onEdge: null,
  },
  window: {
    name: 'window',
    isOpening: true,
    isWay: false,
    isTreatment: false,
    hasLeaf: false,
    onEdge: 'pane',
  },
  /** A way through a wall without a door. */
  passage: {
    name: 'passage',
    isOpening: true,
    isWay: true,
    isTreatment: false,
    hasLeaf: false,
    onEdge: 'sill',
  },
  /** The cloth of a picture that hangs there. */
  screen: {
    name: 'screen',
    isOpening: false,
    isWay: false,
    isTreatment: false,
    hasLeaf: false,
    onEdge: null,
  },
  panel: {
    name: 'panel',
    isOpening: false,
    isWay: false,
    isTreatment: true,
    hasLeaf: false,
    onEdge: null,
  },
  /** What is none of these, a rug or a curtain say, and what the file does not say. */
  other: {
    name: 'covering',
    isOpening: false,
    isWay: false,
    isTreatment: false,
    hasLeaf: false,
    onEdge: null,
  },
};

/** True for what is part of the building. */
export const isOpening = ({ kind }: Patch): boolean => PATCH_KIND[kind].isOpening;

/** True for what people come in and go out by. */
export const isWay = ({ kind }: Patch): boolean => PATCH_KIND[kind].isWay;

/** True for what hangs there for the sound, so that a remedy may change it. */
export const isTreatment = ({ kind }: Patch): boolean => PATCH_KIND[kind].isTreatment;
