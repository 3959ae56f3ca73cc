import { parseArgs } from 'node:util';
import type { LengthUnits } from '../../core/quantity/length';

export interface BatchOptions {
  readonly file: string;
  readonly json: boolean;
  readonly out: string | null;
  /** Of words and of the columns that tables have for them; figures in JSON stay SI. */
  readonly units: LengthUnits;
}

export type ParsedBatch =
  | { readonly kind: 'analyze'; readonly options: BatchOptions }
  | { readonly kind: 'help' }
  | { readonly kind: 'refused'; readonly sentence: string };

export const BATCH_HELP = `Usage: npm run -s analyze -- FILE [--json] [--out DIR] [--units metric|feet]

Analyses a room file (.room.json) and prints what was found.

  --json      print the analysis as one JSON object
  --out DIR   also write the build sheet's tables into DIR
  --units U   metric, or feet for feet and inches, in words and tables
              (figures in JSON stay in SI units)
  --help      print this

Ends with 0 and the analysis, or with 2 and one line for each fault in the file.
`;

const UNITS: Readonly<Record<string, LengthUnits | undefined>> = {
  metric: 'metric',
  feet: 'imperial',
};

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
        units: { type: 'string', default: 'metric' },
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
  const units = UNITS[values.units];
  if (units === undefined) return refused(`--units is metric or feet, not "${values.units}".`);
  return { kind: 'analyze', options: { file, json: values.json, out: values.out ?? null, units } };
}

function refused(sentence: string): ParsedBatch {
  return {
    kind: 'refused',
    sentence: `${sentence} Use: npm run -s analyze -- FILE [--json] [--out DIR] [--units metric|feet]`,
  };
}

/** The rest of the parser's message tells how to write such an argument, which nobody wants here. */
function firstSentence(message: string): string {
  return `${message.split(/\.\s|\n/)[0] ?? message}.`.replace('..', '.');
}
