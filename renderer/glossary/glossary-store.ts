/** Whether the glossary is open, and at which word. */

import { create } from 'zustand';
import type { TermId } from './terms';

interface Glossary {
  readonly open: boolean;
  /** Word to begin at; null for the top. */
  readonly at: TermId | null;
  readonly show: (at?: TermId) => void;
  readonly close: () => void;
}

export const useGlossary = create<Glossary>((set) => ({
  open: false,
  at: null,
  show: (at) => set({ open: true, at: at ?? null }),
  close: () => set({ open: false }),
}));
