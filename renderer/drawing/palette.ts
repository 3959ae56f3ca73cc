/** The style sheet's colours for the scene, read again when the appearance changes. */

import { useEffect, useState } from 'react';
import { useSession } from '../state/session';

const NAMES = [
  'ground',
  'raised',
  'ink',
  'ink-soft',
  'hairline',
  'accent',
  'wall',
  'wall-side',
  'floor',
  'solid',
] as const;

export type Palette = Readonly<Record<(typeof NAMES)[number], string>>;

function readPalette(): Palette {
  const style = getComputedStyle(document.documentElement);
  return Object.fromEntries(
    NAMES.map((name) => [name, style.getPropertyValue(`--${name}`).trim() || '#888888']),
  ) as Palette;
}

export function usePalette(): Palette {
  const appearance = useSession((session) => session.appearance);
  const [palette, setPalette] = useState(readPalette);
  useEffect(() => {
    setPalette(readPalette());
    const dark = matchMedia('(prefers-color-scheme: dark)');
    const onChange = (): void => setPalette(readPalette());
    dark.addEventListener('change', onChange);
    return () => dark.removeEventListener('change', onChange);
  }, [appearance]);
  return palette;
}
