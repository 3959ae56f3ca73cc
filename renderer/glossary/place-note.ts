/** Where a note stands: under its word or, where there is no room, over it; always within the window. */

/** Distance from the word and from the edge of the window, px. */
const GAP = 6;

export interface Rect {
  readonly left: number;
  readonly top: number;
  readonly bottom: number;
}

export interface Extent {
  readonly width: number;
  readonly height: number;
}

/** Left and top of a note of size `note` beside `word` in a window of size `page`, px. */
export function notePlace(word: Rect, note: Extent, page: Extent): { left: number; top: number } {
  const most = (at: number, size: number, end: number): number =>
    Math.max(GAP, Math.min(at, end - size - GAP));
  const below = word.bottom + GAP;
  const fits = below + note.height + GAP <= page.height;
  const top = fits || word.top < note.height + 2 * GAP ? below : word.top - GAP - note.height;
  return {
    left: most(word.left, note.width, page.width),
    top: most(top, note.height, page.height),
  };
}

export function placeNote(note: HTMLElement, word: Rect): void {
  const { offsetWidth: width, offsetHeight: height } = note;
  const place = notePlace(
    word,
    { width, height },
    { width: window.innerWidth, height: window.innerHeight },
  );
  note.style.left = `${place.left}px`;
  note.style.top = `${place.top}px`;
}
