/** Shell: the finished size and the air, with the modes as evidence. */

import type { ReactElement } from 'react';
import { measuresIn } from '../../../core/quantity/measures';
import { SIZE_LIMITS_M } from '../../../core/room/limits';
import { SIDES } from '../../../core/room/project';
import { ModeLanes } from '../../pressure/ModeLanes';
import { ThirdOctaves } from './ThirdOctaves';
import { Tabs } from '../../kit/Tabs';
import { LengthField } from '../../kit/controls/LengthField';
import { FigureWithUnit } from '../../kit/controls/FigureWithUnit';
import { NumberField } from '../../kit/controls/NumberField';
import { SIDE_NAMES } from '../../drawing/DimensionFigure';
import { BayFields } from './BayFields';
import { BestRooms } from './BestRooms';
import { CriteriaTable } from './CriteriaTable';
import { ProportionMapChart } from './ProportionMapChart';
import { useAnalysis, useProject, useSession, useShown } from '../../state/session';
import { Figures } from '../../glossary/Figures';

export function ShellInputs(): ReactElement {
  const project = useProject();
  const { geometry, modes, air } = useAnalysis();
  const change = useSession((session) => session.change);
  const measures = useSession((session) => measuresIn(session.units));
  const { size } = project.room;
  return (
    <>
      <div className="sides">
        {SIDES.map((side) => (
          <LengthField
            key={side}
            size="large"
            kind="room"
            label={SIDE_NAMES[side]}
            valueM={size[side]}
            lowM={SIZE_LIMITS_M[side][0]}
            highM={SIZE_LIMITS_M[side][1]}
            onChange={(value, gesture) =>
              change({ kind: 'size', size: { ...size, [side]: value } }, gesture)
            }
          />
        ))}
      </div>
      <p className="hint">
        Finished inner size, face of the lining to face of the lining. Arrow keys step, Shift steps
        finer.
      </p>
      <Figures
        rows={[
          ['Free volume', measures.volume(geometry.volumeM3), 'shell less fittings, exact'],
          ['Surface', measures.area(geometry.surfaceM2), 'exposed faces, exact'],
          [
            'Single resonances end at',
            modes.schroederHz === null ? 'unknown' : `${modes.schroederHz.toFixed(0)} Hz`,
            '2000 (T/V)^½, Schroeder 1996; T is the mean of 500 Hz and 1 kHz by the method to read',
            'schroeder',
          ],
          [
            'Resonances to 200 Hz',
            `${modes.shell.length} (mean ${modes.expectedCount.toFixed(0)})`,
            'counted; in brackets the mean count of Maa and Bolt (1939)',
            'modeCount',
          ],
          ['Speed of sound', measures.speed(air.speedOfSoundMS), 'ISO 9613-1:1993'],
        ]}
      />
      <div className="pair">
        <FigureWithUnit
          label="Air"
          quantity="temperature"
          value={project.air.temperatureC}
          low={-20}
          high={50}
          digits={1}
          onChange={(temperatureC) => change({ kind: 'air', change: { temperatureC } })}
        />
        <NumberField
          label="Humidity"
          unit="%"
          value={project.air.humidityPercent}
          low={10}
          high={100}
          digits={0}
          onChange={(humidityPercent) => change({ kind: 'air', change: { humidityPercent } })}
        />
      </div>
      <BayFields />
    </>
  );
}

export function ShellEvidence(): ReactElement {
  const [shown, show] = useShown<'modes' | 'proportions'>('shell', 'modes');
  return (
    <Tabs
      of="the shell"
      tabs={[
        { value: 'modes', title: 'Modes' },
        { value: 'proportions', title: 'Proportions' },
      ]}
      shown={shown}
      onShow={show}
    >
      {shown === 'proportions' ? (
        <>
          <ProportionMapChart />
          <CriteriaTable />
          <BestRooms />
        </>
      ) : (
        <ModesEvidence />
      )}
    </Tabs>
  );
}

function ModesEvidence(): ReactElement {
  const { modes, findings } = useAnalysis();
  const findingId = useSession((session) => session.findingId);
  const place = findings.find((finding) => finding.id === findingId)?.place;
  return (
    <>
      <ModeLanes modes={modes} marked={place?.kind === 'span' ? place : null} />
      <ThirdOctaves bands={modes.thirdOctaves} />
    </>
  );
}
