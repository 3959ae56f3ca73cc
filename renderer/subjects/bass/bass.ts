import type { Subject } from '../subject';
import { BassEvidence, BassInputs } from './BassSubject';
import { BassFlat } from './BassFlat';
import { BassScene } from './BassScene';
import { NoBassFindings } from './NoBassFindings';
import { usePlaces } from './places-store';
import { useFollowedResponses } from './response-store';
import { subwooferLabels } from './subwoofer-labels';

export const BASS: Subject = {
  id: 'bass',
  title: 'Bass',
  about: 'subwoofers, every seat',
  Inputs: BassInputs,
  Evidence: BassEvidence,
  layer: { chooses: ['subwoofer'], labels: subwooferLabels, Scene: BassScene, Flat: BassFlat },
  tells: ['bass'],
  NothingFound: NoBassFindings,
  searches: { 'subwoofer-search': () => usePlaces.getState().start() },
  Follower: ({ isOpen }) => {
    useFollowedResponses(isOpen);
    return null;
  },
};
