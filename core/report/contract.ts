/**
 * What the batch command publishes with `--json` and in analysis.json: every key by name, with its unit.
 * Others build on these names, so that each keeps its name, unit and meaning; what core calls things
 * inside is free to change. Keys may be added. Figures are SI; room axes are x from the left wall,
 * y from the front wall, z from the floor.
 */

import { z } from 'zod';

/** A figure in `unit`: what it is goes into the description. */
const figure = (unit: string) => (what: string) => z.number().describe(`${what}, ${unit}`);
const hz = figure('Hz');
const seconds = figure('s');
const metres = figure('m');
const squareMetres = figure('m2');
const degrees = figure('deg');
const percent = figure('percent');
const plain = figure('no unit');
const count = (what: string) => z.int().describe(`${what}, a count`);
const text = (what: string) => z.string().describe(what);
const truth = (what: string) => z.boolean().describe(what);

const list = <T extends z.ZodType>(of: T) => z.array(of).readonly();
const pair = <T extends z.ZodType>(of: T) => z.tuple([of, of]).readonly();
const point = (what: string) =>
  z
    .tuple([metres('x'), metres('y'), metres('z')])
    .readonly()
    .describe(`${what}, m`);

const order = z
  .tuple([count('along the width'), count('along the length'), count('along the height')])
  .readonly()
  .describe('half waves along width, length and height');

const shellMode = z.strictObject({
  frequencyHz: hz('natural frequency'),
  order,
  kind: z.enum(['axial', 'tangential', 'oblique']),
});

const surface = {
  face: text('shell face, or solid-id:face'),
  finish: text('id of the finish'),
  patch: text('id of the patch that covers it').nullable(),
  areaM2: squareMetres('free area'),
};

const direction = {
  azimuthDeg: degrees('azimuth at the reference ears, positive to the left'),
  elevationDeg: degrees('elevation at the reference ears'),
  distanceM: metres('distance from the reference ears'),
};

const criterion = z.strictObject({
  title: text('name in words'),
  value: z.number().nullable().describe('figure, in `unit`; null where the room gives none'),
  limit: z.number().nullable().describe('limit, in `unit`; null where none is published'),
  pass: truth('within the limit').nullable(),
  unit: text('unit of value and limit; empty for plain numbers'),
  says: text('what the value says'),
  source: text('where the criterion comes from'),
  validity: text('where it holds'),
});

const airContract = z.strictObject({
  speedOfSoundMS: figure('m/s')('speed of sound'),
  densityKgM3: figure('kg/m3')('density of the air'),
});

const geometryContract = z.strictObject({
  volumeM3: figure('m3')('volume of the free space'),
  surfaceM2: squareMetres('surface of the free space'),
  surfaces: list(z.strictObject(surface)),
});

const modesContract = z.strictObject({
  shell: list(shellMode).describe('modes of the plain shell, rising, to 200 Hz'),
  schroederHz: hz('Schroeder frequency').nullable(),
  spacing: z
    .strictObject({
      axialWidestGap: criterion,
      axialClosest: criterion,
      axialOverlap: criterion,
      thirdOctaveDensity: criterion,
      coincidentModes: criterion,
      proportionInequality: criterion,
      wholeRatios: criterion,
      proportionArea: criterion,
      goodRatio: criterion,
      smoothness: criterion,
      unevenness: criterion,
    })
    .describe('criteria on size and proportions, by name'),
  gaps: list(
    z.strictObject({
      fromHz: hz('axial mode below the gap'),
      toHz: hz('axial mode above the gap'),
      widthHz: hz('width'),
    }),
  ),
  pileUps: list(
    z.strictObject({
      modes: list(shellMode),
      lowHz: hz('lowest of them'),
      highHz: hz('highest of them'),
      closestHz: hz('smallest distance of neighbours'),
    }),
  ),
  thirdOctaves: list(
    z.strictObject({
      nominalHz: hz('nominal middle'),
      exactHz: hz('exact middle'),
      lowHz: hz('lower edge'),
      highHz: hz('upper edge'),
      count: count('modes of the shell in the band'),
      byKind: z.strictObject({
        axial: count('axial modes'),
        tangential: count('tangential modes'),
        oblique: count('oblique modes'),
      }),
    }),
  ),
  expectedCount: figure('a count')('modes of the shell to 200 Hz by the mean formula'),
  exactShape: truth('false where solids fill part of the shell'),
  shaped: list(
    z.strictObject({
      frequencyHz: hz('natural frequency'),
      likeShell: order.nullable().describe('shell mode that it is most like; null where mixed'),
      shiftHz: hz('frequency less that of the shell mode').nullable(),
      errorPercent: percent('estimate of its own relative error'),
    }),
  )
    .optional()
    .describe('modes of the free space, rising, to 200 Hz; absent without solids'),
  shapedErrorPercent: percent('estimate of the largest relative error in `shaped`').optional(),
});

const bandContract = z.strictObject({
  hz: hz('octave'),
  sabineS: seconds('reverberation time by Sabine').nullable(),
  eyringS: seconds('reverberation time by Eyring').nullable(),
  targetS: seconds('target').nullable(),
  lowS: seconds('least time of the target corridor').nullable(),
  highS: seconds('longest time of the target corridor').nullable(),
  methods: z
    .strictObject({
      sabine: seconds('time').nullable(),
      eyring: seconds('time').nullable(),
      millington: seconds('time').nullable(),
      fitzroy: seconds('time').nullable(),
      arauPuchades: seconds('time').nullable(),
      kuttruffPaths: seconds('time').nullable(),
      kuttruffUneven: seconds('time').nullable(),
    })
    .describe('reverberation time by every method, s'),
  spreadS: pair(seconds('time')).nullable().describe('shortest and longest over the methods, s'),
  coefficientBandS: pair(seconds('time'))
    .nullable()
    .describe('Eyring with the error of the coefficients carried through, s'),
  absorptionM2: squareMetres('absorption of the surfaces').nullable(),
  objectsM2: squareMetres('absorption of people, chairs and the like').nullable(),
  airAbsorptionM2: squareMetres('absorption of the air'),
  meanCoefficient: plain('mean coefficient over the whole surface').nullable(),
  surfaces: list(z.strictObject({ ...surface, coefficient: plain('raw coefficient').nullable() })),
  objects: list(
    z.strictObject({
      id: text('id in the room file'),
      item: text('id of the item'),
      count: count('how many'),
      areaM2: squareMetres('absorption of all of them').nullable(),
    }),
  ),
  pairs: list(
    z.strictObject({
      axis: count('axis that the pair is normal to: 0 width, 1 length, 2 height'),
      areaM2: squareMetres('area of the pair'),
      meanCoefficient: plain('mean coefficient'),
      exponent: plain('-ln(1 - mean coefficient)'),
    }),
  ),
});

const decayContract = z.strictObject({
  bands: list(bandContract).describe('octaves 63 to 8000 Hz'),
  midS: seconds('mean of 500 Hz and 1 kHz by the method to read').nullable(),
  advice: z.strictObject({
    method: z.enum(['eyring', 'arauPuchades']).describe('the method to read'),
    ratio: plain('largest ratio of two pairs of faces').nullable(),
    limit: plain('ratio up to which absorption is even'),
    hz: hz('octave of that ratio').nullable(),
    strongest: count('axis of the pair that absorbs most').nullable(),
    weakest: count('axis of the pair that absorbs least').nullable(),
    source: text('where the rule comes from'),
  }),
  modal: list(
    z.strictObject({
      order,
      frequencyHz: hz('natural frequency'),
      decayS: seconds('time in which the mode falls by 60 dB'),
      extrapolated: truth('a figure was held from the nearest octave of its source'),
      bandwidthHz: hz('half-power bandwidth'),
    }),
  ).describe('modes of the shell below the Schroeder frequency, rising'),
});

const recommendation = z.strictObject({
  id: text('id'),
  title: text('title'),
  source: text('where it is published'),
  howKnown: text('how its figures are known'),
  note: text('what else to know').optional(),
});

const layoutContract = z.strictObject({
  id: text('label of ITU-R BS.2051'),
  tradeName: text('name in the trade'),
  source: text('source of the windows'),
  channels: list(
    z.strictObject({
      label: text('channel, as in ITU-R BS.2051'),
      name: text('name in words'),
      short: text('short name'),
      azimuth: pair(degrees('edge of the window')).describe('least and greatest azimuth, deg'),
      nominalAzimuth: degrees('nominal azimuth'),
      elevation: pair(degrees('edge of the window')).describe('least and greatest elevation, deg'),
    }),
  ),
  recommendation,
  recommendations: list(recommendation),
});

const speaker = z.strictObject({
  channel: text('channel, as in ITU-R BS.2051'),
  position: point('acoustic centre'),
  ...direction,
  delayMs: figure('ms')('delay to set; 0 for the farthest'),
  levelDb: figure('dB')('level to set; 0 for the farthest'),
  azimuthOffDeg: degrees('outside the window in azimuth; 0 within'),
  elevationOffDeg: degrees('outside the window in elevation; 0 within'),
  inRange: truth('within the window'),
});

const laterSpeaker = z.strictObject({
  channel: text('channel, as in ITU-R BS.2051'),
  name: text('name in words'),
  short: text('short name'),
  position: point('acoustic centre'),
  ...direction,
  inRange: truth('within the window'),
});

const seat = z.strictObject({
  row: text('id of the row'),
  seat: count('from 1, from the left hand of a person who faces the screen'),
  position: point('ears'),
});

const place = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('side'), side: z.enum(['width', 'length', 'height']) }),
  z.strictObject({ kind: z.literal('speaker'), channel: text('channel') }),
  z.strictObject({ kind: z.literal('subwoofer'), id: text('id') }),
  z.strictObject({
    kind: z.literal('reflection'),
    channel: text('channel'),
    face: text('shell face, or solid-id:face'),
    at: point('where it meets the face'),
  }),
  z.strictObject({ kind: z.literal('row'), row: text('id of the row') }),
  z.strictObject({ kind: z.literal('solid'), id: text('id') }),
  z.strictObject({ kind: z.literal('screen') }),
  z.strictObject({ kind: z.literal('band'), hz: hz('octave') }),
  z.strictObject({
    kind: z.literal('span'),
    fromHz: hz('lower edge'),
    toHz: hz('upper edge'),
  }),
]);

const remedy = z.strictObject({
  text: text('what to try, in words'),
  edit: z
    .looseObject({ kind: text('kind of the change') })
    .optional()
    .describe('the change that the program can make; its other keys are no part of the contract'),
  opens: z
    .enum(['subwoofer-search'])
    .optional()
    .describe('search of the window that finds the way'),
});

const findingContract = z.strictObject({
  id: text('stable while the matter is the same'),
  severity: z.enum(['fault', 'warning', 'note']),
  subject: z.enum(['shell', 'fittings', 'seats', 'picture', 'speakers', 'bass', 'decay']),
  where: text('the place in words'),
  message: text('what is wrong'),
  figureName: text('what the value is'),
  value: z.number().nullable().describe('figure, in `unit`'),
  limit: z.number().nullable().describe('limit, in `unit`'),
  unit: text('unit of value and limit; empty for plain numbers'),
  source: text('who says so'),
  caution: text('what to heed and whom to ask where it can hurt someone').optional(),
  place: place.optional(),
  remedies: list(remedy),
});

/** The one JSON object. Nothing that is not named here is published. */
export const CONTRACT = z.strictObject({
  air: airContract,
  geometry: geometryContract,
  modes: modesContract,
  decay: decayContract,
  layout: layoutContract.nullable(),
  listening: point('ears at the reference place').nullable(),
  speakers: list(speaker),
  later: list(laterSpeaker).describe('loudspeakers of the layout to come'),
  seats: list(seat),
  findings: list(findingContract).describe('the worst first'),
});

export type PublishedAnalysis = z.infer<typeof CONTRACT>;
