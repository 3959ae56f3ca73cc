/** Printing: the sheet keeps its measures on paper, in ink on white whatever the window looks like. */

import { create } from 'zustand';
import { useSession } from './session';
import { showAppearance } from './preferences';

/** Inside of A4 across with margins of 10 mm, in CSS pixels. */
const PAPER_WIDTH_PX = 1046;
const PAPER_HEIGHT_PX = 715;
const REDRAW_MS = 200;

/** Whether the sheet is on its way to paper, which shows what is folded away on the screen. */
const usePaper = create<{ readonly isPrinting: boolean }>(() => ({ isPrinting: false }));

export const usePrinting = (): boolean => usePaper(({ isPrinting }) => isPrinting);

/** Tell the print rules how large the drawing and its charts stand on the screen. */
export function keepPlaceOnPaper(): void {
  window.addEventListener('afterprint', () => usePaper.setState({ isPrinting: false }));
  window.addEventListener('beforeprint', () => {
    usePaper.setState({ isPrinting: true });
    const board = document.querySelector('.board')?.getBoundingClientRect();
    if (!board) return;
    const { style } = document.documentElement;
    const zoom = Math.min(1, PAPER_WIDTH_PX / board.width, PAPER_HEIGHT_PX / board.height);
    style.setProperty('--printed-width', `${board.width}px`);
    style.setProperty('--printed-height', `${board.height}px`);
    const evidence = document.querySelector('.evidence')?.getBoundingClientRect();
    if (evidence) style.setProperty('--printed-evidence', `${evidence.height}px`);
    style.setProperty('--printed-zoom', String(zoom));
  });
}

/** Run `print` with the sheet drawn light; the person's appearance comes back afterwards. */
export async function onLightPaper<T>(print: () => Promise<T>): Promise<T> {
  const { appearance } = useSession.getState();
  const after = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
  // What is unfolded for paper may take a while to be worked out: only then the drawing has its time.
  usePaper.setState({ isPrinting: true });
  await after(0);
  useSession.setState({ appearance: 'light' });
  showAppearance('light');
  await after(REDRAW_MS);
  try {
    return await print();
  } finally {
    usePaper.setState({ isPrinting: false });
    useSession.setState({ appearance });
    showAppearance(appearance);
  }
}
