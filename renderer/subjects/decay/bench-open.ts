/** Whether the absorber bench stands open in place of the inputs of decay. A matter of the window alone. */

import { create } from 'zustand';

export interface BenchOpen {
  readonly open: boolean;
  readonly setOpen: (open: boolean) => void;
}

export const useBenchOpen = create<BenchOpen>((set) => ({
  open: false,
  setOpen: (open) => set({ open }),
}));
