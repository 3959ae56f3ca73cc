import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import { applyEdit } from '../../../../core/room/edits';
import { decodeRoomBytes, openRoom, saveRoom } from '../../../../core/room/open-room';
import type { Project } from '../../../../core/room/project';
import { summary } from '../../../../core/report/summary';
import { tables } from '../../../../core/report/tables';
import { arbitraryProject } from '../../support/arbitrary-project';
import { deepFreeze } from '../../support/freeze';
import { EXAMPLES, exampleText, notFinite } from '../../support/rooms';

/** Open what the bytes hold and analyse it; returns the figures in it that are not finite. */
function openAndAnalyse(bytes: Uint8Array): readonly string[] {
  const text = decodeRoomBytes(bytes);
  if (!text.ok) {
    expect(text.faults.length).toBeGreaterThan(0);
    return [];
  }
  const room = openRoom(text.text);
  if (!room.ok) {
    expect(room.faults.length).toBeGreaterThan(0);
    return [];
  }
  const { findings, ...rest } = analyze(room.project);
  // Remedies are tried out when they are read, which is tested with fewer rooms.
  return notFinite({ ...rest, figures: findings.map(({ value, limit }) => [value, limit]) });
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

const exampleBytes = fc.constantFrom(...EXAMPLES).map((name) => utf8(exampleText(name)));

describe('any valid project', () => {
  it('survives being saved and opened, unknown fields and all', () => {
    fc.assert(
      fc.property(arbitraryProject, (project) => {
        expect(openRoom(saveRoom(project))).toEqual({ ok: true, project });
      }),
      { numRuns: 200 },
    );
  });

  it('is analysed without changing it, twice alike, with every figure finite', () => {
    fc.assert(
      fc.property(arbitraryProject, (project) => {
        const frozen = deepFreeze(structuredClone(project));
        const analysis = analyze(frozen);
        expect(notFinite(analysis)).toEqual([]);
        expect(analyze(project)).toEqual(analysis);
      }),
      { numRuns: 40 },
    );
  }, 60_000);

  it('is told in words and tables without a "NaN" or an "undefined"', () => {
    fc.assert(
      fc.property(arbitraryProject, (project) => {
        const plain: Project = { ...project, name: 'Room', finishesCustom: named(project) };
        const analysis = analyze(plain);
        const texts = [
          summary(plain, analysis),
          ...tables(plain, analysis).map((table) => table.text),
        ];
        for (const text of texts) expect(text).not.toMatch(/\bNaN\b|\bInfinity\b|\bundefined\b/);
      }),
      { numRuns: 40 },
    );
  }, 60_000);
});

/** The project's own finishes with plain texts in them. */
const named = (project: Project): Project['finishesCustom'] =>
  project.finishesCustom.map((finish) => ({ ...finish, name: 'Own', source: 'own' }));

describe('a file of anything', () => {
  it('is refused, whatever its bytes are', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(openAndAnalyse(bytes)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('is refused, whatever its JSON is', () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        expect(openRoom(text).ok).toBe(false);
      }),
      { numRuns: 200 },
    );
  });

  it('that was cut short is refused', () => {
    fc.assert(
      fc.property(exampleBytes, fc.nat(), (bytes, at) => {
        // Without its last brace no example is whole; what follows that brace is white space.
        const end = at % (bytes.lastIndexOf('}'.charCodeAt(0)) + 1);
        const text = decodeRoomBytes(bytes.slice(0, end));
        expect(text.ok && openRoom(text.text).ok).toBe(false);
      }),
      { numRuns: 150 },
    );
  });

  it('with a few bytes changed is refused, or opened and analysed', () => {
    const flips = fc.array(fc.tuple(fc.nat(), fc.integer({ min: 0, max: 255 })), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(exampleBytes, flips, (bytes, changes) => {
        const changed = bytes.slice();
        for (const [at, value] of changes) changed[at % changed.length] = value;
        expect(openAndAnalyse(changed)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('with its figures put at random is refused, or opened and analysed', () => {
    const figure = fc.oneof(
      fc.constantFrom('0', '-0', '1', '-1', '1e-9', '1e308', '1e999', '-1e999', 'null', '"4"'),
      fc.integer({ min: -1000, max: 5000 }).map((n) => String(n / 100)),
      fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...EXAMPLES).map(exampleText),
        fc.array(fc.tuple(fc.nat({ max: 200 }), figure), { minLength: 1, maxLength: 3 }),
        (text, changes) => {
          const places = [...text.matchAll(/(?<=[:[,]\s*)-?\d+(?:\.\d+)?(?=\s*[,\]}\n])/g)];
          const at = new Map(changes.map(([i, value]) => [i % places.length, value]));
          let i = 0;
          const changed = text.replace(
            /(?<=[:[,]\s*)-?\d+(?:\.\d+)?(?=\s*[,\]}\n])/g,
            (old) => at.get(i++) ?? old,
          );
          expect(openAndAnalyse(utf8(changed))).toEqual([]);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('every change that a finding proposes', () => {
  it('leaves a project that can be saved and opened again', () => {
    fc.assert(
      fc.property(arbitraryProject, (project) => {
        for (const { edit } of analyze(project).findings.flatMap((finding) => finding.remedies)) {
          if (!edit) continue;
          const changed = applyEdit(project, edit);
          expect(openRoom(saveRoom(changed))).toEqual({ ok: true, project: changed });
        }
      }),
      { numRuns: 50 },
    );
  }, 60_000);
});
