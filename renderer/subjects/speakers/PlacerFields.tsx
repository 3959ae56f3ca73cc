/** Let the program place the loudspeakers: what it may hang them on, and what it traded for what. */

import type { ReactElement } from 'react';
import type { PlacerResult } from '../../../core/placing/placer';
import { STUD_PITCHES_M } from '../../../core/placing/placing-context';
import { layoutEdit } from '../../../core/speakers/layout-edit';
import { layoutOf } from '../../../core/speakers/layouts';
import { Progress } from '../../kit/controls/Progress';
import { SelectField } from '../../kit/controls/SelectField';
import { SeverityMark } from '../../kit/controls/SeverityMark';
import { useProject, useSession } from '../../state/session';
import { failureOf, shareOf } from '../../state/jobs';
import { usePlacer, usePlacerSearch, type Studs } from './placer-store';

const STUDS: readonly { readonly value: Studs; readonly label: string }[] = [
  { value: 'any', label: 'anywhere on the wall' },
  { value: 'imperial', label: 'studs 16 in on centres' },
  { value: 'metric', label: 'metric studs, 40 cm on centres' },
];

export function PlacerFields(): ReactElement {
  const { studs, refusal, setStuds, start } = usePlacer();
  const share = usePlacerSearch(shareOf);
  const failure = usePlacerSearch(failureOf) ?? refusal;
  const stop = usePlacerSearch((store) => store.stop);
  return (
    <div className="placer">
      <SelectField
        label="Fixed to"
        value={studs}
        groups={[{ heading: '', options: STUDS }]}
        onChange={(value) => setStuds(STUDS.find((known) => known.value === value)?.value ?? 'any')}
      />
      {share === null ? (
        <button
          type="button"
          onClick={() => void start(studs === 'any' ? null : STUD_PITCHES_M[studs])}
        >
          Place the loudspeakers
        </button>
      ) : (
        <Progress share={share} label="Looking for places" onStop={stop} />
      )}
      {failure ? <p className="complaint">{failure}</p> : null}
      <Outcome />
    </div>
  );
}

function headline({ chosen, unplaced, trades }: PlacerResult): string {
  if (chosen.length + unplaced.length === 0) {
    return 'Nothing was placed: all are pinned, or there is no seat or no known layout to place by.';
  }
  const not = unplaced.length > 0 ? `, ${unplaced.length} not` : '';
  const even = trades.length === 0 && unplaced.length === 0;
  return `${chosen.length} placed${not}${even ? ': no other seat hears them over a degree outside their windows.' : '.'}`;
}

/** Trades that are told at once; the others unfold. */
const TOLD = 2;

/** What it could not do and what would help, then what it traded. */
function Outcome(): ReactElement | null {
  const placed = usePlacer((store) => store.placed);
  const forget = usePlacer((store) => store.forget);
  const project = useProject();
  const change = useSession((session) => session.change);
  const units = useSession((session) => session.units);
  // Of this very room: after any change what was said may no longer hold.
  if (placed?.project !== project) return null;
  const { result } = placed;
  const { unplaced, trades, otherLayouts } = result;
  return (
    <div className="placer-outcome" role="status">
      <p>
        <button
          type="button"
          className="forget"
          aria-label="Put this away"
          title="Put this away"
          onClick={forget}
        >
          ×
        </button>
        <b>{headline(result)}</b>
      </p>
      {unplaced.map(({ channel, name, reason, helps }) => (
        <div key={channel}>
          <p className="told">
            <SeverityMark severity="fault" />
            <span>
              {name}: {reason}
            </span>
          </p>
          {helps.map((help) => (
            <p key={help.text} className="remedy">
              <span>{help.text}</span>
              {help.edit ? (
                <button
                  type="button"
                  className="apply"
                  onClick={() => {
                    if (help.edit) change(help.edit);
                    forget();
                  }}
                >
                  Apply
                </button>
              ) : null}
            </p>
          ))}
        </div>
      ))}
      {otherLayouts.map((id) => {
        const layout = layoutOf(id);
        return layout ? (
          <p key={id} className="remedy">
            <span>{layout.tradeName} would have a place for every channel.</span>
            <button
              type="button"
              className="apply"
              onClick={() => {
                change(layoutEdit(project, layout, units));
                forget();
              }}
            >
              Apply
            </button>
          </p>
        ) : null;
      })}
      {trades.slice(0, TOLD).map((trade) => (
        <p key={trade.text} className="told">
          <SeverityMark severity="note" />
          <span>{trade.text}</span>
        </p>
      ))}
      {trades.length > TOLD ? (
        <details>
          <summary>What else it traded ({trades.length - TOLD})</summary>
          <ul>
            {trades.slice(TOLD).map((trade) => (
              <li key={trade.text}>{trade.text}</li>
            ))}
          </ul>
        </details>
      ) : null}
      <p className="caution">
        Fix heavy boxes to a stud, a joist or a board between two, never to the lining alone, and
        mind cables and pipes behind it.
      </p>
    </div>
  );
}
