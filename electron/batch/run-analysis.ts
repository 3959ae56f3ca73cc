import path from 'node:path';
import { wholeEvaluator } from '../../core/analysis/slow-work';
import type { Analysis } from '../../core/analysis/analyze';
import { published } from '../../core/report/published';
import { summary } from '../../core/report/summary';
import { tables } from '../../core/report/tables';
import { escapedInJson, onOneLine } from '../../core/room/fault';
import { decodeRoomBytes, openRoom, type Fault } from '../../core/room/open-room';
import type { LengthUnits } from '../../core/quantity/length';
import { shareOf } from '../../core/quantity/slices';
import type { Project } from '../../core/room/project';
import { openFailure, saveFailure, tooLarge } from '../files/file-sentences';
import { makeFolder } from '../files/make-folder';
import { readLimited } from '../files/read-limited';
import { FileOfSetError, writeTogether, type FileOfSet } from '../files/write-together';
import { BATCH_HELP, parseBatch } from './batch-options';
import { MAX_ROOM_BYTES } from '../../core/room/read-json';

export interface BatchIo {
  /** Folder that names on the command line are relative to. */
  readonly folder: string;
  /** Text for stdout. */
  readonly out: (text: string) => void;
  /** One line for stderr. */
  readonly complain: (line: string) => void;
  /** The time, ms; tests have their own. */
  readonly now?: () => number;
}

/** What the command ends with. */
export const EXIT = { done: 0, couldNotWrite: 1, refused: 2 } as const;

/** What takes longer than this says how far it is, and again each time that this has passed, ms. */
const SLOW_MS = 5_000;
/** Longest line of stderr; what comes from a person is far shorter. */
const LONGEST_LINE = 600;

const FILE_REMEDY = 'Check its name and folder.';
const SHEET_REMEDY = 'Name another folder with --out.';

/**
 * The whole command. What can be refused is refused before anything is printed or written, and
 * every table is made before the first is written.
 */
export async function runAnalysis(args: readonly string[], given: BatchIo): Promise<number> {
  const io: BatchIo = { ...given, complain: (line) => given.complain(plainLine(line)) };
  const parsed = parseBatch(args);
  if (parsed.kind === 'help') {
    io.out(BATCH_HELP);
    return EXIT.done;
  }
  if (parsed.kind === 'refused') {
    io.complain(parsed.sentence);
    return EXIT.refused;
  }
  const { file, json, out, units } = parsed.options;

  const opened = await openRoomFile(path.resolve(io.folder, file));
  if ('complaints' in opened) {
    for (const line of opened.complaints) io.complain(line);
    return EXIT.refused;
  }
  const { project } = opened;
  const analysis = analysed(project, units, io);
  const text = json
    ? `${escapedInJson(JSON.stringify(published(analysis)))}\n`
    : ended(summary(project, analysis, units));

  if (out !== null) {
    const folder = path.resolve(io.folder, out);
    const written = await writeTables(folder, tables(project, analysis, units));
    // Not on stdout, which is the analysis alone.
    io.complain(written.line);
    if (!written.ok) return EXIT.couldNotWrite;
  }
  io.out(text);
  return EXIT.done;
}

/** A line as it may reach a terminal: names of files and fields are not to be trusted there. */
function plainLine(line: string): string {
  const plain = onOneLine(line);
  return plain.length > LONGEST_LINE ? `${plain.slice(0, LONGEST_LINE)}...` : plain;
}

/** The analysis; one that takes long says on stderr how far it is. */
function analysed(project: Project, units: LengthUnits, io: BatchIo): Analysis {
  const now = io.now ?? (() => performance.now());
  const slices = wholeEvaluator().begin('wholeAnalysis', project, { units });
  let next = now() + SLOW_MS;
  for (;;) {
    const step = slices.next();
    if (step.done) return step.value;
    if (now() < next) continue;
    io.complain(`Solving the room as built: ${Math.round(100 * shareOf(step.value))} % done.`);
    next = now() + SLOW_MS;
  }
}

type Opened = { readonly project: Project } | { readonly complaints: readonly string[] };

async function openRoomFile(file: string): Promise<Opened> {
  let bytes: Uint8Array;
  try {
    const found = await readLimited(file, MAX_ROOM_BYTES);
    if (found.kind === 'too-large') {
      return { complaints: [tooLarge(file, found.sizeBytes)] };
    }
    if (found.kind === 'not-a-file') {
      return {
        complaints: [`Could not open "${path.basename(file)}": it is not a file. ${FILE_REMEDY}`],
      };
    }
    bytes = found.bytes;
  } catch (error) {
    return { complaints: [openFailure(file, error, FILE_REMEDY)] };
  }
  const decoded = decodeRoomBytes(bytes);
  if (!decoded.ok) return { complaints: faultLines(file, decoded.faults) };
  const opened = openRoom(decoded.text);
  if (!opened.ok) return { complaints: faultLines(file, opened.faults) };
  return { project: opened.project };
}

/** One line for each fault; a fault of the file as a whole carries the file's name as its place. */
function faultLines(file: string, faults: readonly Fault[]): readonly string[] {
  return faults.map(({ path: place, sentence }) => {
    const where = place === '' ? path.basename(file) : place;
    return `${where}: ${sentence}`;
  });
}

/** All tables or none, and one line that says what was written, or what to do. */
async function writeTables(
  folder: string,
  files: readonly FileOfSet[],
): Promise<{ readonly ok: boolean; readonly line: string }> {
  try {
    await makeFolder(folder);
    const replaced = await writeTogether(folder, files);
    const names = files.map(({ name }) => (replaced.includes(name) ? `${name} (replaced)` : name));
    return { ok: true, line: `Written into "${path.basename(folder)}": ${names.join(', ')}.` };
  } catch (error) {
    const [place, cause] =
      error instanceof FileOfSetError ? [error.file, error.cause] : [folder, error];
    return { ok: false, line: saveFailure(place, cause, SHEET_REMEDY) };
  }
}

function ended(text: string): string {
  return text.endsWith('\n') ? text : `${text}\n`;
}
