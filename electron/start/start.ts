import path from 'node:path';
import { runBrowserEdition } from './browser-edition';
import { buildProgram, needsBuild } from './build';
import { chooseEdition } from './choose-edition';
import { runDesktop } from './desktop-edition';
import { enterKey } from './enter-key';
import { HELP, parseOptions } from './options';
import { stopSignal } from './stop-signal';

/** `npm start`: build where needed, then the desktop program or the browser edition. */

const root = path.resolve(import.meta.dirname, '../..');
const say = (line: string): void => console.error(line);
const tell = (line: string): void => console.log(line);

process.exitCode = await start(process.argv.slice(2));

async function start(args: readonly string[]): Promise<number> {
  const parsed = parseOptions(args);
  if (!parsed.ok) {
    say(parsed.sentence);
    return 2;
  }
  const { options } = parsed;
  if (options.help) {
    process.stdout.write(HELP);
    return 0;
  }

  if (await needsBuild(root)) {
    say('Building…');
    if (!(await buildProgram(root))) {
      say('The program could not be built. Run "npm ci" and start again; the lines above say why.');
      return 1;
    }
  }

  const edition = await chooseEdition(
    options,
    {
      root,
      env: process.env,
      platform: process.platform,
      node: process.version,
      userId: process.getuid?.() ?? null,
    },
    say,
  );
  if (edition.kind === 'desktop') {
    const end = await runDesktop(edition.runtime, root);
    if (end.kind === 'ended') return end.exitCode;
    say(`The desktop program did not start: ${end.reason}. This is the browser edition instead.`);
  } else if (!options.browser) {
    say(`This is the browser edition, because ${edition.reason}.`);
  }
  await runBrowserEdition({
    root,
    open: options.open,
    say,
    tell,
    enterKey: enterKey(),
    stopped: stopSignal(),
  });
  return 0;
}
