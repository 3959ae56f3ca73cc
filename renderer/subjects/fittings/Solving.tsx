/** How far the modes as built have come: progress with a stop, or why there are none. */

import type { ReactElement } from 'react';
import { refusalSentence } from '../../../core/analysis/named-modes';
import { measuresIn } from '../../../core/quantity/measures';
import { SLIVER_M } from '../../../core/room-modes/grid';
import { Failure } from '../../kit/controls/Failure';
import { Progress } from '../../kit/controls/Progress';
import { useBuilt, useSolving } from '../../pressure/built-store';
import { useSession } from '../../state/session';

export function Solving(): ReactElement | null {
  const { stopped, stop, restart } = useBuilt();
  const { share, failure, outcome, quality } = useSolving();
  const { about } = useSession((session) => measuresIn(session.units));
  if (share !== null) {
    return <Progress share={share} label="Solving the modes as built" onStop={stop} />;
  }
  if (failure) return <Failure sentence={failure} again="Solve them" onAgain={restart} />;
  if (stopped) {
    return (
      <span className="solving">
        Stopped.
        <button type="button" onClick={restart}>
          Solve them
        </button>
      </span>
    );
  }
  if (outcome && !outcome.ok) {
    return <span className="solving complaint">{refusalSentence(outcome.refusal)}</span>;
  }
  if (outcome?.ok && quality === 'fine' && outcome.built.shape.sliverM > SLIVER_M) {
    const { sliverM } = outcome.built.shape;
    return <span className="solving">simplified: faces within {about(sliverM)} count as one</span>;
  }
  return outcome && quality === 'coarse' ? (
    <span className="solving">coarse, to 150 Hz, while you drag</span>
  ) : null;
}
