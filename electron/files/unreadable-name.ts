/** Name of a file of kept work that could not be read; nothing else is ever dropped by that name. */
export const UNREADABLE_NAME = /^autosave-unreadable-[0-9a-f]{16}\.json$/;
