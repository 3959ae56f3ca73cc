import { describe, expect, it } from 'vitest';
import { resultKey } from '../../../../core/analysis/evaluator';
import { wholeEvaluator } from '../../../../core/analysis/slow-work';
import { RESULTS, type SlowName } from '../../../../core/analysis/results';
import { DEFAULT_BAND_HZ } from '../../../../core/bass/transfer';
import { bayOf } from '../../../../core/proportions/bay';
import { finish } from '../../../../core/quantity/slices';
import type { Project } from '../../../../core/room/project';
import { example, roomOf } from '../../support/rooms';

const MAP = { columns: 3, rows: 3 } as const;
const den = (rest: object = {}): Project => ({ ...roomOf(), ...rest });

describe('an evaluator', () => {
  it('answers twice for the same room with the very same answer', () => {
    const results = wholeEvaluator();
    const first = results.quick('analysis', den(), { units: 'metric' });
    // Another object of the same figures, as it comes out of a file or from a worker.
    expect(results.quick('analysis', structuredClone(den()), { units: 'metric' })).toBe(first);
    expect(results.quick('analysis', den(), { units: 'imperial' })).not.toBe(first);
    expect(results.quick('analysis', den({ name: 'other' }), { units: 'metric' })).not.toBe(first);
  });

  it('knows a slow answer of the room that it is of, and of no other', () => {
    const results = wholeEvaluator();
    const room = den();
    expect(results.known('proportionMap', room, MAP)).toBeNull();
    const answer = results.finish('proportionMap', room, MAP);
    expect(results.known('proportionMap', room, MAP)).toBe(answer);
    expect(results.known('proportionMap', den({ name: 'renamed' }), MAP)).toBe(answer);
    const lower = roomOf({ size: { width: 4, length: 5, height: 2.9 } });
    expect(results.known('proportionMap', lower, MAP)).toBeNull();
    expect(results.known('proportionMap', room, { columns: 4, rows: 3 })).toBeNull();
  });

  it('keeps the newest answers only, and those asked for last', () => {
    const results = wholeEvaluator();
    const high = (height: number): Project => roomOf({ size: { width: 4, length: 5, height } });
    const { keeps } = RESULTS.proportionMap;
    for (let n = 0; n < keeps; n++) results.finish('proportionMap', high(2.2 + n / 10), MAP);
    expect(results.known('proportionMap', high(2.2), MAP)).not.toBeNull();
    results.finish('proportionMap', high(3), MAP);
    expect(results.known('proportionMap', high(2.2), MAP)).not.toBeNull();
    expect(results.known('proportionMap', high(2.3), MAP)).toBeNull();
  });

  it('does not keep an answer that was cut short', () => {
    const results = wholeEvaluator();
    const room = example('basement-bay');
    const request = { bay: bayOf(room) };
    const work = results.begin('baySearch', room, request);
    work.next();
    const cut = work.next(true);
    expect(cut).toMatchObject({ done: true });
    expect(cut.done && cut.value.share).toBeLessThan(1);
    expect(results.known('baySearch', room, request)).toBeNull();
  });

  it('takes in what was computed elsewhere, and says so', () => {
    const [here, there] = [wholeEvaluator(), wholeEvaluator()];
    const room = den();
    let told = 0;
    const leave = here.subscribe(() => (told += 1));
    const answer = structuredClone(there.finish('proportionMap', room, MAP));
    here.keep('proportionMap', resultKey('proportionMap', room, MAP), answer);
    expect(here.known('proportionMap', structuredClone(room), MAP)).toBe(answer);
    leave();
    here.keep('proportionMap', 'another', answer);
    expect(told).toBe(1);
  });

  it('asks for the modes as built once, for all that need them', () => {
    const results = wholeEvaluator();
    const room = example('under-the-ducts');
    finish(results.begin('seatResponses', room, { modesToHz: 200 }));
    const modes = results.known('roomModes', room, { limitHz: 200 });
    expect(modes?.ok).toBe(true);
    const again = results.begin('roomModes', room, { limitHz: 200 }).next();
    expect(again).toEqual({ done: true, value: modes });
    const field = results.quick('roomField', room, {
      modes: { result: 'roomModes', limitHz: 200 },
    });
    expect(field.orders).toBeNull();
  });

  it('refuses to sum pressure from modes that nobody has solved', () => {
    const modes = { result: 'roomModes', limitHz: 200 } as const;
    expect(() =>
      wholeEvaluator().quick('roomField', example('under-the-ducts'), { modes }),
    ).toThrow('before they were known');
  });
});

describe('the search for subwoofer places', () => {
  it('gives a first answer on its way to the whole one, and solves what seats hear once', () => {
    const room = example('basement-bay');
    const options = {
      count: 2,
      stepM: 0.3,
      boxM: [0.4, 0.4, 0.4],
      drives: false,
      bandHz: DEFAULT_BAND_HZ,
    } as const;
    const steps = [];
    const work = wholeEvaluator().begin('subwooferSearch', room, { modesToHz: null, options });
    let step = work.next();
    for (; !step.done; step = work.next()) steps.push(step.value);
    const interims = steps.flatMap((one) => (typeof one === 'number' ? [] : [one]));
    expect(interims).toHaveLength(1);
    const [first] = interims;
    expect(first?.interim.search?.provenGapDb2).toBeNull();
    expect(first?.share).toBeLessThan(0.5);
    expect(step.value.search?.provenGapDb2).toBe(0);
    const costOf = (found: typeof step.value | undefined): number =>
      found?.search?.sets[0]?.measures.costDb2 ?? NaN;
    expect(costOf(step.value)).toBeLessThanOrEqual(costOf(first?.interim));
    // The share never falls back, as it would if a second job began anew.
    const shares = steps.map((one) => (typeof one === 'number' ? one : one.share));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });
});

describe('what an answer depends on', () => {
  const room = example('under-the-ducts');
  const { speakers } = room;
  const changed = {
    name: { ...room, name: 'another' },
    loudspeakers: { ...room, speakers: { ...speakers, placed: speakers.placed.slice(1) } },
    subwoofers: { ...room, speakers: { ...speakers, subwoofers: [] } },
    finishes: {
      ...room,
      room: { ...room.room, finishes: { ...room.room.finishes, ceiling: 'gf48-50-A' } },
    },
    seating: { ...room, seating: { ...room.seating, rows: room.seating.rows.slice(1) } },
    fittings: { ...room, room: { ...room.room, solids: room.room.solids.slice(1) } },
    air: { ...room, air: { ...room.air, temperatureC: 25 } },
  } as const;
  const REQUESTS = {
    roomModes: { limitHz: 200 },
    coarseModes: {},
    seatResponses: { modesToHz: null },
    proportionMap: MAP,
  } as const;

  it.each([
    ['roomModes', ['fittings', 'air']],
    ['coarseModes', ['fittings', 'air']],
    ['seatResponses', ['subwoofers', 'finishes', 'seating', 'fittings', 'air']],
    ['proportionMap', ['air']],
  ] as const)('%s: %s', (name, parts) => {
    const keyOf = (project: Project): string => resultKey<SlowName>(name, project, REQUESTS[name]);
    const differs = Object.entries(changed).filter(([, one]) => keyOf(one) !== keyOf(room));
    expect(differs.map(([part]) => part)).toEqual(parts);
  });
});
