/** Speakers: the layout, each place by tape measure, and the seat that angles are judged at. */

import type { ReactElement } from 'react';
import { possiblePlaces, referencePlace, referenceTo } from '../../../core/room/seats';
import { added, laterPlan } from '../../../core/speakers/later';
import { laterEdit, layoutEdit } from '../../../core/speakers/layout-edit';
import { LAYOUTS } from '../../../core/speakers/layouts';
import { firstPlace } from '../../../core/speakers/first-place';
import { Choice } from '../../kit/controls/Choice';
import { LengthField } from '../../kit/controls/LengthField';
import { PlaceFields } from '../../kit/controls/PlaceFields';
import { SelectField } from '../../kit/controls/SelectField';
import { useChosenSpeaker } from './chosen-speaker';
import { seatKey, seatOption } from '../../state/seat-names';
import { MountFields } from './MountFields';
import { PlacerFields } from './PlacerFields';
import { speakerSign } from '../../drawing/speaker-sign';
import { useAnalysis, useProject, useSession } from '../../state/session';

export function SpeakersInputs(): ReactElement {
  const project = useProject();
  const { layout, speakers, findings } = useAnalysis();
  const change = useSession((session) => session.change);
  const units = useSession((session) => session.units);
  const select = useSession((session) => session.select);
  const chosen = useChosenSpeaker()?.channel ?? null;
  const pinned = new Set(
    project.speakers.placed.flatMap((placed) => (placed.pinned ? [placed.channel] : [])),
  );
  return (
    <>
      <Choice
        legend="Layout"
        options={LAYOUTS.map((known) => ({
          value: known.id,
          label: known.tradeName,
          title: `${known.id}: ${known.source}`,
        }))}
        value={layout?.id ?? ''}
        onChange={(id) => {
          const next = LAYOUTS.find((known) => known.id === id);
          if (next) change(layoutEdit(project, next, units));
        }}
      />
      {layout && layout.recommendations.length > 1 ? (
        <Choice
          legend="Judged by"
          options={layout.recommendations.map((known) => ({
            value: known.id,
            label: known.title,
            title: `${known.source}. ${known.howKnown}${known.note ? `. ${known.note}` : ''}`,
          }))}
          value={layout.recommendation.id}
          onChange={(recommendation) => change({ kind: 'recommendation', recommendation })}
        />
      ) : null}
      <LaterFields />
      <label className="tick">
        <input
          type="checkbox"
          checked={project.screen.soundThrough}
          onChange={(event) =>
            change({ kind: 'screen', change: { soundThrough: event.currentTarget.checked } })
          }
        />
        the picture lets sound through
      </label>
      <PlacerFields />
      <fieldset className="channels">
        <legend>Loudspeaker</legend>
        {speakers.map((speaker) => {
          const known = layout?.channels.find((candidate) => candidate.label === speaker.channel);
          return (
            <button
              key={speaker.channel}
              type="button"
              title={known?.name ?? speaker.channel}
              aria-pressed={speaker.channel === chosen}
              className={speaker.inRange ? undefined : 'outside'}
              onClick={() => select({ kind: 'speaker', channel: speaker.channel })}
            >
              {speaker.inRange ? '' : `${speakerSign(speaker, findings)} `}
              {known?.short ?? speaker.channel}
              {pinned.has(speaker.channel) ? ' ⊥' : ''}
            </button>
          );
        })}
      </fieldset>
      {chosen === null ? (
        <p className="hint">No loudspeaker has a place yet: see the findings.</p>
      ) : (
        <SpeakerFields channel={chosen} />
      )}
      <ListeningFields />
    </>
  );
}

/** The layout to come: its further loudspeakers are placed, drawn as outlines and listed for later. */
function LaterFields(): ReactElement | null {
  const project = useProject();
  const { layout, later } = useAnalysis();
  const change = useSession((session) => session.change);
  const units = useSession((session) => session.units);
  const larger = layout ? LAYOUTS.filter((known) => added(layout, known).length > 0) : [];
  if (larger.length === 0) return null;
  return (
    <>
      <SelectField
        label="wire for later"
        value={laterPlan(project)?.layout.id ?? ''}
        groups={[
          {
            heading: '',
            options: [
              { value: '', label: 'nothing more' },
              ...larger.map(({ id, tradeName }) => ({ value: id, label: tradeName })),
            ],
          },
        ]}
        onChange={(id) => change(laterEdit(project, id === '' ? null : id, units))}
      />
      {later.length > 0 ? (
        <p className="hint">
          For later, drawn as outlines: {later.map(({ name }) => name.toLowerCase()).join(', ')}. To
          move one, choose the larger layout; all places stay when you come back.
        </p>
      ) : null}
    </>
  );
}

function SpeakerFields({ channel }: { readonly channel: string }): ReactElement | null {
  const project = useProject();
  const { layout } = useAnalysis();
  const change = useSession((session) => session.change);
  const units = useSession((session) => session.units);
  const speaker = project.speakers.placed.find((placed) => placed.channel === channel);
  const known = layout?.channels.find((candidate) => candidate.label === channel);
  if (!speaker) return null;
  const first = known ? firstPlace(project, known, units, speaker) : null;
  return (
    <div className="place">
      <h3>
        {known?.name ?? channel} <small>{channel}</small>
      </h3>
      <PlaceFields
        name={known?.short ?? channel}
        measuredTo="the middle of the front of its box"
        position={speaker.position}
        size={project.room.size}
        onChange={(position, gesture) => change({ kind: 'speaker', channel, position }, gesture)}
      />
      <MountFields speaker={speaker} />
      {first ? (
        <button
          type="button"
          className="plain"
          onClick={() => change({ kind: 'speaker', ...first })}
        >
          Put it on the wall at {known?.nominalAzimuth}°
        </button>
      ) : null}
    </div>
  );
}

function ListeningFields(): ReactElement | null {
  const project = useProject();
  const change = useSession((session) => session.change);
  const reference = referencePlace(project);
  const row = project.seating.rows.find(({ id }) => id === reference?.row);
  if (!row || !reference) return null;
  const places = possiblePlaces(project);
  const { size } = project.room;
  return (
    <div className="place">
      <h3>Listening position</h3>
      <SelectField
        label="reference place"
        value={seatKey(reference)}
        groups={[
          {
            heading: '',
            options: places.map((place) => ({
              value: seatKey(place),
              label: seatOption(project, place),
            })),
          },
        ]}
        onChange={(value) => {
          const place = places.find((known) => seatKey(known) === value);
          if (place) change({ kind: 'reference', reference: referenceTo(place) });
        }}
      />
      <LengthField
        label="Row, ears from the screen wall"
        shortLabel="ears from the screen wall"
        valueM={row.y}
        lowM={0}
        highM={size.length}
        onChange={(y, gesture) => change({ kind: 'row', id: row.id, change: { y } }, gesture)}
      />
      <LengthField
        label="Ears above the row's floor"
        shortLabel="ears above the row's floor"
        valueM={row.earHeightM}
        lowM={0.3}
        highM={2.5}
        onChange={(earHeightM, gesture) =>
          change({ kind: 'row', id: row.id, change: { earHeightM } }, gesture)
        }
      />
    </div>
  );
}
