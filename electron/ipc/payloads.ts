import { z } from 'zod';
import {
  DATA_KIND_NAMES,
  EXPORT_TYPES,
  MAX_EXPORT_BYTES,
  type Host,
} from '../../renderer/host/host';
import { UNREADABLE_NAME } from '../files/unreadable-name';
import type { HostMethod } from './channels';

/**
 * The shape of every question's arguments, checked in the main process before any of it is used.
 * Sizes here only stop nonsense; the limit that a person can meet is told by the file functions.
 */
const MAX_TEXT_CHARACTERS = 50_000_000;

const text = z.string().max(MAX_TEXT_CHARACTERS);
const name = z.string().min(1).max(200);
const bytes = z.instanceof(Uint8Array).refine(({ byteLength }) => byteLength <= MAX_EXPORT_BYTES);
const token = z.string().regex(/^[A-Za-z0-9_-]{16,64}$/);

const stamp = z.strictObject({ modifiedMs: z.number(), sizeBytes: z.number().nonnegative() });
const keptRoom = { text, name, token: token.nullable(), stamp: stamp.nullable() };
const autosaveRecord = z.strictObject({
  ...keptRoom,
  savedAtMs: z.number().nonnegative(),
  unsaved: z.boolean(),
  before: z.strictObject(keptRoom).nullable(),
});

const saveOptions = z.strictObject({ stamp: stamp.nullable(), replace: z.boolean() });

type PayloadSchemas = { readonly [M in HostMethod]: z.ZodType<Parameters<Host[M]>> };

export const PAYLOADS: PayloadSchemas = {
  open: z.tuple([]),
  reopen: z.tuple([token]),
  save: z.tuple([text, name, token.nullable(), saveOptions.optional()]),
  exportBytes: z.tuple([name, z.enum(EXPORT_TYPES), bytes]),
  openData: z.tuple([z.enum(DATA_KIND_NAMES)]),
  recent: z.tuple([]),
  print: z.tuple([]),
  keepAutosave: z.tuple([autosaveRecord]),
  readAutosave: z.tuple([]),
  forgetUnreadable: z.tuple([z.string().regex(UNREADABLE_NAME)]),
};
