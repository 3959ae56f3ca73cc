/** In the room: the windows, what a window casts onto the faces, and where reflections meet them. */

import type { ReactElement } from 'react';
import type { SceneProps } from '../../drawing/layer';
import { Strokes } from '../../drawing/scene/Strokes';
import { ReflectionPoints } from './ReflectionPoints';
import { Strips } from './Strips';
import { useSpeakerLayer } from './use-speaker-layer';

export function SpeakersScene({ palette }: SceneProps): ReactElement {
  const { arcs, strips, ears, reflections } = useSpeakerLayer();
  return (
    <>
      {strips && ears ? <Strips strips={strips} ears={ears} palette={palette} /> : null}
      <Strokes pairs={arcs} color={palette.ink} onTop />
      {reflections ? <ReflectionPoints reflections={reflections} palette={palette} /> : null}
    </>
  );
}
