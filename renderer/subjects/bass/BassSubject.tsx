/** Bass: the subwoofers, what they make at every seat, and better places for them. */

import type { ReactElement } from 'react';
import { anotherPlace } from '../../../core/bass/another';
import { searchDefaultsM } from '../../../core/bass/places';
import type { LengthUnits } from '../../../core/quantity/length';
import { freeId } from '../../../core/room/free-id';
import { SUBWOOFER_LIMITS } from '../../../core/room/limits';
import type { Point, Project, Subwoofer } from '../../../core/room/project';
import { subwooferBox, withBox } from '../../../core/scene/subwoofer-box';
import { ModesBehind } from './ModesBehind';
import { ResponseChart } from './ResponseChart';
import { useShownResponses } from './response-store';
import { SeatChoice } from '../../kit/controls/SeatChoice';
import { useShownSeat } from '../../state/shown-seat';
import { PlaceSearchFields } from './PlaceSearchFields';
import { PlaceTable } from './PlaceTable';
import { usePlaces } from './places-store';
import { useBassEvidence } from './shown-evidence';
import { Tabs } from '../../kit/Tabs';
import { Failure } from '../../kit/controls/Failure';
import { FoldGroup } from '../../kit/controls/FoldGroup';
import { OwnBoxFields } from '../../kit/controls/BoxFields';
import { NumberField } from '../../kit/controls/NumberField';
import { PlaceFields } from '../../kit/controls/PlaceFields';
import { useBroughtIntoView } from '../../kit/controls/use-brought-into-view';
import type { Gesture } from '../../state/gesture';
import { removeThing } from '../../state/remove-thing';
import { usePainted } from '../../pressure/painted';
import { seatKey, seatName } from '../../state/seat-names';
import { useProject, useSelected, useSession } from '../../state/session';

export function BassInputs(): ReactElement {
  const project = useProject();
  const change = useSession((session) => session.change);
  const units = useSession((session) => session.units);
  const subwoofer = useSelected('subwoofer');
  const select = useSession((session) => session.select);
  const { subwoofers } = project.speakers;
  const chosen = subwoofers.find((sub) => sub.id === subwoofer) ?? subwoofers[0] ?? null;
  return (
    <>
      <fieldset className="channels">
        <legend>Subwoofers</legend>
        {subwoofers.map((sub) => (
          <button
            key={sub.id}
            type="button"
            aria-pressed={sub === chosen}
            onClick={() => select({ kind: 'subwoofer', id: sub.id })}
          >
            {sub.id}
          </button>
        ))}
        <button
          type="button"
          disabled={subwoofers.length >= SUBWOOFER_LIMITS.count}
          onClick={() => {
            const added = anotherSubwoofer(project, units);
            change({
              kind: 'subwoofers',
              subwoofers: [...subwoofers, added],
              what: `add ${added.id}`,
            });
            select({ kind: 'subwoofer', id: added.id });
          }}
        >
          + Add
        </button>
      </fieldset>
      {chosen ? (
        <SubwooferFields key={chosen.id} sub={chosen} />
      ) : (
        <p className="hint">
          No subwoofer stands in the room yet. Add one, then drag it in the drawing.
        </p>
      )}
      <div className="place">
        <SeatChoice />
      </div>
      <PlaceSearchFields />
    </>
  );
}

/** One more, of a usual box, where nothing is in its way. */
function anotherSubwoofer(project: Project, units: LengthUnits): Subwoofer {
  const id = freeId(
    'sub',
    project.speakers.subwoofers.map((sub) => sub.id),
  );
  return { id, position: anotherPlace(project, searchDefaultsM(units).boxM) };
}

function SubwooferFields({ sub }: { readonly sub: Subwoofer }): ReactElement {
  const project = useProject();
  const change = useSession((session) => session.change);
  const { subwoofers } = project.speakers;
  const explicit = useSelected('subwoofer');
  const box = useBroughtIntoView<HTMLDivElement>(explicit);
  const drive = (part: Partial<Subwoofer>): void =>
    change({
      kind: 'subwoofers',
      subwoofers: subwoofers.map((known) => (known.id === sub.id ? { ...known, ...part } : known)),
      what: `drive of ${sub.id}`,
    });
  const search = usePlaces((store) => store.set);
  const setBox = (boxM: Point | null, gesture: Gesture | null): void => {
    const boxed = withBox(project, sub, boxM);
    change(
      {
        kind: 'subwoofers',
        subwoofers: subwoofers.map((known) => (known.id === sub.id ? boxed : known)),
        what: `box of ${sub.id}`,
      },
      gesture,
    );
    // The next search is for a box like it.
    if (boxM) search({ boxM });
  };
  return (
    <div className="place" ref={box}>
      <h3>{sub.id}</h3>
      <PlaceFields
        name={sub.id}
        measuredTo="the middle of its box"
        position={sub.position}
        size={project.room.size}
        onChange={(position, gesture) =>
          change({ kind: 'subwoofer', id: sub.id, position }, gesture)
        }
      />
      <FoldGroup title="Box" tally={sub.boxM ? 'stated' : 'usual box'}>
        <OwnBoxFields boxM={sub.boxM} usualM={subwooferBox(project, sub).sizeM} onChange={setBox} />
      </FoldGroup>
      <div className="pair">
        <NumberField
          label="Delay"
          unit="ms"
          value={sub.delayMs ?? 0}
          low={SUBWOOFER_LIMITS.delayMs[0]}
          high={SUBWOOFER_LIMITS.delayMs[1]}
          digits={2}
          onChange={(delayMs) => drive({ delayMs })}
        />
        <NumberField
          label="Level"
          unit="dB"
          value={sub.levelDb ?? 0}
          low={SUBWOOFER_LIMITS.levelDb[0]}
          high={SUBWOOFER_LIMITS.levelDb[1]}
          digits={1}
          onChange={(levelDb) => drive({ levelDb })}
        />
      </div>
      <label className="tick">
        <input
          type="checkbox"
          checked={sub.inverted ?? false}
          onChange={(event) => drive({ inverted: event.currentTarget.checked })}
        />
        polarity reversed
      </label>
      <button
        type="button"
        className="plain"
        onClick={() => removeThing({ kind: 'subwoofer', id: sub.id })}
      >
        Remove {sub.id}
      </button>
    </div>
  );
}

export function BassEvidence(): ReactElement {
  const project = useProject();
  const { heard, failure, retry } = useShownResponses();
  const lookedAt = useShownSeat();
  const { painted, choose } = usePainted();
  const frequencyHz = painted?.kind === 'frequency' ? painted.frequencyHz : null;
  const [shown, show] = useBassEvidence();
  if (failure) return <Failure sentence={failure} again="Try again" onAgain={retry} />;
  if (!heard) return <p className="empty">The response at the seats is being computed.</p>;
  return (
    <Tabs
      of="the bass"
      tabs={[
        { value: 'behind', title: 'Behind' },
        { value: 'places', title: 'Places' },
      ]}
      shown={shown}
      onShow={show}
    >
      <ResponseChart
        responses={heard.responses}
        isOfRoom={heard.isOfRoom}
        seat={lookedAt ? seatKey(lookedAt) : ''}
        frequencyHz={frequencyHz}
        onChoose={(hz) => choose({ kind: 'frequency', frequencyHz: hz })}
      />
      {shown === 'places' ? (
        <PlaceTable />
      ) : (
        <ModesBehind
          frequencyHz={frequencyHz}
          seat={lookedAt?.position ?? null}
          seatName={lookedAt ? seatName(project, lookedAt) : ''}
        />
      )}
    </Tabs>
  );
}
