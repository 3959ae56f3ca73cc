/** In the room: where subwoofers may stand and where not, while places are looked for. */

import { useMemo, type ReactElement } from 'react';
import { subwooferPlaces } from '../../../core/bass/places';
import type { SceneProps } from '../../drawing/layer';
import { useProject } from '../../state/session';
import { useBassEvidence } from './shown-evidence';
import { usePlaces } from './places-store';
import { SubwooferPlaces } from './SubwooferPlaces';

export function BassScene(props: SceneProps): ReactElement | null {
  const [shown] = useBassEvidence();
  return shown === 'places' ? <Candidates {...props} /> : null;
}

function Candidates({ palette }: SceneProps): ReactElement {
  const project = useProject();
  const { stepM, boxM } = usePlaces((store) => store.options);
  const places = useMemo(() => subwooferPlaces(project, { stepM, boxM }), [project, stepM, boxM]);
  return <SubwooferPlaces places={places} boxM={boxM} palette={palette} />;
}
