/** No word of the other unit system is left in what a person reads. */

import { beforeAll, describe, expect, it } from 'vitest';
import { startingDesigns } from '../../../../core/absorbers/design';
import { designFaults } from '../../../../core/absorbers/design-faults';
import { designName } from '../../../../core/absorbers/design-name';
import type { Analysis } from '../../../../core/analysis/analyze';
import { analyzeWhole } from '../../../../core/analysis/slow-work';
import { placeSpeakers } from '../../../../core/placing/placer';
import type { LengthUnits } from '../../../../core/quantity/length';
import { finish } from '../../../../core/quantity/slices';
import { summary } from '../../../../core/report/summary';
import { tables } from '../../../../core/report/tables';
import { fittingPresets } from '../../../../core/room/fitting-presets';
import type { Project } from '../../../../core/room/project';
import { patchPresets } from '../../../../renderer/finishes/patch-presets';
import { EXAMPLES, example } from '../../support/rooms';

/** Metric units after a figure; `m` alone only where it ends a figure. Flow is told in SI units always. */
const METRIC = /\d\s?(?:mm|cm|m²|m2|m³|m3|m|km|kg|kg\/m²|m\/s|°C|metres?)(?![\w'²³/])/;
const IMPERIAL =
  /\d\s?(?:in|ft|lb|sq ft|cu ft|°F|feet|inches)(?!\w)|(?<![-\w])\d+(?:\/\d+)?"|\d' ?\d|\d'(?!\w)/;
const LEFT_OVER: Readonly<Record<LengthUnits, RegExp>> = { metric: IMPERIAL, imperial: METRIC };

/** What a source says of its own is quoted as it is. */
const OWN_WORDS = ['IRC R305.1 (7 ft)', '100 m³ (3,530 cu ft)'];

/** The lines of `text` that say a figure in the other units. */
function leftOver(text: string, units: LengthUnits): readonly string[] {
  const plain = OWN_WORDS.reduce((rest, words) => rest.replaceAll(words, ''), text);
  return plain.split(/\r?\n/).filter((line) => LEFT_OVER[units].test(line));
}

/** A room with something wrong in every part, so that most findings speak. */
function wronged(project: Project): Project {
  const { width, length, height } = project.room.size;
  return {
    ...project,
    room: {
      ...project.room,
      size: { width, length, height: 2.05 },
      bay: {
        largest: { width: width - 0.13, length, height },
        least: { width: 1, length: 1, height: 1 },
        stepM: 0.01,
        fixed: [],
        leastFloorM2: 0,
      },
      solids: [
        ...project.room.solids,
        {
          id: 'out',
          kind: 'column',
          min: [0.5, 0.5, 0],
          max: [0.6, 0.6, 2.4],
          finish: 'gyp13-stud',
        },
        { id: 'thin', kind: 'other', min: [1, 0.004, 0], max: [1.4, 0.3, 1], finish: 'gyp13-stud' },
      ],
      patches: [
        ...project.room.patches,
        { id: 'door-9', kind: 'door', face: 'left', rect: [1, 0, 1.81, 2.4], finish: 'door-solid' },
        {
          id: 'panel-9',
          kind: 'panel',
          face: 'left',
          rect: [1.5, 0.5, 2.5, 1.5],
          finish: 'gf-50-rigid',
        },
      ],
    },
    seating: {
      ...project.seating,
      rows: project.seating.rows.map((row) => ({ ...row, pitchM: 1.9 })),
    },
    screen: { ...project.screen, widthM: width + 0.5 },
    speakers: {
      ...project.speakers,
      placed: project.speakers.placed.map((speaker, i) => ({
        ...speaker,
        position: i === 0 ? [-0.21, 1, 1] : i === 1 ? [1.2, 0.05, 0.9] : speaker.position,
        ...(i > 1 ? { mount: 'on-wall' as const, boxM: [0.3, 0.5, 0.45] as const } : {}),
      })),
      subwoofers: [
        { id: 'sub-1', position: [0.55, 0.55, 0.2] },
        { id: 'sub-2', position: [-0.3, 2, 0.2] },
      ],
    },
  };
}

const rooms = EXAMPLES.flatMap((name) => [
  { name, project: example(name) },
  { name: `${name}, wronged`, project: wronged(example(name)) },
]);

describe.each(['metric', 'imperial'] as const)('what is told in %s units', (units) => {
  const told: { name: string; project: Project; analysis: Analysis }[] = [];
  beforeAll(() => {
    for (const { name, project } of rooms) {
      told.push({ name, project, analysis: analyzeWhole(project, units) });
    }
  }, 120_000);

  it('of a room for a terminal has no figure in the other units', () => {
    for (const { project, analysis } of told) {
      expect(leftOver(summary(project, analysis, units), units)).toEqual([]);
    }
  });

  it('of many kinds of findings was looked at', () => {
    const kinds = new Set(
      told.flatMap(({ analysis }) => analysis.findings.map(({ id }) => id.replace(/:.*/, ''))),
    );
    expect(kinds.size).toBeGreaterThan(14);
  });

  it('in every finding and remedy has no figure in the other units', () => {
    for (const { analysis } of told) {
      for (const { message, where, caution, source, remedies } of analysis.findings) {
        const texts = [message, where, caution ?? '', source, ...remedies.map(({ text }) => text)];
        expect(leftOver(texts.join('\n'), units)).toEqual([]);
      }
    }
  });

  it('in the tables names materials and places in these units', () => {
    for (const { project, analysis } of told) {
      for (const { name, text } of tables(project, analysis, units)) {
        if (name === 'analysis.json') continue;
        expect(leftOver(text, units)).toEqual([]);
      }
    }
  });

  it('by the placer has no figure in the other units', () => {
    for (const name of EXAMPLES) {
      const { trades, unplaced } = finish(placeSpeakers(example(name), {}, units));
      const texts = [
        ...trades.map(({ text }) => text),
        ...unplaced.flatMap(({ reason, helps }) => [reason, ...helps.map(({ text }) => text)]),
      ];
      expect(leftOver(texts.join('\n'), units)).toEqual([]);
    }
  });

  it('of what is ready to be put in has no figure in the other units', () => {
    const abouts = [...fittingPresets(units), ...patchPresets(units)].map(({ about }) => about);
    const designs = Object.values(startingDesigns(units));
    const names = designs.map((design) => designName(design, units));
    const faults = designs.flatMap((design) =>
      designFaults({ ...design, airGapM: 9, layers: [] }, units).map(({ sentence }) => sentence),
    );
    expect(leftOver([...abouts, ...names, ...faults].join('\n'), units)).toEqual([]);
  });
});
