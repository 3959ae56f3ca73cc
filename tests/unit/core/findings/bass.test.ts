import { describe, expect, it } from 'vitest';
import { seatResponses } from '../../../../core/analysis/seat-response';
import { searchPlaces } from '../../../../core/analysis/subwoofer-search';
import { analyzeWhole } from '../../../../core/analysis/slow-work';
import { asSubwoofers } from '../../../../core/bass/as-subwoofers';
import type { SeatFigures } from '../../../../core/bass/seat-figures';
import {
  bassFindings,
  EXTREME_LIMIT_DB,
  SPREAD_LIMIT_DB,
  type FoundBass,
} from '../../../../core/findings/bass';
import { finish } from '../../../../core/quantity/slices';
import { applyEdit } from '../../../../core/room/edits';
import type { Project } from '../../../../core/room/project';
import { example, given } from '../../support/rooms';

const bay = example('basement-bay');
const figuresOf = (project: Project): SeatFigures =>
  given(finish(seatResponses(project, null)).figures);

/** The best set of a search in the plain shell. */
function searched(project: Project): { found: FoundBass; present: number } {
  const options = {
    count: 2,
    stepM: 0.4,
    boxM: [0.4, 0.4, 0.4],
    drives: false,
    bandHz: [20, 120],
  } as const;
  const { search, best, places } = finish(searchPlaces(project, null, options));
  const first = given(given(search).sets[0]);
  const { subwoofers } = project.speakers;
  return {
    found: {
      subwoofers: asSubwoofers(first.subwoofers, places.allowed, subwoofers, options.boxM),
      figures: given(best),
    },
    present: given(given(search).present).meanSpatialVarianceDb2,
  };
}

const calm: SeatFigures = {
  bandHz: [20, 120],
  seats: 3,
  spreadDb: SPREAD_LIMIT_DB,
  meanSpatialVarianceDb2: SPREAD_LIMIT_DB ** 2,
  peak: { frequencyHz: 40, levelDb: EXTREME_LIMIT_DB },
  dip: { frequencyHz: 60, levelDb: -EXTREME_LIMIT_DB },
};

const told = (figures: SeatFigures): readonly string[] =>
  bassFindings({ figures, of: 'shell' }, null).map(({ id }) => id);

describe('the bass at the seats', () => {
  it('is told by the whole analysis, with its figure, limit, band and source', () => {
    const { findings } = analyzeWhole(bay);
    const spread = given(findings.find(({ id }) => id === 'bass-spread'));
    expect(spread).toMatchObject({ subject: 'bass', severity: 'warning', limit: 3, unit: 'dB' });
    expect(spread.value).toBeCloseTo(figuresOf(bay).spreadDb, 9);
    expect(spread.message).toMatch(/differs from seat to seat.*20 to 120 Hz.*plain shell/);
    expect(spread.source).toMatch(/Welti.*our own convention/);
    expect(findings.some(({ id }) => id === 'bass-dip')).toBe(true);
  });

  it('is told of the room as built where fittings fill part of the shell', () => {
    const spread = analyzeWhole(example('under-the-ducts')).findings.find(
      ({ id }) => id === 'bass-spread',
    );
    expect(spread?.message).toMatch(/room as built/);
  });

  it('is nothing to tell at the limits, and each figure is told past its own', () => {
    expect(told(calm)).toEqual([]);
    expect(told({ ...calm, spreadDb: 3.01 })).toEqual(['bass-spread']);
    expect(told({ ...calm, peak: { frequencyHz: 40, levelDb: 6.01 } })).toEqual(['bass-peak']);
    expect(told({ ...calm, dip: { frequencyHz: 40, levelDb: -6.01 } })).toEqual(['bass-dip']);
  });

  it('is nothing to tell without subwoofers or without seats', () => {
    const silent = { ...bay, speakers: { ...bay.speakers, subwoofers: [] } };
    const empty = { ...bay, seating: { ...bay.seating, rows: [] } };
    for (const project of [silent, empty]) {
      const ids = analyzeWhole(project).findings.map(({ id }) => id);
      expect(ids.filter((id) => id.startsWith('bass-'))).toEqual([]);
    }
  });

  it('is judged at the same frequencies as the search judges what stands there', () => {
    // The two list modes to 320 and to 200 Hz; what lies above is in the tail.
    const { present } = searched(bay);
    expect(Math.abs(figuresOf(bay).spreadDb - Math.sqrt(present))).toBeLessThan(0.05);
  });
});

describe('the remedy for uneven bass', () => {
  it('is the search, which the window starts, while nothing was found yet', () => {
    const findings = bassFindings({ figures: figuresOf(bay), of: 'shell' }, null);
    for (const { remedies } of findings)
      expect(remedies[0]).toMatchObject({ opens: 'subwoofer-search' });
  });

  it.each(['basement-bay', 'long-room'] as const)(
    'of %s makes what it says, names every figure, and is not offered again',
    (name) => {
      const project = example(name);
      const now = figuresOf(project);
      const { found } = searched(project);
      const spread = given(
        bassFindings({ figures: now, of: 'shell' }, found).find(({ id }) => id === 'bass-spread'),
      );
      const [remedy] = spread.remedies;
      const after = figuresOf(applyEdit(project, given(given(remedy).edit)));
      expect(after.spreadDb).toBeLessThan(now.spreadDb);
      // What is promised, within a tenth for rounding and another for the modes' list.
      const said = [...given(remedy).text.matchAll(/to (-?\d+\.\d) dB/g)].map(([, db]) =>
        Number(db),
      );
      const made = [after.spreadDb, after.peak?.levelDb, -given(after.dip).levelDb];
      expect(said).toHaveLength(3);
      said.forEach((db, n) => expect(Math.abs(db - given(made[n]))).toBeLessThan(0.2));
      const again = bassFindings({ figures: after, of: 'shell' }, found);
      for (const { remedies } of again) expect(remedies.some(({ edit }) => edit)).toBe(false);
    },
  );

  it('says what is left where the limit is not met', () => {
    const { found } = searched(bay);
    const [spread] = bassFindings({ figures: figuresOf(bay), of: 'shell' }, found);
    expect(found.figures.spreadDb).toBeGreaterThan(SPREAD_LIMIT_DB);
    expect(spread?.remedies[0]?.text).toMatch(/spread over the seats .*, still over 3 dB/);
  });
});
