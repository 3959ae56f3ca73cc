import { runAnalysis } from './run-analysis';

/** `npm run -s analyze -- FILE [--json] [--out DIR] [--units metric|feet]` */

// Whoever reads the output may stop early (`| head`): that is no failure of the analysis.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

// npm runs a script in the program's folder; names on the command line are meant where it was typed.
const byNpm = process.env['npm_lifecycle_event'] === 'analyze';
const folder = (byNpm ? process.env['INIT_CWD'] : undefined) ?? process.cwd();

process.exitCode = await runAnalysis(process.argv.slice(2), {
  folder,
  out: (text) => void process.stdout.write(text),
  complain: (line) => console.error(line),
});
