/** What the search in the bay found: the evenest rooms, with what they cost in floor and height. */

import { useEffect, type ReactElement } from 'react';
import { formatLength, type LengthUnits } from '../../../core/quantity/length';
import { measuresIn } from '../../../core/quantity/measures';
import type { ShellSize } from '../../../core/room/project';
import { isSame } from '../../../core/room/same';
import { previewRow, usePreview } from '../../state/preview';
import { useProject, useSession } from '../../state/session';
import { useProportions } from './proportions-store';
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
  const { search, start, stop } = useProportions();
  const { size } = useProject().room;
  const units = useSession((session) => session.units);
  const change = useSession((session) => session.change);
  const { row: shown, show, end } = usePreview();
  useEffect(() => end, [end, search]);
  return (
    <figure className="chart" aria-label="Evenest rooms in the bay">
      <figcaption>
        Evenest rooms in the bay
        {search.kind === 'found' ? (
          <span className="readout">
            {search.result.tried.toLocaleString('en')} tried in {(search.ms / 1000).toFixed(1)} s
          </span>
        ) : null}
      </figcaption>
      <div className="table-box" {...scrollable('Rooms found')}>
        {search.kind === 'none' ? (
          <p className="empty">
            The search tries every size that the bay allows, on the carpenter’s step.
            <button type="button" onClick={start}>
              Find the evenest rooms
            </button>
          </p>
        ) : null}
        {search.kind === 'running' ? (
          <p className="empty" role="status">
            <progress value={search.share} /> {percent(search.share)}
            <button type="button" onClick={stop}>
              Stop
            </button>
          </p>
        ) : null}
        {search.kind === 'failed' ? <p className="complaint">{search.sentence}</p> : null}
        {search.kind === 'found' && search.result.share < 1 ? (
          <p className="empty">
            The search was stopped at {percent(search.result.share)}
            {search.result.rooms.length > 0
              ? ': these are the best of the narrower rooms. Wider ones were not tried.'
              : ', before a room was found that has as much floor as is asked for.'}
            <button type="button" onClick={start}>
              Search anew
            </button>
          </p>
        ) : null}
        {search.kind === 'found' &&
        search.result.share === 1 &&
        search.result.rooms.length === 0 ? (
          <p className="empty">
            No room in the bay has that much floor. Ask for less floor, or make the bay larger.
          </p>
        ) : null}
        {search.kind === 'found' && search.result.rooms.length > 0 ? (
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
              {search.result.rooms.map((room) => {
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
