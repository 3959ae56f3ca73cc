import { errorCode } from '../files/error-code';
import { EXIT, runAnalysis } from './run-analysis';

/** `npm run -s analyze -- FILE [--json] [--out DIR] [--units metric|feet]` */

const complain = (line: string): void => console.error(line);

let unwritten = false;
process.stdout.on('error', (error: Error) => {
  // Whoever reads the output may stop early (`| head`): that is no failure of the analysis.
  if (errorCode(error) === 'EPIPE' || unwritten) return;
  unwritten = true;
  process.exitCode = EXIT.couldNotWrite;
  complain(
    errorCode(error) === 'ENOSPC'
      ? 'The analysis could not be written: there is no space left where the output goes. Free some space, or send it elsewhere.'
      : `The analysis could not be written: the computer reported "${error.message}". Send the output elsewhere.`,
  );
});
// Where complaints cannot be written either there is nobody to tell.
process.stderr.on('error', () => undefined);

// npm runs a script in the program's folder; names on the command line are meant where it was typed.
const byNpm = process.env['npm_lifecycle_event'] === 'analyze';
const folder = (byNpm ? process.env['INIT_CWD'] : undefined) ?? process.cwd();

const exitCode = await runAnalysis(process.argv.slice(2), {
  folder,
  out: (text) => void process.stdout.write(text),
  complain,
});
if (!unwritten) process.exitCode = exitCode;
