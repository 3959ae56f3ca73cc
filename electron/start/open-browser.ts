import { spawn } from 'node:child_process';

/** The command that opens an address in the person's own browser. */
export function openCommand(
  address: string,
  platform: NodeJS.Platform,
): { readonly program: string; readonly args: readonly string[] } {
  if (platform === 'darwin') return { program: 'open', args: [address] };
  if (platform === 'win32') {
    return { program: 'cmd', args: ['/d', '/s', '/c', 'start', '""', `"${address}"`] };
  }
  return { program: 'xdg-open', args: [address] };
}

/** Resolves to false where no browser could be opened. */
export function openBrowser(address: string, platform: NodeJS.Platform): Promise<boolean> {
  const { program, args } = openCommand(address, platform);
  return new Promise((resolve) => {
    const child = spawn(program, args, {
      stdio: 'ignore',
      detached: platform !== 'win32',
      windowsVerbatimArguments: true,
    });
    child.once('error', () => resolve(false));
    // The opener may live as long as the browser does; it has ended badly only where it says so.
    child.once('exit', (code) => resolve(code === 0));
    child.unref();
  });
}
