/** What can be built: how far the linings may come in, in what step, and what has to stay. */

import type { ReactElement } from 'react';
import { bayOf } from '../../../core/proportions/bay';
import { searchSize } from '../../../core/proportions/search';
import { SIZE_LIMITS_M } from '../../../core/room/limits';
import { type Bay, SIDES } from '../../../core/room/project';
import { FigureWithUnit } from '../../kit/controls/FigureWithUnit';
import { LengthField } from '../../kit/controls/LengthField';
import { useProject, useSession } from '../../state/session';
import { useProportions } from './proportions-store';

export function BayFields(): ReactElement {
  const project = useProject();
  const change = useSession((session) => session.change);
  const start = useProportions((state) => state.start);
  const bay = bayOf(
    project,
    useSession((session) => session.units),
  );
  const set = (part: Partial<Bay>): void => change({ kind: 'bay', bay: { ...bay, ...part } });
  const rooms = searchSize(bay, project.room.size);
  return (
    <details className="bay">
      <summary>The bay: what can be built</summary>
      <div className="bay-grid">
        <span />
        <span className="bay-head">least</span>
        <span className="bay-head">largest</span>
        <span className="bay-head">stays</span>
        {SIDES.map((side) => (
          <BaySide key={side} side={side} bay={bay} set={set} />
        ))}
      </div>
      <LengthField
        label="Carpenter's step"
        valueM={bay.stepM}
        lowM={0.001}
        highM={0.5}
        onChange={(stepM) => set({ stepM })}
      />
      <FigureWithUnit
        label="Least floor"
        quantity="area"
        value={bay.leastFloorM2}
        low={0}
        high={900}
        digits={1}
        onChange={(leastFloorM2) => set({ leastFloorM2 })}
      />
      <div className="bay-start">
        <span className="hint">
          {rooms > MOST_ROOMS
            ? `${rooms.toLocaleString('en')} sizes are more than can be searched: take a larger step or a smaller bay.`
            : `${rooms.toLocaleString('en')} sizes to try.`}
        </span>
        <button type="button" className="plain" disabled={rooms > MOST_ROOMS} onClick={start}>
          Find the evenest rooms
        </button>
      </div>
    </details>
  );
}

/** Some twenty seconds of search. */
const MOST_ROOMS = 20_000_000;

interface BaySideProps {
  readonly side: (typeof SIDES)[number];
  readonly bay: Bay;
  readonly set: (part: Partial<Bay>) => void;
}

function BaySide({ side, bay, set }: BaySideProps): ReactElement {
  const [lowest, highest] = SIZE_LIMITS_M[side];
  const stays = bay.fixed.includes(side);
  return (
    <>
      <span className="bay-side">{side}</span>
      <LengthField
        label={`Least ${side}`}
        shortLabel=""
        kind="room"
        valueM={bay.least[side]}
        lowM={lowest}
        highM={bay.largest[side]}
        onChange={(value) => set({ least: { ...bay.least, [side]: value } })}
      />
      <LengthField
        label={`Largest ${side}`}
        shortLabel=""
        kind="room"
        valueM={bay.largest[side]}
        lowM={bay.least[side]}
        highM={highest}
        onChange={(value) => set({ largest: { ...bay.largest, [side]: value } })}
      />
      <input
        type="checkbox"
        aria-label={`${side} stays as it is`}
        checked={stays}
        onChange={() =>
          set({
            fixed: stays ? bay.fixed.filter((known) => known !== side) : [...bay.fixed, side],
          })
        }
      />
    </>
  );
}
