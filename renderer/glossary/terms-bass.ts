/** Words of subwoofers and what the seats hear of them. */

import { MOST_CANCELLED_DB } from '../../core/bass/allowed-sets';
import { SPREAD_LIMIT_DB } from '../../core/findings/bass';
import type { TermText } from './term-text';

export const BASS_TERMS = {
  response: {
    plain: 'How loud each note is at a seat',
    term: 'pressure response',
    says: 'Level over frequency at the ears with the subwoofers playing alike at all notes, against what they would do in the open.',
    good: 'Flat within a few dB matters less than alike at all seats: an equaliser can flatten one curve for all, but it cannot make seats agree.',
    source: 'sum over the resonances; Kuttruff, Room Acoustics',
  },
  spatialVariance: {
    plain: 'How much the bass differs from seat to seat',
    term: 'spatial variance, dB²',
    says: 'At each note the squared spread of the level over the seats, averaged over the notes. Shown is its root, in dB.',
    good: `Up to about ${SPREAD_LIMIT_DB} dB, which is ${SPREAD_LIMIT_DB ** 2} dB², the seats sound much alike. Lower is better.`,
    source: 'Welti and Devantier, J. Audio Eng. Soc. 54 (2006) 347; limit: our own convention',
    also: 'mean spatial variance msv spread',
  },
  deviation: {
    plain: 'How uneven the bass is at all seats together',
    term: 'deviation',
    says: 'How far the average of the seats strays from a flat line.',
    good: 'Lower is better, but an equaliser can mend this one.',
    source: 'standard deviation over frequency; our own convention',
  },
  output: {
    plain: 'How much the subwoofers give together',
    term: 'output',
    says: 'Mean level of the set, less that of one of them alone. Subwoofers that work against each other lose here.',
    good: `Two give up to 6 dB, four up to 12 dB. Where they neither help nor cancel each other it is 3 and 6 dB; a set more than ${MOST_CANCELLED_DB} dB under that is not proposed.`,
    source: 'sum of pressures; limit: our own convention',
  },
  polarity: {
    plain: 'Cone moves in when the others move out',
    term: 'inverted polarity',
    says: 'A switch on most subwoofers. Two that work against each other cancel some resonances, and some of the bass.',
    source: 'common practice',
    also: 'phase',
  },
  peak: {
    plain: 'Note that booms',
    term: 'peak',
    says: 'A note far louder than its neighbours at a seat, mostly a resonance that the subwoofer drives strongly.',
    source: 'common practice',
  },
  dip: {
    plain: 'Note that is missing',
    term: 'dip, null',
    says: 'A note far softer than its neighbours at a seat. No equaliser mends it: another place of the seat or the subwoofer does.',
    source: 'common practice',
    also: 'null',
  },
  modalDecay: {
    plain: 'How long one resonance rings',
    term: 'decay of a mode',
    says: 'Below the Schroeder frequency each resonance has its own decay time, from what absorbs where it is loud.',
    good: 'Under about 0.5 s in the bass.',
    source: 'Kuttruff, Room Acoustics; limit: common practice',
  },
} as const satisfies Readonly<Record<string, TermText>>;
