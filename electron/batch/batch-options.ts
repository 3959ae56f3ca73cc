import { parseArgs } from 'node:util';

export interface BatchOptions {
  readonly file: string;
  readonly json: boolean;
  readonly out: string | null;
}

export type ParsedBatch =
  | { readonly kind: 'analyze'; readonly options: BatchOptions }
  | { readonly kind: 'help' }
  | { readonly kind: 'refused'; readonly sentence: string };

export const BATCH_HELP = `Usage: npm run -s analyze -- FILE [--json] [--out DIR]

Analyses a room file (.room.json) and prints what was found.

  --json      print the analysis as one JSON object
  --out DIR   also write the build sheet's tables into DIR
  --help      print this

Ends with 0 and the analysis, or with 2 and one line for each fault in the file.
`;

export function parseBatch(args: readonly string[]): ParsedBatch {
  let parsed;
  try {
    parsed = parseArgs({
      args: [...args],
      strict: true,
      allowPositionals: true,
      options: {
        json: { type: 'boolean', default: false },
        out: { type: 'string' },
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
  } catch (error) {
    return refused(error instanceof Error ? firstSentence(error.message) : String(error));
  }
  const { values, positionals } = parsed;
  if (values.help) return { kind: 'help' };
  const [file, ...more] = positionals;
  if (file === undefined || file === '') return refused('No room file is named.');
  if (more.length > 0) return refused(`One room file at a time, not also "${more.join('", "')}".`);
  if (values.out === '') return refused('--out needs the name of a folder.');
  return { kind: 'analyze', options: { file, json: values.json, out: values.out ?? null } };
}

function refused(sentence: string): ParsedBatch {
  return {
    kind: 'refused',
    sentence: `${sentence} Use: npm run -s analyze -- FILE [--json] [--out DIR]`,
  };
}

/** The rest of the parser's message tells how to write such an argument, which nobody wants here. */
function firstSentence(message: string): string {
  return `${message.split(/\.\s|\n/)[0] ?? message}.`.replace('..', '.');
}
