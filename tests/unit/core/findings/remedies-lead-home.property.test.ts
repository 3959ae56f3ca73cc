import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import type { Finding, Remedy } from '../../../../core/findings/finding';
import { isBetterRoom } from '../../../../core/findings/lead-home';
import { weightOf } from '../../../../core/findings/order';
import { applyEdit } from '../../../../core/room/edits';
import { openRoom, saveRoom } from '../../../../core/room/open-room';
import type { Project } from '../../../../core/room/project';
import { arbitraryProject } from '../../support/arbitrary-project';
import { plausibleRoom } from '../../support/plausible-room';
import { example, EXAMPLES } from '../../support/rooms';

const findingsOf = (project: Project): readonly Finding[] => analyze(project).findings;

const RANKS = ['fault', 'warning', 'note'];
const rank = ({ severity }: Finding): number => RANKS.indexOf(severity);

/** A figure may stray from its limit by so much in a whole chain of presses before it counts as worse. */
const same = (weight: number): number => 1.15 * weight + 0.2;

interface Press {
  readonly finding: Finding;
  readonly remedy: Remedy;
  readonly project: Project;
}

/** Every remedy with a button, pressed. */
function presses(project: Project, findings = findingsOf(project)): readonly Press[] {
  return findings.flatMap((finding) =>
    finding.remedies.flatMap((remedy) =>
      remedy.edit ? [{ finding, remedy, project: applyEdit(project, remedy.edit) }] : [],
    ),
  );
}

/** What is wrong with a remedy, in words; nothing where it does what it has to. */
function complaints(before: readonly Finding[], { finding, remedy, project }: Press): string[] {
  const wrong: string[] = [];
  const say = (what: string): unknown => wrong.push(`${finding.id}: "${remedy.text}" ${what}`);
  const after = findingsOf(project);
  const left = after.find(({ id }) => id === finding.id);
  if (left) {
    const nearer = rank(left) > rank(finding) || weightOf(left) < weightOf(finding);
    if (!nearer || rank(left) < rank(finding)) say('brings its figure no nearer to the limit');
    if (!remedy.text.includes('Left then: ')) say('does not say what is left');
  }
  for (const other of after) {
    if (other.severity === 'note' || other.id === finding.id) continue;
    const was = before.find(({ id }) => id === other.id);
    const isNew = !was || rank(other) < rank(was);
    if (isNew && !remedy.text.includes(other.where)) say(`brings ${other.id} unsaid`);
    const isGrave = rank(other) <= rank(finding) && finding.caution === undefined;
    if (isNew && isGrave) say(`brings ${other.id}, which is as bad`);
  }
  if (!openRoom(saveRoom(project)).ok) say('leaves a room that is refused');
  return wrong;
}

const allComplaints = (project: Project): readonly string[] => {
  const before = findingsOf(project);
  return presses(project, before).flatMap((press) => complaints(before, press));
};

interface Pressed {
  readonly end: Project;
  /** What was pressed, in order. */
  readonly texts: readonly string[];
}

/** Press the first remedy with a button of the first finding that has one, until none is left. */
function pressOn(start: Project, most: number): Pressed {
  let project = start;
  const texts: string[] = [];
  while (texts.length < most) {
    const remedy = findingsOf(project)
      .map(({ remedies }) => remedies[0])
      .find((first) => first?.edit !== undefined);
    if (!remedy?.edit) break;
    texts.push(remedy.text);
    project = applyEdit(project, remedy.edit);
  }
  return { end: project, texts };
}

/** Faults and warnings of the start that are farther from their limits at the end, and new ones unsaid. */
function worseAtEnd(start: Project, { end, texts }: Pressed): readonly string[] {
  const before = findingsOf(start);
  return findingsOf(end).flatMap((finding) => {
    if (finding.severity === 'note') return [];
    const was = before.find(({ id }) => id === finding.id);
    const isWorse =
      !was ||
      rank(finding) < rank(was) ||
      (rank(finding) === rank(was) && weightOf(finding) > same(weightOf(was)));
    const isSaid = texts.some((text) => text.includes(finding.where));
    return isWorse && !isSaid ? [`${finding.id} (${finding.message})`] : [];
  });
}

/** Remedies after which another one puts the first matter back as bad as it was, or the room as it was. */
function undone(project: Project): readonly string[] {
  return presses(project).flatMap((first) =>
    presses(first.project).flatMap((second) => {
      const back = findingsOf(second.project).find(({ id }) => id === first.finding.id);
      const isBack =
        saveRoom(second.project) === saveRoom(project) ||
        (back !== undefined &&
          second.finding.id !== first.finding.id &&
          rank(back) <= rank(first.finding) &&
          weightOf(back) >= weightOf(first.finding) - 1e-9);
      return isBack ? [`"${second.remedy.text}" undoes "${first.remedy.text}"`] : [];
    }),
  );
}

describe('a remedy', () => {
  it.each(EXAMPLES)('of %s clears its matter or comes nearer, and hides no harm', (name) => {
    const project = example(name);
    expect(presses(project).length).toBeGreaterThan(0);
    expect(allComplaints(project)).toEqual([]);
  });

  it('of any plausible room does too', () => {
    let pressed = 0;
    fc.assert(
      fc.property(plausibleRoom, (project) => {
        pressed += presses(project).length;
        expect(allComplaints(project)).toEqual([]);
      }),
      { numRuns: 20 },
    );
    expect(pressed).toBeGreaterThan(60);
  }, 120_000);

  it('of any room at all does too', () => {
    let pressed = 0;
    fc.assert(
      fc.property(arbitraryProject, (project) => {
        pressed += presses(project).length;
        expect(allComplaints(project)).toEqual([]);
      }),
      { numRuns: 25 },
    );
    expect(pressed).toBeGreaterThan(20);
  }, 120_000);
});

describe('two remedies, one after the other', () => {
  it.each(EXAMPLES)(
    'of %s never undo each other',
    (name) => {
      expect(undone(example(name))).toEqual([]);
    },
    120_000,
  );
});

describe('pressing the first remedy again and again', () => {
  const MOST_PRESSES = 30;

  function expectHome(project: Project): number {
    const pressed = pressOn(project, MOST_PRESSES);
    const { end, texts } = pressed;
    expect(texts.length).toBeLessThan(MOST_PRESSES);
    expect(worseAtEnd(project, pressed)).toEqual([]);
    if (texts.length > 0) expect(isBetterRoom(findingsOf(project), findingsOf(end))).toBe(true);
    return texts.length;
  }

  it.each(EXAMPLES)('ends, in a better %s', (name) => {
    expect(expectHome(example(name))).toBeGreaterThan(0);
  });

  it('ends, in a better room, wherever it began', () => {
    let pressed = 0;
    fc.assert(
      fc.property(plausibleRoom, (project) => {
        pressed += expectHome(project);
      }),
      { numRuns: 10 },
    );
    expect(pressed).toBeGreaterThan(20);
  }, 120_000);
});
