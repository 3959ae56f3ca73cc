/** What a box that scrolls needs so that it can be scrolled by keyboard and is announced. */
export const scrollable = (
  label: string,
): { readonly tabIndex: number; readonly role: 'group'; readonly 'aria-label': string } => ({
  tabIndex: 0,
  role: 'group',
  'aria-label': label,
});
