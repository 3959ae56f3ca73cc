/** What the search in the bay found: the evenest rooms, with what they cost in floor and height. */

import { useEffect, type ReactElement } from 'react';
import { formatLength, type LengthUnits } from '../../../core/quantity/length';
import { measuresIn } from '../../../core/quantity/measures';
import type { FoundRoom } from '../../../core/proportions/search';
import type { ShellSize } from '../../../core/room/project';
import { usePreview, type Preview } from '../../state/preview';
import { useProject, useSession } from '../../state/session';
import { Failure } from '../../kit/controls/Failure';
import { Progress } from '../../kit/controls/Progress';
import { useBaySearch, useProportions } from './proportions-store';
import { FactTable } from '../../kit/table/FactTable';
import { Term } from '../../glossary/Term';

/** `3.85 × 6.00 × 2.26 m`, or feet and inches. */
function sizeText({ width, length, height }: ShellSize, units: LengthUnits): string {
  const text = [width, length, height].map((side) => formatLength(side, units)).join(' × ');
  return units === 'metric' ? `${text.replaceAll(' m', '')} m` : text;
}

/** Whole percent, rounded down: what is stopped is never at 100 %. */
const percent = (share: number): string => `${Math.floor(100 * share)} %`;

export function BestRooms(): ReactElement {
  const start = useProportions((store) => store.start);
  const { state, stopAndKeep } = useBaySearch();
  const answered = state.kind === 'done' ? state.answered : null;
  const found = answered?.answer;
  const { size } = useProject().room;
  const units = useSession((session) => session.units);
  const change = useSession((session) => session.change);
  const { row: shown, show, end } = usePreview();
  useEffect(() => end, [end, answered]);
  const previewOf = (room: FoundRoom): Preview => ({ kind: 'size', size: room.size });
  const rooms = found?.rooms ?? [];
  return (
    <FactTable
      title="Evenest rooms in the bay"
      caption="Evenest rooms in the bay"
      readout={
        answered
          ? `${answered.answer.tried.toLocaleString('en')} tried in ${(answered.ms / 1000).toFixed(1)} s`
          : undefined
      }
      scrolls="Rooms found"
      note={
        <>
          {state.kind === 'idle' ? (
            <p className="empty">
              The search tries every size that the bay allows, on the carpenter’s step.
              <button type="button" onClick={start}>
                Find the evenest rooms
              </button>
            </p>
          ) : null}
          {state.kind === 'running' ? (
            <p className="empty">
              <Progress share={state.share} label="Trying rooms" onStop={stopAndKeep} />{' '}
              {percent(state.share)}
            </p>
          ) : null}
          {state.kind === 'failed' ? (
            <Failure sentence={state.sentence} again="Try again" onAgain={start} />
          ) : null}
          {found && found.share < 1 ? (
            <p className="empty">
              The search was stopped at {percent(found.share)}
              {found.rooms.length > 0
                ? ': these are the best of the narrower rooms. Wider ones were not tried.'
                : ', before a room was found that has as much floor as is asked for.'}
              <button type="button" onClick={start}>
                Search anew
              </button>
            </p>
          ) : null}
          {found?.share === 1 && found.rooms.length === 0 ? (
            <p className="empty">
              No room in the bay has that much floor. Ask for less floor, or make the bay larger.
            </p>
          ) : null}
        </>
      }
      rows={rooms}
      keyOf={rowOf}
      chosen={rooms.map(rowOf).find((row) => row === rowOf({ size })) ?? null}
      preview={previewOf}
      columns={[
        {
          key: 'size',
          head: 'width × length × height',
          cell: (room) => (
            <>
              <button
                type="button"
                className="show-room"
                aria-pressed={shown === rowOf(room)}
                onClick={() => show(rowOf(room), previewOf(room))}
              >
                {sizeText(room.size, units)}
              </button>{' '}
              <button
                type="button"
                className="take-room"
                aria-label={`Make the room ${sizeText(room.size, units)}`}
                onClick={() => {
                  end();
                  change({ kind: 'size', size: room.size });
                }}
              >
                Use
              </button>
            </>
          ),
        },
        { key: 'floor', head: 'floor', cell: ({ floorM2 }) => measuresIn(units).area(floorM2) },
        {
          key: 'uneven',
          head: <Term id="unevenness">uneven</Term>,
          cell: ({ unevennessHz }) => `${unevennessHz.toFixed(0)} Hz`,
        },
      ]}
      empty={null}
    />
  );
}

const rowOf = ({ size }: { readonly size: ShellSize }): string =>
  `room-${size.width}|${size.length}|${size.height}`;
