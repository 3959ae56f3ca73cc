import { spawn } from 'node:child_process';

export type DesktopEnd =
  | { readonly kind: 'ended'; readonly exitCode: number }
  /** It ended badly at once, as it does where the system refuses its sandbox. */
  | { readonly kind: 'did-not-start'; readonly reason: string };

/** A desktop program that ends badly within this time never showed its window. */
const START_TIME_MS = 8_000;

/** Run the desktop program until it is closed. */
export function runDesktop(runtime: string, root: string): Promise<DesktopEnd> {
  const env = { ...process.env };
  delete env['ELECTRON_RUN_AS_NODE'];
  const startedAtMs = Date.now();
  return new Promise((resolve) => {
    const child = spawn(runtime, [root], { cwd: root, env, stdio: 'inherit' });
    const pass = (signal: NodeJS.Signals): void => void child.kill(signal);
    process.on('SIGINT', pass).on('SIGTERM', pass);
    const end = (result: DesktopEnd): void => {
      process.off('SIGINT', pass).off('SIGTERM', pass);
      resolve(result);
    };
    child.once('error', (error) => end({ kind: 'did-not-start', reason: error.message }));
    child.once('exit', (code, signal) => {
      const stopped = signal === 'SIGINT' || signal === 'SIGTERM';
      if (code === 0 || stopped) return end({ kind: 'ended', exitCode: 0 });
      if (Date.now() - startedAtMs > START_TIME_MS) {
        return end({ kind: 'ended', exitCode: code ?? 1 });
      }
      end({ kind: 'did-not-start', reason: `it ended at once (${signal ?? `code ${code}`})` });
    });
  });
}
