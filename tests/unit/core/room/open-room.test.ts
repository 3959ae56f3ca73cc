import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import { decodeRoomBytes, openRoom, saveRoom } from '../../../../core/room/open-room';
import {
  at,
  EXAMPLES,
  exampleText,
  faultsOf,
  fileOf,
  only,
  opened,
  roomOf,
  type Fields,
} from '../../support/rooms';

const sized = (size: Fields): Fields =>
  fileOf({ size: { width: 4, length: 5, height: 3, ...size } });

describe('a minimal file', () => {
  it('needs format, version and size, and gets a default for everything else', () => {
    expect(roomOf()).toEqual({
      format: 'roomwright-room',
      version: 2,
      name: 'Untitled room',
      room: {
        size: { width: 4, length: 5, height: 3 },
        solids: [],
        finishes: {
          front: 'gyp13-stud',
          back: 'gyp13-stud',
          left: 'gyp13-stud',
          right: 'gyp13-stud',
          floor: 'floor-concrete',
          ceiling: 'gyp13-stud',
        },
        patches: [],
      },
      air: { temperatureC: 20, humidityPercent: 50, pressureKPa: 101.325 },
      finishesCustom: [],
      seating: {
        rows: [
          {
            id: 'row-1',
            seats: 3,
            y: 3.1,
            pitchM: 0.7,
            riserM: 0,
            earHeightM: 1.1,
            eyeHeightM: 1.2,
          },
        ],
        reference: { row: 'row-1', seat: 2 },
      },
      screen: { widthM: 2.4, aspect: [16, 9], bottomM: 0.7, gain: 1, soundThrough: false },
      speakers: { layout: '0+5+0', placed: [], subwoofers: [] },
      target: { kind: 'bs1116' },
      objects: [],
    });
  });

  it('fills in one field of a group where the rest is given', () => {
    const project = roomOf(
      { finishes: { floor: 'carpet-heavy-pad' } },
      { air: { temperatureC: 12 }, screen: { widthM: 2 }, seating: { rows: [{ id: 'a', y: 3 }] } },
    );
    expect(project.room.finishes.ceiling).toBe('gyp13-stud');
    expect(project.air).toEqual({ temperatureC: 12, humidityPercent: 50, pressureKPa: 101.325 });
    expect(project.screen).toEqual({
      widthM: 2,
      aspect: [16, 9],
      bottomM: 0.7,
      gain: 1,
      soundThrough: false,
    });
    expect(project.seating.reference).toEqual({ row: 'a', seat: 2 });
  });

  it.each([
    [1, { seat: 1 }],
    [2, { middle: true }],
    [3, { seat: 2 }],
    [4, { middle: true }],
  ])('of a first row of %i seats is judged at its middle: %j', (seats, middle) => {
    const project = roomOf({}, { seating: { rows: [{ id: 'a', y: 3, seats }] } });
    expect(project.seating.reference).toEqual({ row: 'a', ...middle });
  });
});

describe('a size that is no size', () => {
  it.each([
    ['zero', 'width', 0, 'must be a length in metres from 1 to 30; the file says 0.'],
    ['negative', 'length', -5, 'must be a length in metres from 1 to 30; the file says -5.'],
    ['huge', 'height', 1e9, 'must be a length in metres from 1 to 12; the file says 1000000000.'],
    ['null', 'width', null, 'must be a length in metres from 1 to 30; the file says null.'],
    [
      'the text NaN',
      'width',
      'NaN',
      'must be a length in metres from 1 to 30; the file says "NaN".',
    ],
    ['text', 'length', '5 m', 'must be a length in metres from 1 to 30; the file says "5 m".'],
    [
      'missing',
      'height',
      undefined,
      'must be a length in metres from 1 to 12; the file says nothing.',
    ],
    ['a list', 'height', [3], 'must be a length in metres from 1 to 12; the file says [3].'],
  ])('(%s) is refused by its path', (_, side, value, sentence) => {
    expect(faultsOf(sized({ [side]: value }))).toEqual([{ path: `room.size.${side}`, sentence }]);
  });

  it('is refused where the figure overflows', () => {
    const text = JSON.stringify(sized({})).replace('"width":4', '"width":1e999');
    expect(only(faultsOf(text)).path).toBe('room.size.width');
  });

  it('is refused together with every other fault of the file', () => {
    expect(faultsOf(sized({ width: 0, height: 'low' })).map((fault) => fault.path)).toEqual([
      'room.size.width',
      'room.size.height',
    ]);
  });

  it('is refused where there is no room at all', () => {
    expect(only(faultsOf({ format: 'roomwright-room', version: 1 })).path).toBe('room');
  });
});

describe('names in a file', () => {
  const solid = { id: 'duct', kind: 'soffit', min: [0, 0, 2], max: [1, 5, 3] };

  it('must be finishes that exist, and a slip of the pen is pointed out', () => {
    expect(faultsOf(fileOf({ finishes: { back: 'gyp13-stub' } }))).toEqual([
      {
        path: 'room.finishes.back',
        sentence:
          'There is no finish "gyp13-stub". The nearest known one is "gyp13-stud"; your own finishes go in finishesCustom.',
      },
    ]);
  });

  it('must be finishes that exist on solids and patches, too', () => {
    const patch = { id: 'door', face: 'left', rect: [1, 0, 2, 2], finish: 'no-such' };
    expect(
      faultsOf(fileOf({ solids: [{ ...solid, finish: 'velvet' }], patches: [patch] })).map(
        (fault) => fault.path,
      ),
    ).toEqual(['room.solids[0].finish', 'room.patches[0].finish']);
  });

  it('may be the file’s own finishes', () => {
    const own = { id: 'felt', name: 'Felt', absorption: { '500': 0.4 }, source: 'own test' };
    const project = roomOf({ finishes: { back: 'felt' } }, { finishesCustom: [own] });
    expect(project.room.finishes.back).toBe('felt');
  });

  it.each([
    ['room.solids[1].id', fileOf({ solids: [solid, solid] })],
    [
      'room.patches[1].id',
      fileOf({
        patches: [1, 2].map(() => ({
          id: 'd',
          face: 'left',
          rect: [0, 0, 1, 1],
          finish: 'gyp13-stud',
        })),
      }),
    ],
    [
      'seating.rows[1].id',
      fileOf(
        {},
        {
          seating: {
            rows: [
              { id: 'a', y: 2 },
              { id: 'a', y: 3 },
            ],
          },
        },
      ),
    ],
    [
      'speakers.placed[1].channel',
      fileOf(
        {},
        { speakers: { placed: [1, 2].map(() => ({ channel: 'M+000', position: [1, 1, 1] })) } },
      ),
    ],
    [
      'speakers.subwoofers[1].id',
      fileOf(
        {},
        { speakers: { subwoofers: [1, 2].map(() => ({ id: 's', position: [1, 1, 1] })) } },
      ),
    ],
    [
      'finishesCustom[1].id',
      fileOf({}, { finishesCustom: [1, 2].map(() => ({ id: 'f', name: 'F', absorption: {} })) }),
    ],
  ])('are refused where they stand twice (%s)', (path, file) => {
    const fault = only(faultsOf(file));
    expect(fault.path).toBe(path);
    expect(fault.sentence).toMatch(
      / is used twice in this list\. Give one of them another name\.$/,
    );
  });

  it.each([
    [{ delayMs: 31 }, 'must be a delay in milliseconds from 0 to 30; the file says 31.'],
    [{ levelDb: 7 }, 'must be a level in decibels from -20 to 6; the file says 7.'],
    [{ inverted: 1 }, 'must be true or false; the file says 1.'],
  ])('are refused where a subwoofer cannot be driven so (%j)', (drive, sentence) => {
    const subwoofers = [{ id: 's', position: [1, 1, 1], ...drive }];
    const path = `speakers.subwoofers[0].${Object.keys(drive)[0] ?? ''}`;
    expect(faultsOf(fileOf({}, { speakers: { subwoofers } }))).toEqual([{ path, sentence }]);
  });

  it('must be rows and seats that exist where a reference names them', () => {
    const seating = (reference: Fields): Fields =>
      fileOf({}, { seating: { rows: [{ id: 'a', y: 3, seats: 3 }], reference } });
    expect(faultsOf(seating({ row: 'b', seat: 1 }))).toEqual([
      { path: 'seating.reference.row', sentence: 'There is no row "b". Name one of a.' },
    ]);
    expect(faultsOf(seating({ row: 'a', seat: 4 }))).toEqual([
      {
        path: 'seating.reference.seat',
        sentence: 'Row "a" has 3 seats, so there is no seat 4.',
      },
    ]);
    expect(faultsOf(seating({ row: 'b', middle: true }))).toEqual([
      { path: 'seating.reference.row', sentence: 'There is no row "b". Name one of a.' },
    ]);
  });

  it.each([{}, { seat: 1, middle: true }])(
    'are a seat or the middle where a reference names a row, and not %j',
    (place) => {
      const rows = [{ id: 'a', y: 3, seats: 2 }];
      expect(
        faultsOf(fileOf({}, { seating: { rows, reference: { row: 'a', ...place } } })),
      ).toEqual([
        {
          path: 'seating.reference',
          sentence: 'must have either "seat", the number of a seat, or "middle": true.',
        },
      ]);
    },
  );

  it('say of a picture that it lets sound through by true or false', () => {
    expect(faultsOf(fileOf({}, { screen: { soundThrough: 'yes' } }))).toEqual([
      { path: 'screen.soundThrough', sentence: 'must be true or false; the file says "yes".' },
    ]);
    const through = roomOf({}, { screen: { soundThrough: true } });
    expect(opened(saveRoom(through)).screen.soundThrough).toBe(true);
  });

  it.each(['wall', 'duct', 'duct:top', 'pipe:front', 'front:left', 'duct:front:back', ''])(
    'must be faces that exist where a patch hangs (%j does not)',
    (face) => {
      const patch = { id: 'door', face, rect: [0, 0, 1, 1], finish: 'gyp13-stud' };
      const fault = only(faultsOf(fileOf({ solids: [solid], patches: [patch] })));
      expect(fault.path).toBe('room.patches[0].face');
      expect(fault.sentence).toContain(`There is no face "${face}".`);
    },
  );
});

describe('shapes that turn inside out', () => {
  it('are refused for a solid with min above max', () => {
    const solid = { id: 'duct', kind: 'soffit', min: [0, 0, 3], max: [1, 5, 2] };
    expect(faultsOf(fileOf({ solids: [solid] }))).toEqual([
      {
        path: 'room.solids[0]',
        sentence: 'must have every part of min below the same part of max.',
      },
    ]);
  });

  it('are refused for a solid without thickness', () => {
    const solid = { id: 'sheet', kind: 'other', min: [0, 0, 2], max: [1, 5, 2] };
    expect(only(faultsOf(fileOf({ solids: [solid] }))).path).toBe('room.solids[0]');
  });

  it('are refused for a patch with its corners swapped', () => {
    const patch = { id: 'door', face: 'left', rect: [2, 0, 1, 2], finish: 'gyp13-stud' };
    const fault = only(faultsOf(fileOf({ patches: [patch] })));
    expect(fault.path).toBe('room.patches[0].rect');
    expect(fault.sentence).toContain('with u0 below u1 and v0 below v1');
  });

  it('are refused for a throw ratio of the projector that falls', () => {
    const projector = {
      position: [2, 4, 2],
      throwRatio: [2, 1],
      verticalOffsetPercent: [0, 0],
      horizontalOffsetPercent: [0, 0],
      lumens: 2000,
    };
    const fault = only(faultsOf(fileOf({}, { projector })));
    expect(fault.path).toBe('projector.throwRatio');
    expect(fault.sentence).toContain('[least, most] in rising order');
  });
});

describe('a file that was written by something else', () => {
  it('is refused where the format is another one', () => {
    expect(faultsOf({ ...fileOf(), format: 'other' })).toEqual([
      {
        path: 'format',
        sentence: 'must be "roomwright-room": this is not a Roomwright room file.',
      },
    ]);
  });

  it('is refused where a newer Roomwright wrote it', () => {
    expect(faultsOf({ ...fileOf(), version: 3 })).toEqual([
      {
        path: 'version',
        sentence:
          'is 3: the file was written by a newer Roomwright; this one reads up to version 2. Update the program, then open the file again.',
      },
    ]);
  });

  it.each([0, -1, -1e15])('is refused with the version %d, which never was', (version) => {
    expect(faultsOf({ ...fileOf(), version })).toEqual([
      { path: 'version', sentence: `is ${version}: no Roomwright ever wrote that version.` },
    ]);
  });

  it.each([1.5, '1', null, undefined])('is refused with the version %j', (version) => {
    const fault = only(faultsOf({ ...fileOf(), version }));
    expect(fault.path).toBe('version');
    expect(fault.sentence).toContain('must be the whole number 2');
  });

  it.each(['[]', '"text"', '5', 'null', 'true'])('is refused where it holds %s', (text) => {
    expect(only(faultsOf(text)).sentence).toMatch(/^The file holds no room/);
  });

  it('is refused where it is empty', () => {
    expect(faultsOf(' \n')).toEqual([{ path: '', sentence: 'The file is empty.' }]);
  });
});

describe('a broken file', () => {
  const whole = exampleText('long-room');

  it.each([10, 77, 500, 1500])(
    'that breaks off after %i characters is said to break off',
    (end) => {
      const fault = only(faultsOf(whole.slice(0, end)));
      expect(fault.path).toBe('');
      expect(fault.sentence).toMatch(/^The file breaks off before its end/);
    },
  );

  it('is told by line and column where JSON goes wrong', () => {
    expect(only(faultsOf('{\n  "a": 1,\n  "b": 2 2\n}')).sentence).toBe(
      'The file is not JSON: it cannot be read at line 3, column 10.',
    );
  });

  it.each(['hello, this is a letter', '{"name": Long room}', '<html></html>'])(
    'that is no JSON at all (%j) is not taken for one that breaks off',
    (text) => {
      expect(only(faultsOf(text)).sentence).toMatch(/^The file is not JSON/);
    },
  );

  it('over 5 MB is refused before it is read', () => {
    const bytes = new Uint8Array(5_000_001).fill(32);
    const read = decodeRoomBytes(bytes);
    expect(read).toEqual({
      ok: false,
      faults: [
        {
          path: '',
          sentence:
            'The file cannot be read: it has 5.1 MB and a room file has 5 MB at most. Choose a room file (.room.json).',
        },
      ],
    });
    expect(only(faultsOf(' '.repeat(5_000_001))).sentence).toMatch(/a room file has 5 MB at most/);
  });

  it('of 5 MB is still read', () => {
    const text = JSON.stringify(fileOf()).padEnd(5_000_000, ' ');
    expect(decodeRoomBytes(new TextEncoder().encode(text)).ok).toBe(true);
    expect(openRoom(text).ok).toBe(true);
  });

  it('that is not UTF-8 is refused', () => {
    const read = decodeRoomBytes(new Uint8Array([0x7b, 0xff, 0xfe, 0x7d]));
    expect(read.ok ? [] : read.faults).toEqual([
      {
        path: '',
        sentence:
          'The file cannot be read: it is not UTF-8 text. Choose a room file (.room.json), or save it as UTF-8 in the program that wrote it.',
      },
    ]);
  });

  it('with a byte order mark opens all the same', () => {
    const bytes = new TextEncoder().encode(`\ufeff${JSON.stringify(fileOf())}`);
    const read = decodeRoomBytes(bytes);
    expect(read.ok && openRoom(read.text).ok).toBe(true);
  });
});

describe('a file that means harm', () => {
  it.each(['__proto__', 'constructor', 'prototype'])('is refused for a field named %s', (key) => {
    const poison = `{"${key}":{"polluted":true}}`;
    const places = {
      [key]: `{"format":"roomwright-room","version":1,"${key}":{"polluted":true},"room":{}}`,
      [`room.size.${key}`]: JSON.stringify(fileOf({ size: 'HERE' })).replace('"HERE"', poison),
      [`extra[1].deep.${key}`]: JSON.stringify(
        fileOf({}, { extra: [1, { deep: 'HERE' }] }),
      ).replace('"HERE"', poison),
    };
    for (const [path, text] of Object.entries(places)) {
      expect(faultsOf(text)).toEqual([
        { path, sentence: 'is a name that a room file may not use. Remove it.' },
      ]);
    }
    expect('polluted' in {}).toBe(false);
  });

  it.each(['[', '{"a":'])('is refused for a nest of 100 000 %j, closed or not', (bracket) => {
    const nest = bracket.repeat(100_000);
    const closing = bracket === '[' ? ']' : '}';
    expect(openRoom(nest).ok).toBe(false);
    const closed = `{"format":"roomwright-room","version":1,"deep":${nest}1${closing.repeat(100_000)}}`;
    const fault = only(faultsOf(closed));
    expect(fault.path).toMatch(/^deep/);
    expect(fault.sentence).toBe('is nested more than 40 deep.');
  });

  it('is told its faults in one line each, whatever its texts hold', () => {
    const line = 'a\nroom.size.height: fine\r\u001b[31m\u2028';
    const files = [
      sized({ width: line }),
      fileOf({ patches: [{ id: 'p', face: line, rect: [0, 0, 1, 1], finish: 'gyp13-stud' }] }),
      { ...fileOf(), format: 'roomwright-room', version: line },
      fileOf({}, { [line]: { constructor: 1 } }),
    ];
    for (const file of files) {
      for (const fault of faultsOf(file)) {
        expect(`${fault.path}: ${fault.sentence}`).not.toMatch(/[\u0000-\u001f\u007f\u2028\u2029]/);
      }
    }
  });

  it('is refused for more of a list than a room can need', () => {
    const rows = Array.from({ length: 13 }, (_, i) => ({ id: `r${i}`, y: 2 }));
    expect(faultsOf(fileOf({}, { seating: { rows } }))).toEqual([
      {
        path: 'seating.rows',
        sentence: 'must be a list of at most 12; the file says a list of 13.',
      },
    ]);
  });
});

describe('figures outside their range', () => {
  const row = { id: 'a', y: 3 };
  const own = { id: 'f', name: 'F', source: 's' };
  it.each([
    ['air.temperatureC', { air: { temperatureC: 60 } }],
    ['air.humidityPercent', { air: { humidityPercent: 0 } }],
    ['air.pressureKPa', { air: { pressureKPa: 1013.25 } }],
    ['seating.rows[0].seats', { seating: { rows: [{ ...row, seats: 2.5 }] } }],
    ['seating.rows[0].pitchM', { seating: { rows: [{ ...row, pitchM: 0 }] } }],
    ['seating.rows[0].id', { seating: { rows: [{ ...row, id: 'front row' }] } }],
    ['screen.widthM', { screen: { widthM: 0 } }],
    ['screen.aspect[1]', { screen: { aspect: [16, 0] } }],
    [
      'speakers.placed[0].position[2]',
      { speakers: { placed: [{ channel: 'M+000', position: [1, 1, 99] }] } },
    ],
    [
      'speakers.placed[0].position',
      { speakers: { placed: [{ channel: 'M+000', position: [1, 1] }] } },
    ],
    [
      'finishesCustom[0].absorption.500',
      { finishesCustom: [{ ...own, absorption: { '500': -0.1 } }] },
    ],
    ['target.seconds.500', { target: { kind: 'custom', seconds: { '500': 0 } } }],
    ['target.kind', { target: { kind: 'other' } }],
    ['name', { name: 'x'.repeat(121) }],
  ])('are refused at %s', (path, rest) => {
    const fault = only(faultsOf(fileOf({}, rest)));
    expect(fault.path).toBe(path);
    expect(fault.sentence).toMatch(/^must be .+; the file says .+\.$/);
  });

  it('are not found in the library’s own coefficients, which a file may copy as its own', () => {
    const own = { id: 'f', name: 'F', source: 's', absorption: { '250': 1.24, '500': 1.24 } };
    expect(openRoom(JSON.stringify(fileOf({}, { finishesCustom: [own] }))).ok).toBe(true);
  });
});

describe('a loudspeaker outside the room', () => {
  it('opens and is a finding', () => {
    const project = roomOf(
      {},
      { speakers: { placed: [{ channel: 'M+000', position: [2, -0.4, 1.1] }] } },
    );
    const finding = analyze(project).findings.find(({ id }) => id === 'speaker-outside:M+000');
    expect(finding?.severity).toBe('fault');
    expect(finding?.value).toBeCloseTo(0.4, 10);
  });
});

describe('saving', () => {
  it.each(EXAMPLES)('and opening %s gives the same project', (name) => {
    const project = opened(exampleText(name));
    expect(opened(saveRoom(project))).toEqual(project);
  });

  it('keeps fields that the program does not know, wherever they stand', () => {
    const extra = { by: 'another program', list: [1, { two: null }] };
    const places: readonly (readonly (string | number)[])[] = [
      [],
      ['room'],
      ['room', 'size'],
      ['room', 'finishes'],
      ['room', 'solids', 0],
      ['room', 'patches', 0],
      ['air'],
      ['finishesCustom', 0],
      ['seating'],
      ['seating', 'rows', 0],
      ['seating', 'reference'],
      ['screen'],
      ['projector'],
      ['speakers'],
      ['speakers', 'placed', 0],
      ['speakers', 'subwoofers', 0],
      ['target'],
    ];
    const file = structuredClone(FULL) as object;
    for (const keys of places) (at(file, keys) as Record<string, unknown>)['future'] = extra;
    const saved: unknown = JSON.parse(saveRoom(opened(JSON.stringify(file))));
    for (const keys of places) expect(at(saved, [...keys, 'future'])).toEqual(extra);
  });

  it('writes text that ends with a line break', () => {
    expect(saveRoom(roomOf())).toMatch(/^\{\n {2}"format"[^]*\}\n$/);
  });

  it('of a room without a row of seats gives a file that opens', () => {
    const project = roomOf({}, { seating: { rows: [] } });
    expect(openRoom(saveRoom(project))).toEqual({ ok: true, project });
  });
});

/** A file with every group in it. */
const FULL: Fields = fileOf(
  {
    solids: [{ id: 'duct', kind: 'soffit', min: [0, 0, 2], max: [1, 5, 3] }],
    finishes: {},
    patches: [{ id: 'door', face: 'left', rect: [1, 0, 2, 2], finish: 'gyp13-stud' }],
  },
  {
    air: {},
    finishesCustom: [{ id: 'f', name: 'F', absorption: { '500': 0.4 } }],
    seating: { rows: [{ id: 'a', y: 3 }], reference: { row: 'a', seat: 1 } },
    screen: {},
    projector: {
      position: [2, 4, 2],
      throwRatio: [1, 2],
      verticalOffsetPercent: [0, 0],
      horizontalOffsetPercent: [0, 0],
      lumens: 2000,
    },
    speakers: {
      placed: [{ channel: 'M+000', position: [2, 1, 1] }],
      subwoofers: [{ id: 's', position: [1, 1, 0.2] }],
    },
    target: { kind: 'custom', seconds: { '500': 0.3 } },
  },
);

describe('an octave band that does not exist', () => {
  it('is named at its place in the file, with the bands that there are', () => {
    const own = { id: 'own', name: 'Own', source: 'test', absorption: { '130': 0.2 } };
    expect(faultsOf(fileOf({}, { finishesCustom: [own] }))).toEqual([
      {
        path: 'finishesCustom[0].absorption.130',
        sentence: 'is not an octave band. The bands are 63, 125, 250, 500, 1000, 2000, 4000, 8000.',
      },
    ]);
  });
});

describe('a file with faults of shape and of names', () => {
  const solid = { id: 'duct', kind: 'soffit', min: [0, 0, 2], max: [1, 5, 3] };
  const patch = { id: 'a', face: 'front', rect: [0, 0, 1, 1], finish: 'door-solid' };
  const paths = (file: unknown): readonly string[] => faultsOf(file).map((fault) => fault.path);

  it('has each place told once', () => {
    const file = fileOf({
      patches: [{ ...patch, finish: 'no finish' }],
      solids: [solid, solid, 7],
    });
    expect(paths(file)).toEqual(['room.solids[2]', 'room.patches[0].finish', 'room.solids[1].id']);
  });

  it('has no name told as missing that may belong to what cannot be read', () => {
    const own = { id: 7, name: 'Own', absorption: {} };
    const room = {
      solids: [{ ...solid, id: ['duct'] }],
      patches: [{ ...patch, face: 'duct:front', finish: 'own' }],
    };
    expect(paths(fileOf(room, { finishesCustom: [own] }))).toEqual([
      'room.solids[0].id',
      'finishesCustom[0].id',
    ]);
  });

  it.each([[null], [7], ['text'], [[]], [[null]], [{ 0: 'a' }]])(
    'is refused and no more where its lists are %j',
    (list) => {
      const file = fileOf(
        { size: 7, solids: list, patches: list, finishes: list },
        { finishesCustom: list, objects: list, seating: { rows: list, reference: list } },
      );
      expect(paths(file)).toContain('room.size');
    },
  );
});
