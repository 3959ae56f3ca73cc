import { spawn } from 'node:child_process';
import * as fs from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { runAnalysis } from '../../electron/batch/run-analysis';
import { freshFolder } from './support/temp-folder';
import { MAX_ROOM_BYTES } from '../../core/room/read-json';

const root = path.resolve(import.meta.dirname, '../..');
const temp = freshFolder();

const PLAIN_ROOM = {
  format: 'roomwright-room',
  version: 1,
  room: { size: { width: 4.2, length: 6.1, height: 2.4 } },
};

interface Result {
  readonly code: number;
  readonly out: string;
  readonly complaints: readonly string[];
}

async function run(...args: string[]): Promise<Result> {
  let out = '';
  const complaints: string[] = [];
  const code = await runAnalysis(args, {
    folder: temp.at(),
    out: (text) => (out += text),
    complain: (line) => complaints.push(line),
  });
  return { code, out, complaints };
}

const putRoom = (room: unknown, name = 'den.room.json'): Promise<void> =>
  fs.writeFile(temp.at(name), JSON.stringify(room));

describe('analysing a room', () => {
  it('ends with 0 and a summary for people', async () => {
    await putRoom(PLAIN_ROOM);
    const result = await run('den.room.json');
    expect(result).toMatchObject({ code: 0, complaints: [] });
    expect(result.out).toMatch(/4\.2\d* m/);
    expect(result.out.endsWith('\n')).toBe(true);
  });

  it('prints one JSON object and nothing else with --json', async () => {
    await putRoom(PLAIN_ROOM);
    const result = await run('--json', 'den.room.json');
    const analysis = JSON.parse(result.out) as Record<string, unknown>;
    expect(result.code).toBe(0);
    expect(Object.keys(analysis)).toEqual(
      expect.arrayContaining(['air', 'geometry', 'modes', 'decay', 'speakers', 'findings']),
    );
  });

  it('writes every table into a folder that it makes, and the same analysis there', async () => {
    await putRoom(PLAIN_ROOM);
    const result = await run('den.room.json', '--json', '--out', 'sheets/den');
    expect(result.code).toBe(0);
    const written = await fs.readdir(temp.at('sheets', 'den'));
    for (const name of ['placements.csv', 'modes.csv', 'decay.csv', 'materials.csv']) {
      expect(written).toContain(name);
    }
    const kept = await fs.readFile(temp.at('sheets', 'den', 'analysis.json'), 'utf8');
    expect(JSON.parse(kept)).toEqual(JSON.parse(result.out));
    expect(written.filter((name) => /\.(tmp|bak)$/.test(name))).toEqual([]);
  });

  it('names what was written and what was replaced, beside the analysis', async () => {
    await putRoom(PLAIN_ROOM);
    await fs.mkdir(temp.at('sheets'));
    await fs.writeFile(temp.at('sheets', 'modes.csv'), 'of the person');
    const { complaints } = await run('den.room.json', '--out', 'sheets');
    expect(complaints).toHaveLength(1);
    expect(complaints[0]).toMatch(/"sheets": .*placements\.csv,.*modes\.csv \(replaced\),/);
  });

  it('writes none of the tables where one of them cannot be written', async () => {
    await putRoom(PLAIN_ROOM);
    await fs.mkdir(temp.at('sheets', 'modes.csv'), { recursive: true });
    await fs.writeFile(temp.at('sheets', 'placements.csv'), 'of the last time');
    const result = await run('den.room.json', '--out', 'sheets');
    expect(result).toMatchObject({ code: 1, out: '' });
    expect(result.complaints).toEqual([expect.stringContaining('"modes.csv": there is a folder')]);
    expect((await fs.readdir(temp.at('sheets'))).sort()).toEqual(['modes.csv', 'placements.csv']);
    expect(await fs.readFile(temp.at('sheets', 'placements.csv'), 'utf8')).toBe('of the last time');
  });

  it('ends with 1 and a sentence, and prints nothing, where the folder cannot be made', async () => {
    await putRoom(PLAIN_ROOM);
    const result = await run('den.room.json', '--out', 'den.room.json');
    expect(result).toMatchObject({ code: 1, out: '' });
    expect(result.complaints[0]).toContain('Name another folder');
  });
});

describe('the units of words and tables', () => {
  it('are metric where they are not chosen, and feet and inches where they are', async () => {
    await putRoom(PLAIN_ROOM);
    expect((await run('den.room.json', '--units', 'metric')).out).toBe(
      (await run('den.room.json')).out,
    );
    const feet = await run('den.room.json', '--units', 'feet');
    expect(feet).toMatchObject({ code: 0, complaints: [] });
    expect(feet.out).toContain(`13' 9 3/8" wide`);
    expect(feet.out).toMatch(/[\d,]+ cu ft, [\d,]+ sq ft of surface/);
  });

  it('leave the figures of JSON in SI units and its messages in the chosen ones', async () => {
    await putRoom({ ...PLAIN_ROOM, room: { size: { width: 4.2, length: 6.1, height: 2 } } });
    const findingIn = async (units: string): Promise<Record<string, unknown>> => {
      const { out } = await run('den.room.json', '--json', '--units', units);
      const { findings } = JSON.parse(out) as { findings: Record<string, unknown>[] };
      const low = findings.find(({ message }) => String(message).startsWith('A ceiling at'));
      if (!low) throw new Error('the low ceiling is not found');
      return low;
    };
    const [metric, feet] = [await findingIn('metric'), await findingIn('feet')];
    expect(metric['message']).toContain('2.00 m');
    expect(feet['message']).toContain(`6' 6 3/4"`);
    for (const key of ['value', 'limit', 'unit']) expect(feet[key]).toEqual(metric[key]);
    expect(feet['unit']).toBe('m');
  });

  it('add columns to the tables and keep those in metres', async () => {
    await putRoom(PLAIN_ROOM);
    await run('den.room.json', '--out', 'metric');
    await run('den.room.json', '--out', 'feet', '--units', 'feet');
    const rows = async (folder: string, name: string): Promise<string[]> =>
      (await fs.readFile(temp.at(folder, name), 'utf8')).split('\r\n');
    // Finishes have a name in each system: without it the tables of materials agree too.
    const unnamed = (row: string): string =>
      row.replace(/^([^,]*,[^,]*),(?:"(?:[^"]|"")*"|[^,]*),/, '$1,');
    for (const name of ['placements.csv', 'decay.csv', 'materials.csv']) {
      const metric = (await rows('metric', name)).map(unnamed);
      const feet = await rows('feet', name);
      expect(feet).toHaveLength(metric.length);
      feet
        .slice(0, -1)
        .forEach((row, i) => expect(unnamed(row).startsWith(`${metric[i] ?? '?'},`)).toBe(true));
    }
    const [header, ears] = await rows('feet', 'placements.csv');
    expect(header).toMatch(/,from_left_wall_ft_in,from_front_wall_ft_in,above_floor_ft_in,/);
    expect(ears).toMatch(/'/);
  });

  it('other than these are refused', async () => {
    await putRoom(PLAIN_ROOM);
    const result = await run('den.room.json', '--units', 'cubits');
    expect(result).toMatchObject({ code: 2, out: '' });
    expect(result.complaints).toEqual([
      '--units is metric or feet, not "cubits". Use: npm run -s analyze -- FILE [--json] [--out DIR] [--units metric|feet]',
    ]);
  });
});

describe('a folder that cannot be made', () => {
  it.each([
    ['below a file', 'den.room.json/sheets'],
    ['where a file is', 'den.room.json'],
  ])('%s is refused with a sentence', async (_where, folder) => {
    await putRoom(PLAIN_ROOM);
    const result = await run('den.room.json', '--out', folder);
    expect(result).toMatchObject({ code: 1, out: '' });
    expect(result.complaints).toHaveLength(1);
    expect(result.complaints[0]).toContain('Name another folder');
  });

  // The file system of the processes says that a folder's parent is missing when it refuses it.
  it.runIf(process.platform === 'linux')('below the processes is refused, too', async () => {
    await putRoom(PLAIN_ROOM);
    const result = await run('den.room.json', '--out', '/proc/sheets/den');
    expect(result).toMatchObject({ code: 1, out: '' });
    expect(result.complaints[0]).toContain('Name another folder');
  });
});

describe('text from a file', () => {
  /** Control and direction characters, but the line breaks that are the program's own. */
  const UNTRUSTED =
    /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/;
  const NASTY = '\u001b]0;x\u0007\u009b31m\u202edne\u2069\nline';

  it('reaches the terminal without what would steer it, by words, JSON and tables', async () => {
    await putRoom({
      ...PLAIN_ROOM,
      name: NASTY,
      room: { ...PLAIN_ROOM.room, finishes: { back: 'own' } },
      finishesCustom: [{ id: 'own', name: NASTY, absorption: {}, source: NASTY }],
      speakers: { layout: NASTY, recommendation: NASTY },
    });
    const words = await run('den.room.json', '--out', 'sheets');
    expect(words.code).toBe(0);
    expect(words.out).not.toMatch(UNTRUSTED);
    expect(words.out).not.toMatch(/^line/m);
    const json = await run('den.room.json', '--json');
    expect(json.out).not.toMatch(UNTRUSTED);
    expect(() => JSON.parse(json.out) as unknown).not.toThrow();
    for (const name of await fs.readdir(temp.at('sheets'))) {
      const text = await fs.readFile(temp.at('sheets', name), 'utf8');
      expect(text.replaceAll('\r\n', '\n')).not.toMatch(UNTRUSTED);
    }
  });

  it.runIf(process.platform !== 'win32')(
    'is one line a fault, by the name of the file too',
    async () => {
      const name = 'bad\u001b[31m\nname\u202e.room.json';
      await fs.writeFile(temp.at(name), '[]');
      const { complaints } = await run(name);
      expect(complaints).toHaveLength(1);
      expect(complaints[0]).not.toMatch(/[\u001b\n\u202e]/);
      expect((await run('missing\u001b.room.json')).complaints[0]).not.toContain('\u001b');
    },
  );

  it('is cut to a sane length', async () => {
    await fs.writeFile(
      temp.at('den.room.json'),
      JSON.stringify(PLAIN_ROOM).replace(
        '"width"',
        `"${'k'.repeat(400_000)}":{"__proto__":1},"width"`,
      ),
    );
    const { code, complaints } = await run('den.room.json');
    expect(code).toBe(2);
    expect(Math.max(...complaints.map((line) => line.length))).toBeLessThan(700);
  });
});

describe('an analysis that takes long', () => {
  it('says on stderr how far it is, every five seconds', async () => {
    const soffit = { id: 'duct', kind: 'soffit', min: [0, 0, 2.1], max: [0.6, 6.1, 2.4] };
    await putRoom({ ...PLAIN_ROOM, room: { ...PLAIN_ROOM.room, solids: [soffit] } });
    const complaints: string[] = [];
    let now = 0;
    const code = await runAnalysis(['den.room.json'], {
      folder: temp.at(),
      out: () => undefined,
      complain: (line) => complaints.push(line),
      // Each look at the clock is a second later.
      now: () => (now += 1_000),
    });
    expect(code).toBe(0);
    expect(complaints.length).toBeGreaterThan(1);
    for (const line of complaints)
      expect(line).toMatch(/^Solving the room as built: \d+ % done\.$/);
  });

  it('of a room that is too large is told so, not blamed on its fittings', async () => {
    const box = { id: 'box', kind: 'other', min: [1, 1, 0], max: [2, 2, 1] };
    await putRoom({
      ...PLAIN_ROOM,
      room: { size: { width: 30, length: 30, height: 12 }, solids: [box] },
    });
    const { out } = await run('den.room.json');
    expect(out).toContain('The room is too large for the modes as built, whatever stands in it');
    expect(out).not.toMatch(/fittings have too many faces/);
  });
});

describe('a file that is no valid room', () => {
  it('ends with 2 and one line for each fault, and writes nothing', async () => {
    await putRoom({ ...PLAIN_ROOM, room: { size: { width: -1, length: 6, height: 'tall' } } });
    const result = await run('den.room.json', '--json', '--out', 'sheets');
    expect(result).toMatchObject({ code: 2, out: '' });
    expect(result.complaints.map((line) => line.split(':')[0])).toEqual([
      'room.size.width',
      'room.size.height',
    ]);
    expect(await fs.readdir(temp.at())).toEqual(['den.room.json']);
  });

  it('is told faults of shape and of names at once', async () => {
    const patch = { id: 'a', face: 'lft', rect: [0, 0, 1, 1], finish: 'carpet-none' };
    await putRoom({
      ...PLAIN_ROOM,
      room: { size: { width: -1, length: 6, height: 2.4 }, patches: [patch] },
      seating: {
        rows: [{ id: 'front', y: 3, seats: 2.5 }],
        reference: { row: 'back', seat: 1 },
      },
    });
    const result = await run('den.room.json');
    expect(result.code).toBe(2);
    expect(result.complaints.map((line) => line.split(':')[0])).toEqual([
      'room.size.width',
      'seating.rows[0].seats',
      'room.patches[0].finish',
      'seating.reference.row',
      'room.patches[0].face',
    ]);
  });

  it.each([
    ['no JSON', '{"format": '],
    ['another format', '{"format": "other", "version": 1}'],
    ['a newer version', JSON.stringify({ ...PLAIN_ROOM, version: 99 })],
    ['nothing', ''],
    ['bytes that are no UTF-8', Buffer.from([0x22, 0xff, 0x22])],
    ['a list', '[]'],
  ])('is refused with one sentence: %s', async (_what, content) => {
    await fs.writeFile(temp.at('den.room.json'), content);
    const result = await run('den.room.json');
    expect(result).toMatchObject({ code: 2, out: '' });
    expect(result.complaints).toHaveLength(1);
    expect(result.complaints[0]).toMatch(/^[^\n]+: [^\n]+$/);
  });

  it('is refused where it is missing, a folder, or over the limit', async () => {
    await fs.mkdir(temp.at('folder'));
    await fs.writeFile(temp.at('video.json'), '');
    await fs.truncate(temp.at('video.json'), MAX_ROOM_BYTES + 1);
    for (const [name, words] of [
      ['missing.json', 'no such file'],
      ['folder', 'not a file'],
      ['video.json', '5 MB at most'],
    ] as const) {
      const result = await run(name);
      expect(result).toMatchObject({ code: 2, out: '' });
      expect(result.complaints[0]).toContain(words);
    }
  });
});

describe('the command line', () => {
  it.each([[[]], [['a.json', 'b.json']], [['a.json', '--jsn']], [['a.json', '--out']]])(
    'is refused with a sentence: %j',
    async (args) => {
      const result = await run(...args);
      expect(result).toMatchObject({ code: 2, out: '' });
      expect(result.complaints).toHaveLength(1);
      expect(result.complaints[0]).toContain('npm run -s analyze -- FILE');
    },
  );

  it('explains itself', async () => {
    expect(await run('--help')).toMatchObject({ code: 0, complaints: [] });
  });
});

describe('the command as a process', () => {
  const start = (...args: string[]) =>
    spawn(
      process.execPath,
      ['--import', 'tsx', path.join(root, 'electron/batch/analyze-command.ts'), ...args],
      { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] },
    );

  async function finished(child: ReturnType<typeof start>): Promise<Result> {
    let out = '';
    let complaint = '';
    child.stdout.on('data', (part: Buffer) => (out += part.toString()));
    child.stderr.on('data', (part: Buffer) => (complaint += part.toString()));
    const code = await new Promise<number>((resolve) =>
      child.on('close', (end) => resolve(end ?? -1)),
    );
    return { code, out, complaints: complaint.split('\n').filter((line) => line !== '') };
  }

  it('analyses every example room', async () => {
    const folder = path.join(root, 'resources/examples');
    const examples = (await fs.readdir(folder)).filter((name) => name.endsWith('.room.json'));
    expect(examples.length).toBeGreaterThan(0);
    for (const name of examples) {
      const result = await finished(start(path.join(folder, name), '--json'));
      expect(result.code).toBe(0);
      // A busy computer may take long enough to say how far it is.
      expect(result.complaints.filter((line) => !line.startsWith('Solving'))).toEqual([]);
      expect(JSON.parse(result.out)).toHaveProperty('modes.shell');
    }
  });

  it.runIf(process.platform === 'linux')('says that its output could not be written', async () => {
    await putRoom(PLAIN_ROOM);
    const full = await fs.open('/dev/full', 'w');
    const child = spawn(
      process.execPath,
      [
        ...['--import', 'tsx', path.join(root, 'electron/batch/analyze-command.ts')],
        temp.at('den.room.json'),
      ],
      { cwd: root, stdio: ['ignore', full.fd, 'pipe'] },
    );
    let complaint = '';
    child.stderr?.on('data', (part: Buffer) => (complaint += part.toString()));
    const code = await new Promise((resolve) => child.on('close', resolve));
    await full.close();
    expect(code).toBe(1);
    expect(complaint).toMatch(
      /^The analysis could not be written: there is no space left[^\n]*\n$/,
    );
  });

  it('says nothing where the reader of its output leaves early', async () => {
    await putRoom(PLAIN_ROOM);
    const child = start(temp.at('den.room.json'), '--json');
    child.stdout.destroy();
    expect((await finished(child)).complaints).toEqual([]);
  });
});
