/**
 * The absorber on the bench: what is being designed, before it becomes a finish of the room. It is no
 * part of the project and of its history; adding it is.
 */

import { create } from 'zustand';
import { startingDesigns, type Design, type DesignKind } from '../../../core/absorbers/design';
import { POROUS_MATERIALS } from '../../../core/absorbers/materials';
import { readDesign } from '../../../core/absorbers/read-design';
import type { LengthUnits } from '../../../core/quantity/length';
import type { CustomFinish, Face } from '../../../core/room/project';
import { isSame } from '../../../core/room/same';
import { onOtherRoom, useSession } from '../../state/session';

export interface BenchState {
  readonly design: Design;
  /** What the person calls it; null for the name made of its parts. */
  readonly name: string | null;
  /** The own finish it was opened from or added as. */
  readonly finishId: string | null;
  /** Material chosen for each layer, by id; null for an own figure. */
  readonly materials: readonly (string | null)[];
  /** The face to put it on. */
  readonly face: Face;
  /** What was done last, for the person to read. */
  readonly said: string | null;
  readonly setDesign: (design: Design) => void;
  readonly setKind: (kind: DesignKind) => void;
  readonly setMaterial: (layer: number, id: string | null) => void;
  readonly rename: (name: string | null) => void;
  readonly chooseFace: (face: Face) => void;
  /** Put a finish's design on the bench, or a new one. False where it holds no design that can be read. */
  readonly open: (finish: CustomFinish | null) => boolean;
  readonly keptAs: (finishId: string, said: string) => void;
}

/** The material whose typical figure a layer has. */
const materialsOf = (design: Design): readonly (string | null)[] =>
  design.layers.map(
    (layer) => POROUS_MATERIALS.find((row) => row.typical === layer.flowResistivity)?.id ?? null,
  );

/** A design of another kind with the same fill and gap. */
function changedKind(from: Design, kind: DesignKind, units: LengthUnits): Design {
  if (from.kind === kind) return from;
  const start = startingDesigns(units)[kind];
  const cloth =
    'clothResistance' in from && 'clothResistance' in start
      ? { clothResistance: from.clothResistance }
      : {};
  const layers = from.layers.length > 0 ? from.layers : start.layers;
  return { ...start, ...cloth, model: from.model, layers, airGapM: from.airGapM };
}

const firstDesign = (): Design => startingDesigns(useSession.getState().units).porous;
const FIRST = firstDesign();

export const useBench = create<BenchState>((set, get) => ({
  design: FIRST,
  name: null,
  finishId: null,
  materials: materialsOf(FIRST),
  face: 'back',
  said: null,
  setDesign: (design) => {
    const { materials } = get();
    set({ design, said: null, materials: design.layers.map((_, i) => materials[i] ?? null) });
  },
  setKind: (kind) => get().setDesign(changedKind(get().design, kind, useSession.getState().units)),
  setMaterial: (layer, id) => {
    const { design, materials } = get();
    const row = POROUS_MATERIALS.find((known) => known.id === id);
    const layers = design.layers.map((known, i) =>
      i === layer && row ? { ...known, flowResistivity: row.typical } : known,
    );
    set({
      design: { ...design, layers },
      said: null,
      materials: materials.map((known, i) => (i === layer ? id : known)),
    });
  },
  rename: (name) => set({ name, said: null }),
  chooseFace: (face) => set({ face }),
  open: (finish) => {
    const design = finish ? readDesign(finish.design) : firstDesign();
    if (!design) return false;
    set({
      design,
      name: finish?.name ?? null,
      finishId: finish?.id ?? null,
      materials: materialsOf(design),
      said: null,
    });
    return true;
  },
  keptAs: (finishId, said) => set({ finishId, said }),
}));

// The design stays on the bench; the finish that it was kept as belongs to the room that was left.
onOtherRoom(() => useBench.setState({ finishId: null, said: null }));

// A build that nobody has touched starts in whole figures of the units that are chosen now.
useSession.subscribe(({ units }, before) => {
  if (units === before.units) return;
  const { design, finishId, setDesign } = useBench.getState();
  const untouched = startingDesigns(before.units)[design.kind];
  if (finishId === null && isSame(design, untouched))
    setDesign(startingDesigns(units)[design.kind]);
});
