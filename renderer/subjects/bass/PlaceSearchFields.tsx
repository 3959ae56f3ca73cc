/** What the search for subwoofer places is to try. */

import type { ReactElement } from 'react';
import { Choice } from '../../kit/controls/Choice';
import { measuresIn } from '../../../core/quantity/measures';
import { BoxFields } from '../../kit/controls/BoxFields';
import { FoldGroup } from '../../kit/controls/FoldGroup';
import { LengthField } from '../../kit/controls/LengthField';
import { NumberField } from '../../kit/controls/NumberField';
import { shareOf } from '../../state/jobs';
import { useSession } from '../../state/session';
import { boxText } from './box-text';
import { usePlaces, usePlaceSearch } from './places-store';

const COUNTS = [1, 2, 4] as const;

export function PlaceSearchFields(): ReactElement {
  const { options, set, start } = usePlaces();
  const share = usePlaceSearch(shareOf);
  const stop = usePlaceSearch((store) => store.stop);
  const measures = useSession((session) => measuresIn(session.units));
  const [low, high] = options.bandHz;
  return (
    <div className="place">
      <h3>Look for places along the walls</h3>
      <Choice
        legend="Subwoofers"
        hideLegend
        options={COUNTS.map((count) => ({ value: `${count}`, label: `${count}` }))}
        value={`${options.count}`}
        onChange={(value) => {
          const count = COUNTS.find((known) => `${known}` === value);
          if (count) set({ count });
        }}
      />
      <LengthField
        label="Step along the walls"
        valueM={options.stepM}
        lowM={0.1}
        highM={2}
        onChange={(stepM) => set({ stepM })}
      />
      <FoldGroup title="Box that they have" tally={boxText(options.boxM, measures)}>
        <BoxFields of="searched box" boxM={options.boxM} onChange={(boxM) => set({ boxM })} />
      </FoldGroup>
      <div className="pair">
        <NumberField
          label="From"
          unit="Hz"
          value={low}
          low={15}
          high={high - 5}
          digits={0}
          onChange={(value) => set({ bandHz: [value, high] })}
        />
        <NumberField
          label="to"
          unit="Hz"
          value={high}
          low={low + 5}
          high={150}
          digits={0}
          onChange={(value) => set({ bandHz: [low, value] })}
        />
      </div>
      <label className="tick">
        <input
          type="checkbox"
          checked={options.drives}
          onChange={(event) => set({ drives: event.currentTarget.checked })}
        />
        also try a delay and a level for each
      </label>
      {share === null ? (
        <button type="button" className="plain" onClick={start}>
          Find the best places
        </button>
      ) : (
        <button type="button" className="plain" onClick={stop}>
          Stop the search
        </button>
      )}
    </div>
  );
}
