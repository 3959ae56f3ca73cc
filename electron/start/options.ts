import { parseArgs } from 'node:util';

export interface StartOptions {
  /** The browser edition, also where the desktop program could be started. */
  readonly browser: boolean;
  /** Whether the browser edition opens a browser. */
  readonly open: boolean;
  readonly help: boolean;
}

export type ParsedOptions =
  | { readonly ok: true; readonly options: StartOptions }
  | { readonly ok: false; readonly sentence: string };

export const HELP = `Usage: npm start [-- OPTIONS]

Opens Roomwright: the desktop program, or the browser edition where the desktop program cannot run.

  --browser   serve the browser edition in any case
  --no-open   do not open a browser; print the address only
  --help      print this

ROOMWRIGHT_OFFLINE=1 in the environment: never fetch the desktop runtime.
`;

export function parseOptions(args: readonly string[]): ParsedOptions {
  try {
    const { values } = parseArgs({
      args: [...args],
      strict: true,
      allowPositionals: false,
      options: {
        browser: { type: 'boolean', default: false },
        'no-open': { type: 'boolean', default: false },
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
    return {
      ok: true,
      options: { browser: values.browser, open: !values['no-open'], help: values.help },
    };
  } catch {
    const known = ['--browser', '--no-open', '--help', '-h'];
    const odd = args.find((argument) => !known.includes(argument)) ?? args.join(' ');
    return {
      ok: false,
      sentence: `Unknown option "${odd}". Known are --browser, --no-open and --help.`,
    };
  }
}
