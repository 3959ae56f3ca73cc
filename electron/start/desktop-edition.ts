import { spawn } from 'node:child_process';

export type DesktopEnd =
  | { readonly kind: 'ended'; readonly exitCode: number }
  /** It ended badly at once, as it does where the system refuses its sandbox. */
  | { readonly kind: 'did-not-start'; readonly reason: string };

/** A desktop program that ends badly within this time never showed its window. */
const START_TIME_MS = 8_000;

/** Settings of the runtime that make it something other than the program that was tested. */
const RUNTIME_SETTINGS = new Set([
  'ELECTRON_RUN_AS_NODE',
  'ELECTRON_NO_ASAR',
  'ELECTRON_NO_ATTACH_CONSOLE',
]);

/**
 * The environment of the desktop program: without what is meant for Node (`NODE_OPTIONS` can load
 * code, `NODE_EXTRA_CA_CERTS` and others change whom it trusts).
 */
export function desktopEnvironment(env: NodeJS.ProcessEnv): NodeJS.ProcessEnv {
  const kept = Object.entries(env).filter(([name]) => {
    const upper = name.toUpperCase();
    return !upper.startsWith('NODE_') && !RUNTIME_SETTINGS.has(upper);
  });
  return Object.fromEntries(kept);
}

/** Run the desktop program until it is closed. */
export function runDesktop(runtime: string, root: string): Promise<DesktopEnd> {
  const env = desktopEnvironment(process.env);
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
