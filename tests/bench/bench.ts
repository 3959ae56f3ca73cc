/**
 * How long the work of one edit takes on each example room: `npm run bench`. Prints medians and
 * 95th percentiles in milliseconds, measured warm in one process, and a straightforward version of
 * the same figures beside it, measured in the same run. A benchmark, not a test: nothing fails here.
 */

import { readFileSync } from 'node:fs';
import { energyAttenuationPerM } from '../../core/air/attenuation';
import { speedOfSoundMS } from '../../core/air/medium';
import { analyze } from '../../core/analysis/analyze';
import { bandAbsorption } from '../../core/decay/absorption-area';
import { eyringS, sabineS } from '../../core/decay/reverberation';
import { modeFrequencyHz, shellModes, type ModeOrder } from '../../core/modes/shell-modes';
import { exactOctaveHz, OCTAVES_HZ } from '../../core/quantity/bands';
import { finishLookup } from '../../core/room/finishes';
import { openRoom, saveRoom } from '../../core/room/open-room';
import { axialModes, axialSpacing } from '../../core/modes/axial-spacing';
import { modesPerThirdOctave } from '../../core/modes/mode-count';
import { proportionMap } from '../../core/proportions/map';
import { finish } from '../../core/quantity/slices';
import { searchRooms } from '../../core/proportions/search';
import type { Bay, Project, ShellSize } from '../../core/room/project';
import { freeSpace } from '../../core/room/space';
import { measureBass } from './bass';
import { measureEditLatency } from './edit-latency';
import { REFLECTIONS_AIM_MS, reflectionWork } from './reflections';
import { measureShapedModes } from './shaped-modes';
import { measureSmallAlgebra } from './small-algebra';

const EXAMPLES = ['basement-bay', 'long-room', 'under-the-ducts'];
/** An edit and its analysis have to be done in this time for a drag to feel immediate, ms. */
const AIM_MS = 5;
const WARM_UP_RUNS = 200;
const RUNS = 1000;
/** The straightforward version is slow and steady: fewer runs say as much. */
const BASELINE_RUNS = 100;

/** The highest order that the straightforward version looks at along each side. */
const CUBE = 40;

interface Timing {
  readonly medianMs: number;
  readonly p95Ms: number;
}

/** Something that a measured call has computed, kept so that no call is optimised away. */
let kept: unknown;

function timed(work: () => unknown, runs: number, warmUp: number): Timing {
  for (let i = 0; i < warmUp; i++) kept = work();
  const times: number[] = [];
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    kept = work();
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  const at = (share: number): number => times[Math.ceil(times.length * share) - 1] ?? 0;
  return { medianMs: at(0.5), p95Ms: at(0.95) };
}

/**
 * Modes and decay as one would first write them: every order of a fixed cube is tried and sorted,
 * and each octave cuts up the free space and adds up the absorption on its own. No findings, no
 * loudspeakers, no spacing: less than `analyze` gives.
 */
function straightforward(project: Project): unknown {
  const speedMS = speedOfSoundMS(project.air.temperatureC);
  const modes: { frequencyHz: number; order: ModeOrder }[] = [];
  for (let nx = 0; nx <= CUBE; nx++)
    for (let ny = 0; ny <= CUBE; ny++)
      for (let nz = 0; nz <= CUBE; nz++) {
        const order = [nx, ny, nz] as const;
        modes.push({ order, frequencyHz: modeFrequencyHz(order, project.room.size, speedMS) });
      }
  modes.sort((a, b) => a.frequencyHz - b.frequencyHz);
  const bands = OCTAVES_HZ.map((hz) => {
    const space = freeSpace(project.room);
    const { areaM2 } = bandAbsorption(space.surfaces, finishLookup(project), hz);
    if (areaM2 === null) return null;
    const airPerM = energyAttenuationPerM(exactOctaveHz(hz), project.air);
    const input = {
      volumeM3: space.volumeM3,
      surfaceM2: space.surfaceM2,
      absorptionM2: areaM2,
      airPerM,
      speedMS,
    };
    return { sabine: sabineS(input), eyring: eyringS(input) };
  });
  return { modes: modes.filter((mode) => mode.frequencyHz <= 200), bands };
}

function projectIn(text: string): Project {
  const room = openRoom(text);
  if (!room.ok) throw new Error(`An example does not open: ${JSON.stringify(room.faults)}`);
  return room.project;
}

/** As many solids and patches as a room file may hold, no two of them in line. */
function fullestRoom(): Project {
  const bare = projectIn(
    JSON.stringify({
      format: 'roomwright-room',
      version: 1,
      room: { size: { width: 5, length: 6, height: 3 } },
    }),
  );
  const solids = Array.from({ length: 60 }, (_, i) => ({
    id: `s${i}`,
    kind: 'other' as const,
    min: [0.1 + i * 0.031, 0.1 + i * 0.032, 0.05 + i * 0.013] as const,
    max: [2.1 + i * 0.0313, 2.3 + i * 0.0323, 1 + i * 0.0133] as const,
    finish: 'gyp13-stud',
  }));
  const patches = Array.from({ length: 60 }, (_, i) => ({
    id: `p${i}`,
    kind: 'panel' as const,
    face: ['front', 'left', 'floor'][i % 3] ?? 'front',
    rect: [0.01 + i * 0.0171, 0.011 + i * 0.0172, 1 + i * 0.0173, 1.01 + i * 0.0174] as const,
    finish: 'door-solid',
  }));
  return { ...bare, room: { ...bare.room, solids, patches } };
}

const ms = (value: number): string => value.toFixed(3).padStart(10);

function row(what: string, { medianMs, p95Ms }: Timing, more = ''): void {
  console.log(`${what.padEnd(34)}${ms(medianMs)}${ms(p95Ms)}  ${more}`.trimEnd());
}

console.log(`Node ${process.version}; ${RUNS} warm runs after ${WARM_UP_RUNS}; milliseconds.`);
console.log(
  `Straightforward: modes from a fixed cube of orders 0 to ${CUBE}, sorted; absorption octave by octave`,
);
console.log(`without shared work; no findings, no loudspeakers. ${BASELINE_RUNS} warm runs.`);
console.log('');
console.log(`${''.padEnd(34)}${'median'.padStart(10)}${'p95'.padStart(10)}`);

for (const name of EXAMPLES) {
  const file = new URL(`../../resources/examples/${name}.room.json`, import.meta.url);
  const text = readFileSync(file, 'utf8');
  const project = projectIn(text);
  const analysis = timed(() => analyze(project), RUNS, WARM_UP_RUNS);
  const plain = timed(() => straightforward(project), BASELINE_RUNS, BASELINE_RUNS / 5);
  const verdict = analysis.medianMs <= AIM_MS ? 'within' : 'OVER';
  const ratio = plain.medianMs / analysis.medianMs;
  row(`${name}: analyze`, analysis, `${verdict} the aim of ${AIM_MS} ms`);
  row(`${name}: straightforward`, plain, `${ratio.toFixed(1)} times as long`);
  row(
    `${name}: open and save`,
    timed(() => saveRoom(projectIn(text)), RUNS, WARM_UP_RUNS),
    `${(text.length / 1000).toFixed(1)} kB`,
  );
}

/** Search and map against the same figure made the plain way: lists of modes, sorted and counted. */
function measureSearch(): void {
  const largest = { width: 4.2, length: 6.4, height: 2.4 };
  const bay: Bay = {
    largest,
    least: { width: 3.6, length: 5.6, height: 2.2 },
    stepM: 0.01,
    fixed: [],
    leastFloorM2: 0,
  };
  const speedMS = speedOfSoundMS(20);
  let tried = 0;
  const search = timed(() => (tried = finish(searchRooms(bay, largest, speedMS)).tried), 5, 2);
  const perSecond = (1000 * tried) / search.medianMs;
  const plain = timed(() => plainUnevenness(largest, speedMS), 300, 50);
  const ratio = (perSecond * plain.medianMs) / 1000;
  console.log('');
  row(`search: ${tried} rooms`, search, `${Math.round(perSecond / 1000)} thousand rooms a second`);
  row('one room, the plain way', plain, `the search takes ${ratio.toFixed(0)} times less a room`);
  row(
    'map of 200 x 200 proportions',
    timed(() => finish(proportionMap(largest.height, speedMS, 200, 200)), 10, 3),
    'aim 500 ms',
  );
}

/** Unevenness from the lists that the charts show. */
function plainUnevenness(size: ShellSize, speedMS: number): number {
  const { gaps, pileUps } = axialSpacing(axialModes(size, speedMS), 200);
  const bands = modesPerThirdOctave(shellModes(size, speedMS, 225));
  const apart = gaps.reduce((sum, gap) => sum + gap.widthHz - 20, 0);
  const close = pileUps.reduce((sum, pileUp) => sum + 5 - pileUp.closestHz, 0);
  const missing = bands.reduce(
    (sum, band, i) => sum + Math.max(0, (bands[i - 1]?.count ?? 0) - band.count),
    0,
  );
  return apart + close + 5 * missing;
}

const fullest = fullestRoom();
row(
  '60 solids and 60 patches: analyze',
  timed(() => analyze(fullest), 3, 1),
  'the most that a file may hold; 3 runs',
);

const reflections = reflectionWork(fullest);
console.log('');
row(
  `11 speakers, 8 seats, 20 solids: ${reflections.allFirstOrder()} paths`,
  timed(reflections.allFirstOrder, 200, 50),
  `first order, aim ${REFLECTIONS_AIM_MS} ms`,
);
row(
  `one pair to the second order: ${reflections.oneSecondOrder()} paths`,
  timed(reflections.oneSecondOrder, 200, 50),
);

measureSearch();
console.log('');
measureShapedModes();
measureSmallAlgebra();
measureBass(
  projectIn(
    readFileSync(
      new URL('../../resources/examples/basement-bay.room.json', import.meta.url),
      'utf8',
    ),
  ),
);

const edits = await measureEditLatency();
if (edits) {
  const summary = (times: readonly number[]): Timing => {
    const rising = [...times].sort((a, b) => a - b);
    const at = (share: number): number => rising[Math.ceil(rising.length * share) - 1] ?? 0;
    return { medianMs: at(0.5), p95Ms: at(0.95) };
  };
  console.log('');
  console.log(
    `A wall dragged in Chromium at 1440 x 900, ${edits.edits} edits, from the pointer event:`,
  );
  row(
    'to the end of the scripted frame',
    summary(edits.scriptMs),
    'the wait for the frame included',
  );
  row(
    'to the next frame',
    summary(edits.frameMs),
    'the picture is drawn, here perhaps in software',
  );
}

if (kept === undefined) console.log('Nothing was measured.');
