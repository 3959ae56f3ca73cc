/** Words of loudspeakers and what they do to the seats. */

import { EARLY_LIMIT, EARLY_LIMIT_SOURCE } from '../../core/reflections/early-limit';
import type { TermText } from './term-text';

export const SPEAKER_TERMS = {
  layout: {
    plain: 'Set of loudspeakers',
    term: 'layout; 0+5+0, 4+7+0',
    says: 'The three figures count loudspeakers above, around and below the listener: 0+5+0 is 5.1, 0+7+0 is 7.1, 4+5+0 has four above. Subwoofers are counted apart.',
    source: 'ITU-R BS.2051-3',
    also: '5.1 7.1 5.1.4 7.1.4',
  },
  channelLabel: {
    plain: 'Name of a loudspeaker by where it stands',
    term: 'M+030, U-110',
    says: 'A letter for the height (M at ear height, U above, B below) and the angle to the left (+) or right (-) as seen from the reference place. M+030 is the left front loudspeaker.',
    source: 'ITU-R BS.2051-3',
  },
  azimuth: {
    plain: 'Angle to the side',
    term: 'azimuth',
    says: 'Seen from the reference place, 0 is straight at the middle of the picture, positive to the left, 180 behind.',
    good: 'Left and right front within 22 to 30 degrees for films.',
    source: 'ITU-R BS.2051-3; span for films: common practice',
  },
  elevation: {
    plain: 'Height angle',
    term: 'elevation',
    says: 'Seen from the ears at the reference place, 0 is level, above it is positive.',
    good: 'Front and surround loudspeakers near 0, overhead ones at 30 to 55.',
    source: 'ITU-R BS.2051-3',
  },
  window: {
    plain: 'Angles within which a loudspeaker may stand',
    term: 'window of a layout',
    says: 'For each loudspeaker the recommendation gives a least and a greatest angle. The drawing shows it as a strip on the walls.',
    good: 'Inside. Just outside is a trade-off, not a disaster.',
    source: 'ITU-R BS.2051-3, BS.775-3, or what is chosen',
  },
  bs2051: {
    plain: 'Recommendation for surround and height layouts',
    term: 'BS.2051',
    says: 'The international recommendation that names the layouts and the angles of their loudspeakers.',
    source: 'ITU-R BS.2051-3',
  },
  bs775: {
    plain: 'Recommendation for 5.1',
    term: 'BS.775',
    says: 'The older international recommendation for five loudspeakers around the listener, with surrounds at 100 to 120 degrees.',
    source: 'ITU-R BS.775-3',
  },
  referenceSeat: {
    plain: 'Place that the room is set up for',
    term: 'reference place',
    says: 'A seat, or the middle of a row between two of them. Angles, distances, delays and levels of the loudspeakers are judged at its ears.',
    good: 'The best seat of the row that you will use most, or its middle.',
    source: 'our own convention',
    also: 'sweet spot reference seat',
  },
  delay: {
    plain: 'How much later a loudspeaker must play',
    term: 'delay',
    says: 'So that all arrive together at the reference place, the nearer ones wait. The farthest has 0 ms.',
    source: 'distance over the speed of sound',
  },
  early: {
    plain: 'First echo off a face',
    term: 'early reflection',
    says: 'Sound that reaches the ears off one face a few thousandths of a second after the direct sound. Strong ones blur the image and colour voices.',
    good: `${-EARLY_LIMIT.levelDb} dB or more under the direct sound within the first ${EARLY_LIMIT.withinMs} ms.`,
    source: EARLY_LIMIT_SOURCE,
    also: 'first reflection mirror point',
  },
  reflectionPoint: {
    plain: 'Spot on a face where the echo comes from',
    term: 'reflection point',
    says: 'Hold a mirror flat on the wall: where you see the loudspeaker from your seat, there the sound is thrown to you.',
    good: 'Panels belong here first.',
    source: 'geometry',
  },
  notch: {
    plain: 'Note that a near wall cancels',
    term: 'boundary notch',
    says: 'Sound that comes back off a wall half a wave late cancels the direct sound at one note and weakens its neighbours.',
    good: 'Very near the wall, or built into it, it rises out of the bass; a loudspeaker crossed over to a subwoofer above it hardly suffers.',
    source: 'Allison, J. Audio Eng. Soc. 22 (1974) 314; from memory',
    also: 'sbir boundary interference',
  },
  imageSource: {
    plain: 'Mirror image of a loudspeaker',
    term: 'image source',
    says: 'A flat face acts like a mirror: its echo comes as if from a second loudspeaker behind it. The program counts these images.',
    source: 'Kuttruff, Room Acoustics; from memory',
  },
  tradeOff: {
    plain: 'What a place gave up for another gain',
    term: 'trade-off',
    says: 'Where no place is right in every way, the search takes the one with the least harm and says what it gave up.',
    source: 'weights: our own convention',
    also: 'traded',
  },
} as const satisfies Readonly<Record<string, TermText>>;
