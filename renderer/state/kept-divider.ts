/** Where the person has put the divider between inputs and findings, kept in the window. */

const KEY = 'roomwright-inputs-share';

/** Least and most share of the margin that the inputs can have. */
export const INPUTS_SHARE = { least: 0.15, most: 0.85 } as const;

export const withinShare = (share: number): number =>
  Math.min(INPUTS_SHARE.most, Math.max(INPUTS_SHARE.least, share));

/** Share of the height, or null where the inputs are as tall as their fields need. */
export function readInputsShare(): number | null {
  try {
    const share = Number(localStorage.getItem(KEY) ?? 'none');
    return Number.isFinite(share) && share > 0 ? withinShare(share) : null;
  } catch {
    return null;
  }
}

export function keepInputsShare(share: number | null): void {
  try {
    if (share === null) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, String(share));
  } catch {
    // A window without storage forgets; the divider is then where the fields need it.
  }
}
