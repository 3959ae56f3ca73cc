/** What the search in the bay found: the evenest rooms, with what they cost in floor and height. */

import { useEffect, type ReactElement } from 'react';
import { formatLength, type LengthUnits } from '../../../core/quantity/length';
import { measuresIn } from '../../../core/quantity/measures';
import type { ShellSize } from '../../../core/room/project';
import { isSame } from '../../../core/room/same';
import { previewRow, usePreview } from '../../state/preview';
import { useProject, useSession } from '../../state/session';
import { Failure } from '../../kit/controls/Failure';
import { Progress } from '../../kit/controls/Progress';
import { useBaySearch, useProportions } from './proportions-store';
import { scrollable } from '../../kit/controls/scrollable';
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
  return (
    <figure className="chart" aria-label="Evenest rooms in the bay">
      <figcaption>
        Evenest rooms in the bay
        {answered ? (
          <span className="readout">
            {answered.answer.tried.toLocaleString('en')} tried in {(answered.ms / 1000).toFixed(1)}{' '}
            s
          </span>
        ) : null}
      </figcaption>
      <div className="table-box" {...scrollable('Rooms found')}>
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
        {found && found.rooms.length > 0 ? (
          <table>
            <thead>
              <tr>
                <th scope="col">width × length × height</th>
                <th scope="col">floor</th>
                <th scope="col">
                  <Term id="unevenness">uneven</Term>
                </th>
              </tr>
            </thead>
            <tbody>
              {found.rooms.map((room) => {
                const preview = { kind: 'size', size: room.size } as const;
                const row = `room-${Object.values(room.size).join('|')}`;
                return (
                  <tr
                    key={row}
                    className={isSame(room.size, size) ? 'chosen' : undefined}
                    {...previewRow(row, preview)}
                  >
                    <th scope="row">
                      <button
                        type="button"
                        className="show-room"
                        aria-pressed={shown === row}
                        onClick={() => show(row, preview)}
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
                    </th>
                    <td>{measuresIn(units).area(room.floorM2)}</td>
                    <td>{room.unevennessHz.toFixed(0)} Hz</td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        ) : null}
      </div>
    </figure>
  );
}
