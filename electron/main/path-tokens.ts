import { randomBytes } from 'node:crypto';
import type { FileToken } from '../../renderer/host/host';

/**
 * Paths stay in the main process: the window knows a file by a random token only, which is good for
 * this run. The page thus cannot name a file that the person has not chosen.
 */
export class PathTokens {
  private readonly pathByToken = new Map<FileToken, string>();
  private readonly tokenByPath = new Map<string, FileToken>();

  /** The same path keeps its token. */
  tokenFor(path: string): FileToken {
    const known = this.tokenByPath.get(path);
    if (known !== undefined) return known;
    const token = randomBytes(16).toString('base64url');
    this.tokenByPath.set(path, token);
    this.pathByToken.set(token, path);
    return token;
  }

  pathOf(token: FileToken): string | null {
    return this.pathByToken.get(token) ?? null;
  }
}
