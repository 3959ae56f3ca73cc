const WATCH_MS = 1_000;

/**
 * Resolves when the program is to stop: by Ctrl+C or another request to end, or because the process
 * that started it is gone. A stopped npm does not always hand the request on, and a server that
 * nobody can see any more should not stay behind.
 */
export function stopSignal(): Promise<void> {
  const parent = process.ppid;
  return new Promise((resolve) => {
    // The handlers stay: Ctrl+C may arrive twice, from the terminal and from the parent process.
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
      process.on(signal, () => resolve());
    }
    const watch = setInterval(() => {
      if (process.ppid === parent) return;
      clearInterval(watch);
      resolve();
    }, WATCH_MS);
    watch.unref();
  });
}
