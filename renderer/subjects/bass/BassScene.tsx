/** In the room: where subwoofers may stand and where not, while places are looked for. */

import type { ReactElement } from 'react';
import type { SceneProps } from '../../drawing/layer';
import { useBassEvidence } from './shown-evidence';
import { SubwooferPlaces } from './SubwooferPlaces';
import { useCandidates } from './use-candidates';

export function BassScene(props: SceneProps): ReactElement | null {
  const [shown] = useBassEvidence();
  return shown === 'places' ? <Shown {...props} /> : null;
}

function Shown({ palette }: SceneProps): ReactElement {
  const { places, boxM } = useCandidates();
  return <SubwooferPlaces places={places} boxM={boxM} palette={palette} />;
}
