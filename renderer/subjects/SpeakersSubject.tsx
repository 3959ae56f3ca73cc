/** Speakers: the layout, each place by tape measure, and the seat that angles are judged at. */

import type { ReactElement } from 'react';
import type { Point } from '../../core/room/project';
import { seatsOf } from '../../core/room/seats';
import { layoutEdit } from '../../core/speakers/layout-edit';
import { LAYOUTS } from '../../core/speakers/layouts';
import { nominalPlace } from '../../core/speakers/nominal-place';
import { Choice } from '../controls/Choice';
import { LengthField } from '../controls/LengthField';
import { SelectField } from '../controls/SelectField';
import { useAnalysis, useProject, useSession } from '../state/session';

export function SpeakersInputs(): ReactElement {
  const project = useProject();
  const { layout, speakers } = useAnalysis();
  const change = useSession((session) => session.change);
  const channel = useSession((session) => session.channel);
  const chooseChannel = useSession((session) => session.chooseChannel);
  const chosen =
    speakers.find((speaker) => speaker.channel === channel)?.channel ??
    speakers[0]?.channel ??
    null;
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
          if (next) change(layoutEdit(project, next));
        }}
      />
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
              onClick={() => chooseChannel(speaker.channel)}
            >
              {speaker.inRange ? '' : '▲ '}
              {known?.short ?? speaker.channel}
            </button>
          );
        })}
      </fieldset>
      {chosen === null ? (
        <p className="hint">No loudspeaker has a place yet: see the findings.</p>
      ) : (
        <PlaceFields channel={chosen} />
      )}
      <ListeningFields />
    </>
  );
}

const PLACE_FIELDS = [
  ['from the left wall', 'width'],
  ['from the screen wall', 'length'],
  ['above the floor', 'height'],
] as const;

function PlaceFields({ channel }: { readonly channel: string }): ReactElement | null {
  const project = useProject();
  const { layout } = useAnalysis();
  const change = useSession((session) => session.change);
  const speaker = project.speakers.placed.find((placed) => placed.channel === channel);
  const known = layout?.channels.find((candidate) => candidate.label === channel);
  if (!speaker) return null;
  const nominal = known ? nominalPlace(project, known) : null;
  return (
    <div className="place">
      <h3>
        {known?.name ?? channel} <small>{channel}</small>
      </h3>
      {PLACE_FIELDS.map(([label, side], axis) => (
        <LengthField
          key={side}
          label={`${known?.short ?? channel} ${label}`}
          shortLabel={label}
          valueM={speaker.position[axis] ?? 0}
          lowM={0}
          highM={project.room.size[side]}
          onChange={(value, gesture) =>
            change(
              {
                kind: 'speaker',
                channel,
                position: speaker.position.map((at, i) =>
                  i === axis ? value : at,
                ) as unknown as Point,
              },
              gesture,
            )
          }
        />
      ))}
      {nominal ? (
        <button
          type="button"
          className="plain"
          onClick={() => change({ kind: 'speaker', channel, position: nominal })}
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
  const { reference, rows } = project.seating;
  const row = rows.find((candidate) => candidate.id === reference.row) ?? rows[0];
  if (!row) return null;
  const { size } = project.room;
  return (
    <div className="place">
      <h3>Listening position</h3>
      <SelectField
        label="reference seat"
        value={`${reference.row}|${reference.seat}`}
        groups={[
          {
            heading: '',
            options: seatsOf(project).map((seat) => ({
              value: `${seat.row}|${seat.seat}`,
              label: `row ${rows.findIndex((r) => r.id === seat.row) + 1}, seat ${seat.seat} from the left`,
            })),
          },
        ]}
        onChange={(value) => {
          const [id = '', seat = '1'] = value.split('|');
          change({ kind: 'reference', row: id, seat: Number(seat) });
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
