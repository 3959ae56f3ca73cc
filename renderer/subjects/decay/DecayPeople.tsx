/** People and seats: how many of what, each with its absorption area. */

import type { ReactElement } from 'react';
import { itemOf, ITEMS } from '../../../core/decay/objects';
import type { RoomObject } from '../../../core/room/project';
import { measuresIn } from '../../../core/quantity/measures';
import { seatsOf } from '../../../core/room/seats';
import { NumberField } from '../../kit/controls/NumberField';
import { SelectField } from '../../kit/controls/SelectField';
import { useProject, useSession } from '../../state/session';
import { FoldGroup } from '../../kit/controls/FoldGroup';
import { freeId } from '../../../core/room/free-id';
import { Term } from '../../glossary/Term';

/** What a room file allows. */
const MOST_ROWS = 20;

export function DecayPeople(): ReactElement {
  const project = useProject();
  const change = useSession((session) => session.change);
  const { objects } = project;
  const seats = seatsOf(project).length;
  const set = (next: readonly RoomObject[]): void => change({ kind: 'objects', objects: next });
  const put = (next: RoomObject): void =>
    set(objects.map((object) => (object.id === next.id ? next : object)));
  const add = (item: string, count: number): void => {
    const taken = objects.map((object) => object.id);
    set([...objects, { id: freeId('group', taken), item, count }]);
  };
  const count = objects.reduce((sum, object) => sum + object.count, 0);
  return (
    <FoldGroup title="People and seats" tally={count === 0 ? 'none' : String(count)}>
      {objects.length === 0 ? (
        <p className="hint">An empty room. People absorb: a full cinema decays faster.</p>
      ) : null}
      {objects.map((object, i) => (
        <ObjectFields
          key={object.id}
          object={object}
          number={i + 1}
          onChange={put}
          onDelete={() => set(objects.filter(({ id }) => id !== object.id))}
        />
      ))}
      <div className="adders">
        <button
          type="button"
          disabled={seats === 0 || objects.length >= MOST_ROWS}
          onClick={() => add('person-seated', Math.min(100, seats))}
        >
          Fill the {seats} seats
        </button>
        <button
          type="button"
          disabled={objects.length >= MOST_ROWS}
          onClick={() => add('chair-uph-item', 1)}
        >
          Add chairs
        </button>
      </div>
      <p className="hint">
        Each <Term id="byThePiece">absorbs by the piece</Term>, beside the walls, in every method. A
        person in a chair counts as the person alone.
      </p>
    </FoldGroup>
  );
}

function ObjectFields(props: {
  readonly object: RoomObject;
  readonly number: number;
  readonly onChange: (object: RoomObject) => void;
  readonly onDelete: () => void;
}): ReactElement {
  const { object, number, onChange, onDelete } = props;
  const item = itemOf(object.item);
  const at500 = item?.absorptionM2['500'];
  const measures = useSession((session) => measuresIn(session.units));
  const options = ITEMS.map((known) => ({
    value: known.id,
    label: known.howKnown === 'memory' ? `${known.name} (from memory)` : known.name,
  }));
  const unknown = { value: object.item, label: `${object.item} (not known)` };
  return (
    <div className="object">
      <SelectField
        label={`Group ${number}`}
        value={object.item}
        source={
          item &&
          `${item.source}; ${item.howKnown === 'memory' ? 'from memory' : 'read in a transcription of it'}. At 500 Hz ${at500 === undefined ? 'no figure' : measures.area(at500)} each.`
        }
        groups={[{ heading: '', options: item ? options : [unknown, ...options] }]}
        onChange={(next) => onChange({ ...object, item: next })}
      />
      <div className="object-count">
        <NumberField
          label={`Group ${number}, how many`}
          unit=""
          value={object.count}
          low={0}
          high={100}
          digits={0}
          whole
          onChange={(count) => onChange({ ...object, count })}
        />
        <button type="button" aria-label={`Remove group ${number}`} onClick={onDelete}>
          Remove
        </button>
      </div>
    </div>
  );
}
