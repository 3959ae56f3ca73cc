import type { z } from 'zod';
import { CHANNELS, HOST_METHODS, type HostHandlers, type HostMethod } from '../ipc/channels';
import { PAYLOADS } from '../ipc/payloads';
import { originOf, type PageAddress } from './page-address';

/** The parts of an Electron question that say who asks. */
export interface AskingEvent {
  readonly sender: { readonly id: number };
  readonly senderFrame: { readonly url: string; readonly parent: unknown } | null;
}

export interface QuestionDesk {
  handle(
    channel: string,
    answer: (event: AskingEvent, ...args: unknown[]) => Promise<unknown>,
  ): void;
}

/** Who may ask: the main frame of our one window, while it shows our own page. */
export interface AllowedSender {
  readonly page: PageAddress;
  /** Identity of the window's contents, or null while there is no window. */
  windowContentsId(): number | null;
}

/**
 * Answer every channel of the map, each through the same two checks: who asks, and whether the
 * arguments have the agreed shape. A question that fails either is refused with an error that tells
 * nothing of the machine, and its handler does not run.
 */
export function answerQuestions(
  desk: QuestionDesk,
  allowed: AllowedSender,
  handlers: HostHandlers,
): void {
  for (const method of HOST_METHODS) answerOne(desk, allowed, handlers, method);
}

function answerOne<M extends HostMethod>(
  desk: QuestionDesk,
  allowed: AllowedSender,
  handlers: Pick<HostHandlers, M>,
  method: M,
): void {
  const schema: z.ZodType<Parameters<HostHandlers[M]>> = PAYLOADS[method];
  desk.handle(CHANNELS[method], async (event, ...args) => {
    if (!isAllowed(event, allowed)) throw new Error(`${method}: refused, not from the own window`);
    const payload = schema.safeParse(args);
    if (!payload.success) throw new Error(`${method}: refused, the arguments do not fit`);
    return await handlers[method](...payload.data);
  });
}

export function isAllowed(event: AskingEvent, allowed: AllowedSender): boolean {
  const frame = event.senderFrame;
  return (
    frame !== null &&
    frame.parent === null &&
    event.sender.id === allowed.windowContentsId() &&
    originOf(frame.url) === allowed.page.origin
  );
}
