import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { analyzeWhole } from '../../../../core/analysis/slow-work';
import { CONTRACT } from '../../../../core/report/contract';
import { published } from '../../../../core/report/published';
import type { Project } from '../../../../core/room/project';
import { readableJson } from '../../../support/readable-json';
import { EXAMPLES, example, roomOf } from '../../support/rooms';

/** As it comes out of the batch command. */
const printed = (project: Project): unknown =>
  JSON.parse(JSON.stringify(published(analyzeWhole(project))));

describe('what is published as JSON', () => {
  it.each(EXAMPLES)(
    '%s is what was read and agreed to (UPDATE_GOLDEN=1 writes it anew)',
    (name) => {
      const golden = new URL(`../../../golden/${name}.json`, import.meta.url);
      const json = printed(example(name));
      expect(CONTRACT.safeParse(json)).toMatchObject({ success: true });
      const text = readableJson(json);
      if (process.env['UPDATE_GOLDEN'] === '1') writeFileSync(golden, text);
      expect(text).toBe(readFileSync(golden, 'utf8'));
    },
  );

  it.each([
    ['an empty shell', {}, {}],
    [
      'a shell that is filled up',
      { solids: [{ id: 'all', kind: 'other', min: [0, 0, 0], max: [4, 5, 3] }] },
      {},
    ],
    [
      'a finish without figures, and what nobody knows',
      { finishes: { floor: 'bare' } },
      {
        finishesCustom: [{ id: 'bare', name: 'Bare', absorption: {}, source: 'invented' }],
        objects: [{ id: 'chairs', item: 'unheard-of', count: 2 }],
        speakers: { layout: '0+5+0', placed: [{ channel: 'X+000', position: [1, 1, 1] }] },
        seating: { rows: [{ id: 'row', seats: 2, y: 3 }] },
      },
    ],
    [
      'a layout to come',
      {},
      {
        seating: { rows: [{ id: 'row', seats: 2, y: 3 }] },
        speakers: {
          layout: '0+5+0',
          later: '4+7+0',
          placed: [
            { channel: 'M+030', position: [1, 0.5, 1.2] },
            { channel: 'U+045', position: [1, 1, 2.8] },
          ],
          subwoofers: [{ id: 'sub', position: [0.3, 0.3, 0.2] }],
        },
      },
    ],
  ])('%s keeps to the contract', (_what, room, rest) => {
    expect(CONTRACT.safeParse(printed(roomOf(room, rest)))).toMatchObject({ success: true });
  });

  it('has no key that the contract does not name', () => {
    const json = printed(roomOf()) as { air: object };
    const more = { ...json, air: { ...json.air, invented: 1 } };
    expect(CONTRACT.safeParse(more).success).toBe(false);
  });
});

describe('the contract', () => {
  const UNITS = ['Hz', 's', 'm', 'm2', 'm3', 'm/s', 'kg/m3', 'deg', 'ms', 'dB', 'percent'];
  const ENDS = [...UNITS, 'a count', 'no unit'].map((unit) => `, ${unit}`);

  it('says of every figure what it is and its unit', () => {
    const silent: string[] = [];
    const look = (schema: unknown, path: string, above: string): void => {
      if (typeof schema !== 'object' || schema === null) return;
      const { type, description = above } = schema as { type?: unknown; description?: string };
      if (type === 'number' || type === 'integer') {
        if (!ENDS.some((end) => description.endsWith(end)) && !description.includes('in `unit`'))
          silent.push(path);
      }
      for (const [key, part] of Object.entries(schema)) look(part, `${path}.${key}`, description);
    };
    look(z.toJSONSchema(CONTRACT), '', '');
    expect(silent).toEqual([]);
  });
});
