/** What the decay is judged by: a standard's corridor, the trade's, or the person's own. */

import type { ReactElement } from 'react';
import { OWN_TOLERANCE_PERCENT, targetSource, tolerancePercent } from '../../../core/decay/target';
import { bandMark, COMMON_OCTAVES_HZ } from '../../../core/quantity/bands';
import type { Target } from '../../../core/room/project';
import { Choice } from '../../kit/controls/Choice';
import { NumberField } from '../../kit/controls/NumberField';
import { Term } from '../../glossary/Term';
import { useAnalysis, useProject, useSession } from '../../state/session';
import { FoldGroup } from '../../kit/controls/FoldGroup';

export function DecayTarget(): ReactElement {
  const { target } = useProject();
  const { decay } = useAnalysis();
  const change = useSession((session) => session.change);
  const set = (next: Target): void => change({ kind: 'target', target: next });
  const choose = (kind: Target['kind']): void => {
    if (kind !== 'custom') set({ kind });
    else
      set({
        kind,
        seconds: Object.fromEntries(
          decay.bands
            .filter((band) => band.targetS !== null)
            .map((band) => [String(band.hz), Number((band.targetS ?? 0.3).toFixed(2))]),
        ),
        tolerancePercent: OWN_TOLERANCE_PERCENT,
      });
  };
  return (
    <FoldGroup title="Target" open>
      <Choice
        legend="Judge the decay by"
        hideLegend
        options={[
          { value: 'home-cinema', label: 'Home cinema' },
          { value: 'bs1116', label: 'Listening room' },
          { value: 'custom', label: 'My own' },
        ]}
        value={target.kind}
        onChange={choose}
      />
      {target.kind === 'custom' ? (
        <>
          <div className="bands">
            {COMMON_OCTAVES_HZ.map((hz) => (
              <NumberField
                key={hz}
                label={bandMark(hz)}
                unit="s"
                value={target.seconds[`${hz}`] ?? 0.3}
                low={0.05}
                high={10}
                digits={2}
                onChange={(seconds) =>
                  set({ ...target, seconds: { ...target.seconds, [hz]: seconds } })
                }
              />
            ))}
          </div>
          <NumberField
            label="Within"
            unit="%"
            value={tolerancePercent(target)}
            low={1}
            high={100}
            digits={0}
            onChange={(percent) => set({ ...target, tolerancePercent: percent })}
          />
        </>
      ) : null}
      <p className="hint">
        {target.kind === 'custom' ? null : (
          <>
            <Term id={target.kind === 'bs1116' ? 'bs1116' : 'homeCinemaTarget'} />:{' '}
          </>
        )}
        {targetSource(target).replaceAll(' %', '\u00a0%')}.
      </p>
    </FoldGroup>
  );
}
