/** Octave bands that ring too long or too short, with the finishes that bring them into their corridor. */

import { decayOf, type Decay, type DecayBand } from '../decay/decay';
import { METHODS } from '../decay/methods';
import { targetSource } from '../decay/target';
import type { Verdict } from '../decay/verdict';
import { bandName } from '../quantity/bands';
import { applyEdit, type Edit } from '../room/edits';
import { faceName } from '../room/faces';
import { quotableName } from '../room/finishes';
import { takesText } from '../room/mounting';
import { freeSpace } from '../room/space';
import type { FindingContext } from './context';
import type { Draft, Remedy } from './finding';
import { bandVerdict, bestRefinishings, JUDGED_HZ, type Refinishing } from './refinishing';
import { practice } from '../room/practice/practice';

const NO_FINISH =
  'No change of one face or of two brings it nearer: cover parts of several faces with panels, or take some away.';

/** A share of the target outside of which a band is more than a note. */
const WARNING_SHARE = practice('decay-warning-share');

interface Outside {
  readonly band: DecayBand;
  readonly verdict: Verdict;
}

/** The bands that are too long and those that are too short, each by the one that is furthest out. */
export function decayFindings(context: FindingContext): readonly Draft[] {
  // Below the Schroeder frequency the statistics mean little: those bands are shown, not judged.
  const judged = context.decay.bands
    .filter((band) => JUDGED_HZ.includes(band.hz))
    .map((band): Outside => ({ band, verdict: bandVerdict(band) }));
  let found: readonly Remedy[] | null = null;
  const remedies = (): readonly Remedy[] => (found ??= finishRemedies(context));
  return [
    ...told(
      context,
      judged.filter(({ verdict }) => verdict.outsideS > 0),
      remedies,
    ),
    ...told(
      context,
      judged.filter(({ verdict }) => verdict.outsideS < 0),
      remedies,
    ),
  ];
}

function told(
  { project, decay }: FindingContext,
  bands: readonly Outside[],
  remedies: Draft['remedies'],
): readonly Draft[] {
  const [first, ...others] = bands;
  if (!first) return [];
  const { band, verdict } = others.reduce(
    (a, b) => (Math.abs(b.verdict.outsideS) > Math.abs(a.verdict.outsideS) ? b : a),
    first,
  );
  const long = verdict.outsideS > 0;
  return [
    {
      id: long ? 'decay-long' : 'decay-short',
      severity:
        Math.abs(verdict.outsideS) > (band.targetS ?? 1) * WARNING_SHARE ? 'warning' : 'note',
      subject: 'decay',
      where: bands.map((one) => bandName(one.band.hz)).join(', '),
      message: `${bandName(band.hz)} decays in ${timesText(band, decay.advice.method)}; the target corridor is ${(band.lowS ?? 0).toFixed(2)} to ${(band.highS ?? 0).toFixed(2)} s. ${long ? 'Speech blurs and effects smear.' : 'The room sounds dead.'}`,
      figureName: `decay at ${bandName(band.hz)}`,
      value: verdict.nearestS,
      limit: long ? band.highS : band.lowS,
      unit: 's',
      source: targetSource(project.target),
      remedies,
      otherwise: NO_FINISH,
      place: { kind: 'band', hz: band.hz },
    },
  ];
}

type Read = 'eyring' | 'arauPuchades';

/** `0.67 s`, or both times where the methods part by 0.01 s or more, first the one to be read. */
function timesText({ methods }: DecayBand, read: Read): string {
  const other: Read = read === 'eyring' ? 'arauPuchades' : 'eyring';
  const [one, two] = [read, other].map((id) => (methods[id] ?? 0).toFixed(2));
  return one === two
    ? `${one} s`
    : `${one} s (${METHODS[read].name}; ${two} s by ${METHODS[other].name})`;
}

function finishRemedies(context: FindingContext): readonly Remedy[] {
  return bestRefinishings(context).map((refinishing) => finishRemedy(context, refinishing));
}

function finishRemedy(context: FindingContext, { changes }: Refinishing): Remedy {
  const { project, measures } = context;
  const edits = changes.map(({ face, finish }): Edit => ({
    kind: 'finish',
    face,
    finish: finish.id,
  }));
  const [first] = edits;
  const edit: Edit =
    edits.length === 1 && first ? first : { kind: 'several', edits, what: 'two finishes' };
  const changed = applyEdit(project, edit);
  const after = decayOf(changed, freeSpace(changed.room));
  const what = changes
    .map(
      ({ face, finish }) => `the ${faceName(face)} with "${quotableName(finish, measures.units)}"`,
    )
    .join(' and ');
  const takes = changes.flatMap(({ face, finish }) => {
    const text = takesText(finish, face, measures);
    return text === null ? [] : [`the ${faceName(face)} ${text}`];
  });
  const cost = takes.length > 0 ? ` For that ${takes.join(', ')}.` : '';
  return { text: `Finish ${what}: ${midText(after)}.${cost}`, edit };
}

/** `0.28 s in the middle bands`, by both methods where they part by 0.01 s or more. */
function midText({ bands, advice }: Decay): string {
  const mid = (method: Read): string => {
    const times = bands.flatMap(({ hz, methods }) =>
      hz === 500 || hz === 1000 ? [methods[method] ?? 0] : [],
    );
    return (times.reduce((a, b) => a + b, 0) / Math.max(1, times.length)).toFixed(2);
  };
  const read = advice.method;
  const other: Read = read === 'eyring' ? 'arauPuchades' : 'eyring';
  const [one, two] = [mid(read), mid(other)];
  const text = `${one} s in the middle bands`;
  return one === two
    ? text
    : `${text} by ${METHODS[read].name}, ${two} s by ${METHODS[other].name}`;
}
