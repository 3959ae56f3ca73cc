/** How the chosen loudspeaker is held: mount, size of its box, aim, and whether it is pinned. */

import type { ReactElement } from 'react';
import { MOUNTS, type Aim, type PlacedSpeaker } from '../../../core/room/project';
import { seatsOf } from '../../../core/room/seats';
import { speakerBox, USUAL_BOX_M } from '../../../core/speakers/box';
import { aimVector } from '../../../core/speakers/aim';
import { directionFrom } from '../../../core/speakers/direction';
import { MOUNT_NAMES } from '../../../core/speakers/mount-names';
import { OwnBoxFields } from '../../kit/controls/BoxFields';
import { NumberField } from '../../kit/controls/NumberField';
import { SelectField } from '../../kit/controls/SelectField';
import { useProject, useSession } from '../../state/session';
import { FoldGroup } from '../../kit/controls/FoldGroup';
import { seatKey, seatName } from '../../state/seat-names';

export function MountFields({ speaker }: { readonly speaker: PlacedSpeaker }): ReactElement {
  const project = useProject();
  const change = useSession((session) => session.change);
  const { channel, boxM, pinned = false } = speaker;
  const box = speakerBox(project, speaker);
  return (
    <>
      <SelectField
        label="held"
        value={speaker.mount ?? ''}
        groups={[
          {
            heading: '',
            options: [
              { value: '', label: `by what is nearest: ${MOUNT_NAMES[box.mount]}` },
              ...MOUNTS.map((mount) => ({ value: mount, label: MOUNT_NAMES[mount] })),
            ],
          },
        ]}
        onChange={(value) =>
          change({
            kind: 'mounting',
            channel,
            change: { mount: MOUNTS.find((mount) => mount === value) ?? null },
          })
        }
      />
      <label className="tick">
        <input
          type="checkbox"
          checked={pinned}
          onChange={(event) =>
            change({
              kind: 'mounting',
              channel,
              change: { pinned: event.currentTarget.checked || null },
            })
          }
        />
        pinned: the search leaves it where it is
      </label>
      <FoldGroup title="Box and aim" tally={boxM ? 'stated' : 'usual box'}>
        <OwnBoxFields
          boxM={boxM}
          usualM={USUAL_BOX_M}
          onChange={(next, gesture) =>
            change({ kind: 'mounting', channel, change: { boxM: next } }, gesture)
          }
        />
        <AimFields speaker={speaker} />
      </FoldGroup>
    </>
  );
}

const aimKey = (aim: Aim | undefined): string =>
  aim === undefined ? '' : 'seat' in aim ? seatKey(aim.seat) : 'angle';

function AimFields({ speaker }: { readonly speaker: PlacedSpeaker }): ReactElement {
  const project = useProject();
  const change = useSession((session) => session.change);
  const { channel, aim } = speaker;
  const toward = directionFrom([0, 0, 0], aimVector(project, speaker));
  const set = (next: Aim | null): void =>
    change({ kind: 'mounting', channel, change: { aim: next } });
  const own = {
    azimuthDeg: rounded(toward.azimuthDeg),
    elevationDeg: rounded(toward.elevationDeg),
  };
  return (
    <>
      <SelectField
        label="aimed at"
        value={aimKey(aim)}
        groups={[
          {
            heading: '',
            options: [
              { value: '', label: 'the reference place' },
              { value: 'angle', label: 'an angle of its own' },
            ],
          },
          {
            heading: 'a seat',
            options: seatsOf(project).map((seat) => ({
              value: seatKey(seat),
              label: seatName(project, seat),
            })),
          },
        ]}
        onChange={(value) => {
          const seat = seatsOf(project).find((known) => seatKey(known) === value);
          if (seat) set({ seat: { row: seat.row, seat: seat.seat } });
          else set(value === 'angle' ? own : null);
        }}
      />
      {aim && 'azimuthDeg' in aim ? (
        <div className="pair">
          <NumberField
            label="Turned"
            unit="°"
            value={aim.azimuthDeg}
            low={-180}
            high={180}
            digits={1}
            onChange={(azimuthDeg) => set({ ...aim, azimuthDeg })}
          />
          <NumberField
            label="Tilted"
            unit="°"
            value={aim.elevationDeg}
            low={-90}
            high={90}
            digits={1}
            onChange={(elevationDeg) => set({ ...aim, elevationDeg })}
          />
        </div>
      ) : null}
    </>
  );
}

const rounded = (deg: number): number => Math.round(deg * 10) / 10;
