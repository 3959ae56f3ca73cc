/**
 * What a row of results shows in the drawing before anybody takes it: the room itself and its history
 * stay as they are. It shows while the row has the focus; Escape, or leaving the row, ends it.
 */

import type { FocusEvent, KeyboardEvent } from 'react';
import { create } from 'zustand';
import type { ShellSize } from '../../core/room/project';
import type { Box } from '../../core/scene/box';
import { onOtherRoom } from './session';

export type Preview =
  | { readonly kind: 'subwoofers'; readonly boxes: readonly Box[] }
  | { readonly kind: 'size'; readonly size: ShellSize };

export interface PreviewStore {
  readonly preview: Preview | null;
  /** Row that it is of. */
  readonly row: string | null;
  readonly show: (row: string, preview: Preview) => void;
  readonly end: () => void;
}

export const usePreview = create<PreviewStore>((set) => ({
  preview: null,
  row: null,
  show: (row, preview) => set({ row, preview }),
  end: () => set({ row: null, preview: null }),
}));

onOtherRoom(() => usePreview.getState().end());

export interface PreviewRowProps {
  readonly onFocus: () => void;
  readonly onBlur: (event: FocusEvent<HTMLElement>) => void;
  readonly onKeyDown: (event: KeyboardEvent<HTMLElement>) => void;
}

/** For the row: shows `preview` while the focus is anywhere in it. */
export function previewRow(row: string, preview: Preview): PreviewRowProps {
  const store = usePreview.getState;
  return {
    onFocus: () => store().show(row, preview),
    onBlur: ({ currentTarget, relatedTarget }) => {
      if (!currentTarget.contains(relatedTarget)) store().end();
    },
    onKeyDown: (event) => {
      if (event.key !== 'Escape' || store().row !== row) return;
      event.stopPropagation();
      store().end();
    },
  };
}
