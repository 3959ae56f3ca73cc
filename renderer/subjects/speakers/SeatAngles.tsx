/** All channels at all seats: the angle each seat hears, how far it is outside the window, and the spread. */

import { useMemo, type ReactElement } from 'react';
import { atSeats, type AtSeat } from '../../../core/speakers/at-seats';
import { referencePlace } from '../../../core/room/seats';
import { useAnalysis, useProject, useSelected, useSession } from '../../state/session';
import { seatKey, seatName } from '../../state/seat-names';
import { signed } from '../../kit/chart/signed';
import { scrollable } from '../../kit/controls/scrollable';
import { Term } from '../../glossary/Term';
import { practice } from '../../../core/room/practice/practice';

/** Seats farther off the axis than this hear less treble from most boxes, degrees. */
const WIDE_DEG = practice('wide-off-axis');

export function SeatAngles(): ReactElement {
  const project = useProject();
  const { layout } = useAnalysis();
  const channel = useSelected('speaker');
  const select = useSession((session) => session.select);
  const pointed = useSession((session) => session.pointedSeat);
  const point = useSession((session) => session.pointSeat);
  const table = useMemo(() => atSeats(project), [project]);
  const reference = referencePlace(project);
  const cellOf = (label: string, key: string): AtSeat | undefined =>
    table.cells.find((cell) => cell.channel === label && seatKey(cell) === key);
  return (
    <figure className="chart seat-angles" aria-label="All channels at all seats">
      <figcaption>
        What every seat hears
        <span className="key">
          <span>
            △ <Term id="window">outside the window</Term>
          </span>
          <span>◇ over {WIDE_DEG}° off its aim</span>
        </span>
      </figcaption>
      <div className="table-box" {...scrollable('Angles at every seat')}>
        {table.cells.length === 0 ? (
          <p className="empty">No loudspeaker or no seat has a place yet: see the findings.</p>
        ) : (
          <table>
            <thead>
              <tr>
                <th scope="col">channel</th>
                {table.seats.map((seat) => (
                  <th
                    key={seatKey(seat)}
                    scope="col"
                    className={seatKey(seat) === pointed ? 'pointed' : undefined}
                    onPointerEnter={() => point(seatKey(seat))}
                    onPointerLeave={() => point(null)}
                  >
                    {shortName(seatName(project, seat))}
                    {reference && seatKey(seat) === seatKey(reference) ? ' ●' : ''}
                  </th>
                ))}
                <th
                  scope="col"
                  title="Least to greatest level over the seats, against the reference place"
                >
                  level, dB
                </th>
              </tr>
            </thead>
            <tbody>
              {table.channels.map((spread) => (
                <tr
                  key={spread.channel}
                  className={spread.channel === channel ? 'chosen' : undefined}
                >
                  <th scope="row">
                    <button
                      type="button"
                      onClick={() => select({ kind: 'speaker', channel: spread.channel })}
                    >
                      {layout?.channels.find((known) => known.label === spread.channel)?.short ??
                        spread.channel}
                    </button>
                  </th>
                  {table.seats.map((seat) => {
                    const key = seatKey(seat);
                    const cell = cellOf(spread.channel, key);
                    return (
                      <td
                        key={key}
                        className={cell && cell.outsideDeg > 0 ? 'outside' : undefined}
                        title={cell ? spoken(cell) : undefined}
                        onPointerEnter={() => point(key)}
                        onPointerLeave={() => point(null)}
                      >
                        {cell ? angles(cell) : ''}
                      </td>
                    );
                  })}
                  <td>
                    {signed(spread.levelDb[0])} to {signed(spread.levelDb[1])}
                  </td>
                </tr>
              ))}
              <tr>
                <th scope="row">spread</th>
                {table.seats.map((seat) => (
                  <td
                    key={seatKey(seat)}
                    title="Between the channels at this seat, once aligned at the reference place"
                  >
                    {seat.levelDb.toFixed(1)} dB, {seat.arrivalMs.toFixed(1)} ms
                  </td>
                ))}
                <td />
              </tr>
            </tbody>
          </table>
        )}
      </div>
    </figure>
  );
}

const shortName = (name: string): string => name.replace('row ', 'R').replace(', seat ', ' S');

function angles({ azimuthDeg, elevationDeg, outsideDeg, offAxis }: AtSeat): string {
  const mark = outsideDeg > 0 ? '△ ' : '';
  const high =
    Math.abs(elevationDeg) >= 0.5
      ? ` ${elevationDeg > 0 ? '↑' : '↓'}${Math.round(Math.abs(elevationDeg))}°`
      : '';
  const wide = offAxis.offAxisDeg > WIDE_DEG ? ' ◇' : '';
  return `${mark}${Math.round(azimuthDeg) || 0}°${high}${wide}`;
}

const spoken = (cell: AtSeat): string =>
  [
    `${cell.azimuthDeg.toFixed(1)}° to the side (azimuth), height angle (elevation) ${cell.elevationDeg.toFixed(1)}°`,
    cell.outsideDeg > 0 ? `${cell.outsideDeg.toFixed(1)}° outside the window` : 'within the window',
    `${cell.offAxis.horizontalDeg.toFixed(0)}° beside and ${cell.offAxis.verticalDeg.toFixed(0)}° above the axis`,
    `${signed(cell.levelDb)} dB and ${signed(cell.arrivalMs)} ms against the reference place`,
  ].join('; ');
