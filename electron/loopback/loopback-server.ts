import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { errorCode } from '../files/error-code';
import { AccessKeys } from './access-keys';
import { answerRequest } from './answer-request';

/**
 * The server of the browser edition. It listens on this computer's own address only, and sends the
 * built page to browsers that came with a token; room files never pass through it.
 */
export interface LoopbackServer {
  readonly port: number;
  /** `http://127.0.0.1:PORT` */
  readonly origin: string;
  /** Address with the token that holds until the server stops: for a start without a terminal. */
  readonly runAddress: string;
  /** A new address that lets one visit in: for a terminal, or a command line. */
  newLaunchAddress(): string;
  close(): Promise<void>;
}

export interface LoopbackOptions {
  /** Folder of the built page. */
  readonly root: string;
  /**
   * The port to ask for first. A browser keeps its stored work by address and port, so the same
   * port again finds the same stored work. Where it is taken, or none is given, any free one serves.
   */
  readonly preferredPort?: number;
}

const LOOPBACK = '127.0.0.1';

export async function startLoopback(options: LoopbackOptions): Promise<LoopbackServer> {
  const keys = new AccessKeys();
  let host = '';
  const answer = (request: IncomingMessage, response: ServerResponse): void => {
    answerRequest({ root: options.root, host, keys }, request, response).catch(() => {
      response.destroy();
    });
  };
  const server = await listen(answer, options.preferredPort ?? 0);
  const { port } = server.address() as AddressInfo;
  host = `${LOOPBACK}:${port}`;
  const origin = `http://${host}`;
  return {
    port,
    origin,
    runAddress: `${origin}/?token=${keys.runToken}`,
    newLaunchAddress: () => `${origin}/?token=${keys.newLaunchToken()}`,
    close: () => close(server),
  };
}

async function listen(
  answer: (request: IncomingMessage, response: ServerResponse) => void,
  port: number,
): Promise<Server> {
  const server = createServer({ maxHeaderSize: 16_384 }, answer);
  try {
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject);
      server.listen({ host: LOOPBACK, port, exclusive: true }, () => {
        server.off('error', reject);
        resolve();
      });
    });
    return server;
  } catch (error) {
    const taken = ['EADDRINUSE', 'EACCES'].includes(errorCode(error) ?? '');
    if (port !== 0 && taken) return listen(answer, 0);
    throw error;
  }
}

function close(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}
