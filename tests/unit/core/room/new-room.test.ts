import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import { searchDefaultsM } from '../../../../core/bass/places';
import { startingDesigns, type Design } from '../../../../core/absorbers/design';
import { bayOf } from '../../../../core/proportions/bay';
import { CRITERIA } from '../../../../core/proportions/criteria';
import { PANEL_SIZE_M } from '../../../../core/reflections/panel';
import { fittingFrom, fittingPresets } from '../../../../core/room/fitting-presets';
import { newRoomFile } from '../../../../core/room/new-room';
import { openRoom } from '../../../../core/room/open-room';
import type { Project } from '../../../../core/room/project';
import { patchPresets, presetPatch } from '../../../../renderer/finishes/patch-presets';

const UNITS = ['metric', 'imperial'] as const;
type Units = (typeof UNITS)[number];
const WHOLE_M: Readonly<Record<Units, number>> = { metric: 0.01, imperial: 0.0254 };

const newRoom = (units: Units): Project => {
  const opened = openRoom(JSON.stringify(newRoomFile(units)));
  if (!opened.ok) throw new Error(opened.faults[0]?.sentence ?? '');
  return opened.project;
};

/** Every length in `lengths` that is no whole number of `partM`. */
const offStep = (lengths: readonly number[], partM: number): readonly number[] =>
  lengths.filter((m) => Math.abs(m - Math.round(m / partM) * partM) > 6e-6);

/** All finite numbers under keys that name metres. */
function lengthsIn(value: unknown, key = ''): readonly number[] {
  if (typeof value === 'number') return key.endsWith('M') ? [value] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => lengthsIn(inner, name));
}

describe.each(UNITS)('what the program itself proposes, %s', (units) => {
  const project = newRoom(units);
  const wholeM = WHOLE_M[units];
  const { size } = project.room;

  it('has a new room in whole units', () => {
    const [row] = project.seating.rows;
    const lengths = [
      size.width,
      size.length,
      size.height,
      row?.y ?? NaN,
      ...lengthsIn(row),
      ...lengthsIn(project.screen),
    ];
    expect(lengths.length).toBeGreaterThan(8);
    expect(offStep(lengths, wholeM)).toEqual([]);
  });

  it('has a new room whose modes lie apart and that fails no rule on its shape', () => {
    const { spacing } = analyze(project, units).modes;
    const failed = CRITERIA.filter((name) => spacing[name].pass === false);
    // Every room of this size has axial modes far apart somewhere.
    expect(failed.filter((name) => !/^axial(WidestGap|Overlap)$/.test(name))).toEqual([]);
    expect(project.target.kind).toBe('home-cinema');
  });

  it('has fittings in whole units, which hold to the walls they are named after', () => {
    for (const preset of fittingPresets(units)) {
      const solid = fittingFrom(preset, project);
      expect(offStep([...solid.min, ...solid.max], wholeM)).toEqual([]);
      expect(preset.about).not.toMatch(units === 'metric' ? /\bin\b \w+ \b(square|by)\b/ : /cm|mm/);
    }
  });

  it('has doors, windows and panels in whole units', () => {
    for (const preset of patchPresets(units)) {
      expect(offStep([...presetPatch(project, preset).rect], wholeM)).toEqual([]);
    }
    expect(offStep([...PANEL_SIZE_M[units]], wholeM)).toEqual([]);
  });

  it('has a bay, a carpenter’s step, boxes and a search in whole units', () => {
    const bay = bayOf(project, units);
    expect(bay.stepM).toBe(units === 'metric' ? 0.01 : 0.0127);
    for (const side of [bay.least, bay.largest]) {
      expect(offStep([side.width, side.length, side.height], wholeM)).toEqual([]);
    }
    expect(bay.least.height).toBeGreaterThanOrEqual(2.1336 - 1e-9);
    const { boxM, stepM } = searchDefaultsM(units);
    expect(offStep([...boxM, stepM, ...boxM.map((side) => side / 2)], wholeM)).toEqual([]);
  });

  it('keeps the bay of any room in whole units', () => {
    for (const width of [3.9876, 4.2, 4.191]) {
      const odd = { ...project, room: { ...project.room, size: { ...size, width } } };
      const { least } = bayOf(odd, units);
      expect(offStep([least.width], wholeM)).toEqual([]);
      expect(least.width).toBeLessThan(width);
    }
  });

  it('starts an absorber in figures of the shop', () => {
    const designs: readonly Design[] = Object.values(startingDesigns(units));
    const partM = units === 'metric' ? 0.001 : 0.0254 / 16;
    expect(
      offStep(
        designs.flatMap((design) => lengthsIn(design)),
        partM,
      ),
    ).toEqual([]);
  });
});
