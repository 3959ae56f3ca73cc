/** First reflections of the chosen loudspeaker, and the panel that catches the chosen one. */

import type { ReactElement } from 'react';
import { treatmentText, withoutPanel } from '../../../core/findings/early-reflections';
import { faceName } from '../../../core/room/faces';
import { measuresIn } from '../../../core/quantity/measures';
import type { SeatReflection } from '../../../core/reflections/early-at-seat';
import { EARLY_LIMIT } from '../../../core/reflections/early-limit';
import { EarlyChart } from './EarlyChart';
import { EarlyTable } from './EarlyTable';
import { useProject, useSession } from '../../state/session';
import { SeatChoice } from '../../kit/controls/SeatChoice';
import { seatName } from '../../state/seat-names';
import { useEarly, useTreatment } from './early-reflections';

export function EarlyEvidence(): ReactElement {
  const project = useProject();
  const early = useEarly();
  const { chooseFace, pointFace } = useSession.getState();
  if (!early) {
    return <p className="empty">No loudspeaker or no seat has a place yet: see the findings.</p>;
  }
  const { speaker, seat, at, reflections, face, shownFace } = early;
  if (at.kind !== 'heard') {
    return (
      <div className="no-walls">
        <p className="empty">
          {at.kind === 'hidden'
            ? `A fitting hides ${speaker.name} from the ${seatName(project, seat)}: without direct sound there is nothing to judge reflections against.`
            : `${speaker.name} or the ${seatName(project, seat)} is outside the free space: nothing can be told.`}
        </p>
        <SeatChoice label="at" />
      </div>
    );
  }
  const shared = {
    of: `${speaker.name} at ${seatName(project, seat)}`,
    reflections,
    onChoose: chooseFace,
    onPoint: pointFace,
  };
  const chosen = reflections.find(({ hit }) => hit.face === face) ?? null;
  return (
    <>
      <EarlyChart {...shared} face={shownFace} />
      <EarlyTable
        {...shared}
        seat={<SeatChoice label="at" />}
        face={face}
        leftOut={at.leftOut}
        remedy={chosen ? <Remedy reflection={chosen} /> : null}
      />
    </>
  );
}

const BUTTON = {
  panel: 'Put a panel here',
  widen: 'Widen it',
  finish: 'Change its finish',
} as const;

function Remedy({ reflection }: { readonly reflection: SeatReflection }): ReactElement {
  const project = useProject();
  const units = useSession((session) => session.units);
  const change = useSession((session) => session.change);
  const chooseFace = useSession((session) => session.chooseFace);
  const treatment = useTreatment(reflection);
  const { hit, overDb, path } = reflection;
  if (overDb === 0) {
    const on = hit.patch === null ? '' : `It meets the patch "${hit.patch}". `;
    return path.delayMs > EARLY_LIMIT.withinMs ? (
      <>
        {on}Later than {EARLY_LIMIT.withinMs} ms: the limit does not ask about it.
      </>
    ) : (
      <>{on}Within the limit: nothing has to be done.</>
    );
  }
  if (!treatment) return <>{withoutPanel(reflection)}</>;
  return (
    <div className="panel-remedy">
      <span>{treatmentText({ project, measures: measuresIn(units) }, treatment)}</span>
      {treatment.isEnough ? (
        <button
          type="button"
          className="apply"
          onClick={() => {
            // It stays the chosen one, so that what the panel does to it is seen.
            chooseFace(hit.face);
            change({
              kind: 'patches',
              patches: treatment.patches,
              what: `panel on the ${faceName(hit.face)}`,
            });
          }}
        >
          {BUTTON[treatment.kind]}
        </button>
      ) : null}
    </div>
  );
}
