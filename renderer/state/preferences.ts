/** What belongs to the person and not to the room: units and appearance, kept in the window. */

import type { LengthUnits } from '../../core/quantity/length';

export type Appearance = 'system' | 'light' | 'dark';

export interface Preferences {
  readonly units: LengthUnits;
  readonly appearance: Appearance;
}

const KEY = 'roomwright-preferences';

/** Feet and inches where the language's home builds in them. */
function defaults(): Preferences {
  const imperial = /-(US|LR|MM)$/.test(navigator.language);
  return { units: imperial ? 'imperial' : 'metric', appearance: 'system' };
}

export function readPreferences(): Preferences {
  const known = defaults();
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Preferences>;
    return {
      units: kept.units === 'metric' || kept.units === 'imperial' ? kept.units : known.units,
      appearance:
        kept.appearance === 'light' || kept.appearance === 'dark' ? kept.appearance : 'system',
    };
  } catch {
    return known;
  }
}

export function keepPreferences(preferences: Preferences): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(preferences));
  } catch {
    // A window without storage forgets; nothing else depends on it.
  }
}

const dark = matchMedia('(prefers-color-scheme: dark)');
let shown: Appearance = 'system';

/** Put the appearance on the page; `system` follows the computer, also when that changes. */
export function showAppearance(appearance: Appearance): void {
  shown = appearance;
  const system = dark.matches ? 'dark' : 'light';
  document.documentElement.dataset['appearance'] = appearance === 'system' ? system : appearance;
}

dark.addEventListener('change', () => showAppearance(shown));
