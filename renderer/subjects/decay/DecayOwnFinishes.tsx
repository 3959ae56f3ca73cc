/** The project's own finishes: name, coefficient by octave, source. What is in use cannot be dropped. */

import { useState, type ReactElement } from 'react';
import { OCTAVES_HZ } from '../../../core/quantity/bands';
import { readDesign } from '../../../core/absorbers/read-design';
import { usesFinish } from '../../../core/room/edits';
import { FINISHES } from '../../../core/room/finishes';
import type { CustomFinish } from '../../../core/room/project';
import { useBench } from './bench-store';
import { TypedField } from '../../kit/controls/TypedField';
import { useProject, useSession } from '../../state/session';
import { useShownInputs } from './shown-inputs';
import { CoefficientField } from './CoefficientField';
import { UNCERTAINTY_LINE } from '../../finishes/finish-words';
import { FoldGroup } from '../../kit/controls/FoldGroup';
import { freeId } from '../../../core/room/free-id';

export function DecayOwnFinishes(): ReactElement {
  const project = useProject();
  const change = useSession((session) => session.change);
  const [chosenId, choose] = useState<string | null>(null);
  const [, showInputs] = useShownInputs();
  const own = project.finishesCustom;
  const chosen = own.find((finish) => finish.id === chosenId) ?? own[0];
  const add = (): void => {
    const taken = [...own, ...FINISHES].map((finish) => finish.id);
    const id = freeId('own', taken);
    change({
      kind: 'own-finish',
      finish: { id, name: `Own finish ${own.length + 1}`, absorption: {}, source: 'not stated' },
    });
    choose(id);
  };
  return (
    <FoldGroup title="Own finishes" tally={own.length === 0 ? 'none' : String(own.length)}>
      <div className="adders">
        <button type="button" onClick={add}>
          New finish
        </button>
        <button type="button" onClick={() => showInputs('bench')}>
          Design an absorber
        </button>
      </div>
      {own.length > 1 ? (
        <fieldset className="channels">
          <legend>Finish</legend>
          {own.map((finish) => (
            <button
              key={finish.id}
              type="button"
              aria-pressed={finish.id === chosen?.id}
              onClick={() => choose(finish.id)}
            >
              {finish.name || finish.id}
            </button>
          ))}
        </fieldset>
      ) : null}
      {chosen ? <FinishFields key={chosen.id} finish={chosen} /> : null}
    </FoldGroup>
  );
}

function FinishFields({ finish }: { readonly finish: CustomFinish }): ReactElement {
  const project = useProject();
  const change = useSession((session) => session.change);
  const [, showInputs] = useShownInputs();
  const openOnBench = useBench((bench) => bench.open);
  const used = usesFinish(project, finish.id);
  const put = (next: Partial<CustomFinish>): void =>
    change({ kind: 'own-finish', finish: { ...finish, ...next } });
  const text =
    (field: 'name' | 'source', most: number) =>
    (typed: string): string | null => {
      const value = typed.trim();
      if (value === '') return `The ${field} cannot be empty.`;
      if (value.length > most) return `The ${field} can have ${most} letters at most.`;
      put({ [field]: value });
      return null;
    };
  return (
    <div className="own-finish">
      <TypedField
        className="field-text"
        inputMode="text"
        label="Name"
        shown={finish.name}
        onTake={text('name', 120)}
      />
      <TypedField
        className="field-text"
        inputMode="text"
        label="Source"
        shown={finish.source}
        onTake={text('source', 400)}
      />
      <div className="bands">
        {OCTAVES_HZ.map((hz) => (
          <CoefficientField
            key={hz}
            hz={hz}
            value={finish.absorption[`${hz}`]}
            onChange={(value) => {
              const others = Object.entries(finish.absorption).filter(([key]) => key !== `${hz}`);
              // Figures typed in by hand are no longer those of a design.
              put({
                design: undefined,
                absorption: Object.fromEntries(
                  value === undefined ? others : [...others, [`${hz}`, value]],
                ),
              });
            }}
          />
        ))}
      </div>
      <p className="hint">
        Coefficients of diffuse sound (ISO 354). Empty: no figure, and none for a room that uses it.
        Above 1 they stay so for Sabine and are cut at 0.99 in logarithms. {UNCERTAINTY_LINE}
      </p>
      {readDesign(finish.design) === null ? null : (
        <button
          type="button"
          className="plain"
          onClick={() => {
            if (openOnBench(finish)) showInputs('bench');
          }}
        >
          Change its design
        </button>
      )}
      <button
        type="button"
        className="plain"
        disabled={used}
        title={used ? 'A face, fitting or patch has this finish.' : undefined}
        onClick={() => change({ kind: 'drop-finish', id: finish.id })}
      >
        {used ? 'In use, cannot be removed' : `Remove ${finish.name || finish.id}`}
      </button>
    </div>
  );
}
