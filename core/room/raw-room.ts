/** The plain data of a room file of any version, before its shape is known. */
export type RawRoom = Readonly<Record<string, unknown>>;
