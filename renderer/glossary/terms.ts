/** Every word of the trade that the window uses, by subject: one text for the note beside it and the glossary. */

import { BASS_TERMS } from './terms-bass';
import { DECAY_TERMS } from './terms-decay';
import { MODE_TERMS } from './terms-modes';
import { SPEAKER_TERMS } from './terms-speakers';
import type { TermText } from './term-text';

const ALL = { ...MODE_TERMS, ...DECAY_TERMS, ...SPEAKER_TERMS, ...BASS_TERMS };

export type TermId = keyof typeof ALL;

export const TERMS: Readonly<Record<TermId, TermText>> = ALL;

const ids = (terms: Readonly<Record<string, TermText>>): readonly TermId[] =>
  Object.keys(terms) as TermId[];

/** The glossary's chapters in the order of the subjects. */
export const CHAPTERS: readonly { readonly title: string; readonly ids: readonly TermId[] }[] = [
  { title: 'Size and resonances', ids: ids(MODE_TERMS) },
  { title: 'Decay and finishes', ids: ids(DECAY_TERMS) },
  { title: 'Loudspeakers', ids: ids(SPEAKER_TERMS) },
  { title: 'Bass', ids: ids(BASS_TERMS) },
];

/** `Resonance of the room (mode)`. */
export const termTitle = ({ plain, term }: TermText): string =>
  term === undefined ? plain : `${plain} (${term})`;

/** Whether every word of `query` is found in the term's texts; all terms where it is empty. */
export function matchesTerm(text: TermText, query: string): boolean {
  const hay = [text.plain, text.term, text.says, text.also].join(' ').toLowerCase();
  return query
    .toLowerCase()
    .split(/\s+/)
    .every((word) => hay.includes(word));
}
