/** Decay: what each face is finished with, what hangs on it, who sits in the room, what is aimed for. */

import { useEffect, useRef, type ReactElement } from 'react';
import { AbsorberBench } from './AbsorberBench';
import { AbsorberChart } from './AbsorberChart';
import { useBench } from './bench-store';
import { AbsorptionShares } from './AbsorptionShares';
import { DecayChart } from './DecayChart';
import { useAnalysis, useProject, useSession } from '../../state/session';
import { DecayAdvice } from './DecayAdvice';
import { DecayFaces } from './DecayFaces';
import { DecayMethods } from './DecayMethods';
import { DecayOwnFinishes } from './DecayOwnFinishes';
import { PatchList } from '../../finishes/PatchList';
import { DecayPeople } from './DecayPeople';
import { DecayTarget } from './DecayTarget';
import { useShownInputs } from './shown-inputs';

export function DecayInputs(): ReactElement {
  const [shown] = useShownInputs();
  if (shown === 'bench') return <Bench />;
  return (
    <div className="decay-inputs">
      <DecayFaces />
      <PatchList of="treatment" />
      <DecayPeople />
      <DecayOwnFinishes />
      <DecayTarget />
      <DecayMethods />
      <p className="caution">
        Linings burn and mineral fibre irritates: use tested materials, cover fibre with cloth,
        never hang untested foam. Your local fire code decides.
      </p>
    </div>
  );
}

/** The absorber bench in place of the inputs, seen from its top. */
function Bench(): ReactElement {
  const [, show] = useShownInputs();
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // Newer browsers answer scrolling with a promise, which is no clean-up.
    void box.current?.closest('.inputs')?.scrollTo({ top: 0 });
  }, []);
  return (
    <div ref={box}>
      <AbsorberBench onClose={() => show('all')} />
    </div>
  );
}

export function DecayEvidence(): ReactElement | null {
  const project = useProject();
  const { decay, modes } = useAnalysis();
  const bandHz = useSession((session) => session.bandHz);
  const chooseBand = useSession((session) => session.chooseBand);
  const benchOpen = useShownInputs()[0] === 'bench';
  const design = useBench((bench) => bench.design);
  const band = decay.bands.find((candidate) => candidate.hz === bandHz);
  return (
    <>
      <DecayAdvice advice={decay.advice} bands={decay.bands} />
      <DecayChart
        decay={decay}
        schroederHz={modes.schroederHz}
        chosenHz={bandHz}
        onChoose={chooseBand}
      />
      {benchOpen ? (
        <AbsorberChart design={design} />
      ) : band ? (
        <AbsorptionShares band={band} project={project} onChoose={chooseBand} />
      ) : null}
    </>
  );
}
