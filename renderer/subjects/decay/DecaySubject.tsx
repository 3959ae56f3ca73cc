/** Decay: what each face is finished with, what hangs on it, who sits in the room, what is aimed for. */

import { useEffect, useRef, type ReactElement } from 'react';
import { AbsorberBench } from './AbsorberBench';
import { AbsorberChart } from './AbsorberChart';
import { useBench } from './bench-store';
import { AbsorptionShares } from './AbsorptionShares';
import { DecayChart } from './DecayChart';
import { useAnalysis, useProject, useSession } from '../../state/session';
import { useBenchOpen } from './bench-open';
import { DecayAdvice } from './DecayAdvice';
import { DecayFaces } from './DecayFaces';
import { DecayMethods } from './DecayMethods';
import { DecayOwnFinishes } from './DecayOwnFinishes';
import { PatchList } from '../../finishes/PatchList';
import { DecayPeople } from './DecayPeople';
import { DecayTarget } from './DecayTarget';

export function DecayInputs(): ReactElement {
  const open = useBenchOpen((bench) => bench.open);
  if (open) return <Bench />;
  return (
    <div className="decay-inputs">
      <DecayFaces />
      <PatchList of="decay" />
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
  const setOpen = useBenchOpen((bench) => bench.setOpen);
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // Newer browsers answer scrolling with a promise, which is no clean-up.
    void box.current?.closest('.inputs')?.scrollTo({ top: 0 });
  }, []);
  return (
    <div ref={box}>
      <AbsorberBench onClose={() => setOpen(false)} />
    </div>
  );
}

export function DecayEvidence(): ReactElement | null {
  const project = useProject();
  const { decay, modes } = useAnalysis();
  const bandHz = useSession((session) => session.bandHz);
  const chooseBand = useSession((session) => session.chooseBand);
  const benchOpen = useBenchOpen((bench) => bench.open);
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
