/** The bass at the seats: whether they hear alike, and the worst peak and dip at the reference place. */

import type { Extreme, SeatFigures } from '../bass/seat-figures';
import type { Subwoofer } from '../room/project';
import type { Finding, Remedy, Severity } from './finding';
import { practice, practiceSource } from '../room/practice/practice';

/** Spread over the seats that one equaliser still serves, and above which it is a warning, dB. */
export const SPREAD_LIMIT_DB = practice('seat-spread-limit');
const SPREAD_WARNING_DB = practice('seat-spread-warning');
/** A peak over, or a dip under, the mean of the band, dB. */
export const EXTREME_LIMIT_DB = practice('bass-extreme-limit');
const DIP_WARNING_DB = practice('bass-dip-warning');
/** A set that is better by less than this is not proposed, dB. */
const LEAST_GAIN_DB = 0.1;

export interface HeardBass {
  readonly figures: SeatFigures;
  /** What the figures are of. */
  readonly of: 'shell' | 'built';
}

/** What the search for places found for the same room: the best set, and what it would make. */
export interface FoundBass {
  readonly subwoofers: readonly Subwoofer[];
  readonly figures: SeatFigures;
}

export function bassFindings(
  { figures, of }: HeardBass,
  found: FoundBass | null,
): readonly Finding[] {
  const [lowHz, highHz] = figures.bandHz;
  const band = `${lowHz.toFixed(0)} to ${highHz.toFixed(0)} Hz`;
  const room = of === 'built' ? 'room as built' : 'plain shell';
  const extreme = (kind: 'peak' | 'dip', at: Extreme): Finding => ({
    id: `bass-${kind}`,
    severity: severityOf(kind === 'dip' && -at.levelDb > DIP_WARNING_DB),
    subject: 'bass',
    where: 'reference place',
    message: `${kind === 'peak' ? 'Bass booms' : 'Bass is missing'} at the reference place: around ${at.frequencyHz.toFixed(0)} Hz it is ${Math.abs(at.levelDb).toFixed(1)} dB ${kind === 'peak' ? 'over' : 'under'} the mean of ${band} (over a third of an octave, ${room}).`,
    figureName: kind === 'peak' ? 'peak over the mean' : 'dip under the mean',
    value: at.levelDb,
    limit: kind === 'peak' ? EXTREME_LIMIT_DB : -EXTREME_LIMIT_DB,
    unit: 'dB',
    source: `${practiceSource('bass-extreme-limit')}; ITU-R BS.1116 asks for 3 dB of a whole equalised loudspeaker (from memory)`,
    remedies: [
      searchRemedy(figures, found, (by) => Math.abs(by[kind]?.levelDb ?? Infinity)),
      {
        text:
          kind === 'peak'
            ? `An equaliser can take the peak down at ${at.frequencyHz.toFixed(0)} Hz, at every seat alike.`
            : 'An equaliser cannot fill it, for there the sound cancels: move a subwoofer or the seats.',
      },
    ],
    place: { kind: 'span', fromHz: at.frequencyHz / THIRD, toHz: at.frequencyHz * THIRD },
  });
  const findings: Finding[] = [];
  if (figures.spreadDb > SPREAD_LIMIT_DB) {
    findings.push({
      id: 'bass-spread',
      severity: severityOf(figures.spreadDb > SPREAD_WARNING_DB),
      subject: 'bass',
      where: `${figures.seats} seats`,
      message: `The bass differs from seat to seat: by ${figures.spreadDb.toFixed(1)} dB from the average of the seats, ${band} (the root of a mean spatial variance of ${figures.meanSpatialVarianceDb2.toFixed(1)} dB², ${room}). What an equaliser mends at one seat it then spoils at another.`,
      figureName: 'spread over the seats',
      value: figures.spreadDb,
      limit: SPREAD_LIMIT_DB,
      unit: 'dB',
      source: `measure of T. Welti and A. Devantier, JAES 54 (2006) 347; the limit is ${practiceSource('seat-spread-limit')}`,
      remedies: [searchRemedy(figures, found, (by) => by.spreadDb)],
    });
  }
  const { peak, dip } = figures;
  if (peak && peak.levelDb > EXTREME_LIMIT_DB) findings.push(extreme('peak', peak));
  if (dip && dip.levelDb < -EXTREME_LIMIT_DB) findings.push(extreme('dip', dip));
  return findings;
}

/** Half of a third of an octave, as a ratio. */
const THIRD = 2 ** (1 / 6);

const severityOf = (warning: boolean): Severity => (warning ? 'warning' : 'note');

/** The set that was found, where it lessens `figure`; else the search itself. */
function searchRemedy(
  now: SeatFigures,
  found: FoundBass | null,
  figure: (figures: SeatFigures) => number,
): Remedy {
  if (!found) {
    return {
      text: 'Let the program look for better places: "Find the best places" under Bass tries every place along the walls.',
      opens: 'subwoofer-search',
    };
  }
  const count = found.subwoofers.length;
  const set = `${count === 1 ? 'one subwoofer' : `${count} subwoofers`}`;
  if (figure(found.figures) > figure(now) - LEAST_GAIN_DB) {
    return {
      text: `The search found no places for ${set} where this is better: look with more of them, or for places closer together.`,
      opens: 'subwoofer-search',
    };
  }
  return {
    text: `Put ${set} where the search found the bass evenest: ${changeText(now, found.figures)}.`,
    edit: { kind: 'subwoofers', subwoofers: found.subwoofers, what: 'subwoofer places' },
  };
}

/** Every figure that bass is judged by, before and after. */
function changeText(now: SeatFigures, after: SeatFigures): string {
  const parts: string[] = [];
  const add = (name: string, from: number, to: number, limit: number): void => {
    const left = to > limit ? `, still over ${limit} dB` : '';
    parts.push(`${name} ${from.toFixed(1)} to ${to.toFixed(1)} dB${left}`);
  };
  if (now.seats > 1) add('spread over the seats', now.spreadDb, after.spreadDb, SPREAD_LIMIT_DB);
  for (const [kind, name] of [
    ['peak', 'peak'],
    ['dip', 'dip'],
  ] as const) {
    const [from, to] = [now[kind], after[kind]];
    if (from && to) add(name, Math.abs(from.levelDb), Math.abs(to.levelDb), EXTREME_LIMIT_DB);
  }
  return parts.join('; ');
}
