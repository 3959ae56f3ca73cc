/** All channels at all seats: the angle each seat hears, how far it is outside the window, and the spread. */

import type { ReactElement } from 'react';
import type { AtSeat } from '../../../core/speakers/at-seats';
import { referencePlace } from '../../../core/room/seats';
import { useAnalysis, useProject, useSelected, useSession } from '../../state/session';
import { seatKey, seatName } from '../../state/seat-names';
import { useResult } from '../../state/use-result';
import { signed } from '../../kit/chart/signed';
import { Source } from '../../kit/Note';
import { FactTable, type Column } from '../../kit/table/FactTable';
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
  const table = useResult('seatAngles', {});
  const reference = referencePlace(project);
  const cellOf = (label: string, key: string): AtSeat | undefined =>
    table.cells.find((cell) => cell.channel === label && seatKey(cell) === key);
  const seatColumns = table.seats.map((seat): Column<(typeof table.channels)[number]> => {
    const key = seatKey(seat);
    return {
      key,
      head: `${shortName(seatName(project, seat))}${reference && key === seatKey(reference) ? ' ●' : ''}`,
      headClass: key === pointed ? 'pointed' : undefined,
      cell: (row) => {
        const cell = cellOf(row.channel, key);
        return cell ? angles(cell) : '';
      },
      cellClass: (row) => ((cellOf(row.channel, key)?.outsideDeg ?? 0) > 0 ? 'outside' : undefined),
      onPoint: (begins) => point(begins ? key : null),
    };
  });
  return (
    <FactTable
      className="seat-angles"
      title="All channels at all seats"
      caption="What every seat hears"
      legend={
        <>
          <span>
            △ <Term id="window">outside the window</Term>
          </span>
          <span>◇ over {WIDE_DEG}° off its aim</span>
        </>
      }
      scrolls="Angles at every seat"
      rows={table.cells.length === 0 ? [] : table.channels}
      keyOf={(row) => row.channel}
      chosen={channel}
      onChoose={(row) => select({ kind: 'speaker', channel: row.channel })}
      more={(row) => (
        <ul className="seat-words">
          {table.seats.map((seat) => {
            const cell = cellOf(row.channel, seatKey(seat));
            return cell ? (
              <li key={seatKey(seat)}>
                <b>{shortName(seatName(project, seat))}</b> {spoken(cell)}
              </li>
            ) : null;
          })}
        </ul>
      )}
      columns={[
        {
          key: 'channel',
          head: 'channel',
          cell: (row) =>
            layout?.channels.find((known) => known.label === row.channel)?.short ?? row.channel,
        },
        ...seatColumns,
        {
          key: 'level',
          head: (
            <Source of="level, dB">
              Least to greatest level over the seats, against the reference place.
            </Source>
          ),
          cell: ({ levelDb }) => `${signed(levelDb[0])} to ${signed(levelDb[1])}`,
        },
      ]}
      lastRows={
        <tr>
          <th scope="row">
            <Source of="spread">
              Between the channels at this seat, once aligned at the reference place.
            </Source>
          </th>
          {table.seats.map((seat) => (
            <td key={seatKey(seat)}>
              {seat.levelDb.toFixed(1)} dB, {seat.arrivalMs.toFixed(1)} ms
            </td>
          ))}
          <td />
        </tr>
      }
      empty={<p className="empty">No loudspeaker or no seat has a place yet: see the findings.</p>}
    />
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
