/** First reflections face by face, and for the chosen one what brings it under the limit. */

import type { ReactElement, ReactNode } from 'react';
import { bandName } from '../../../core/quantity/bands';
import { faceName } from '../../../core/room/faces';
import type { SeatReflection } from '../../../core/reflections/early-at-seat';
import { EARLY_LIMIT, EARLY_LIMIT_SOURCE } from '../../../core/reflections/early-limit';
import { levelText } from './early-reflections';
import { FaceMark } from './FaceMark';
import { Source } from '../../kit/Note';
import { FactTable } from '../../kit/table/FactTable';

export interface EarlyTableProps {
  /** Whose sound, and where it is heard. */
  readonly of: string;
  /** Stands at the right of the caption: another seat can be chosen there. */
  readonly seat: ReactNode;
  readonly reflections: readonly SeatReflection[];
  readonly leftOut: number;
  readonly face: string | null;
  readonly onChoose: (face: string) => void;
  readonly onPoint: (face: string | null) => void;
  /** What to do about the chosen one. */
  readonly remedy: ReactNode;
}

export function EarlyTable(props: EarlyTableProps): ReactElement {
  const { of, seat, reflections, leftOut, face, onChoose, onPoint, remedy } = props;
  return (
    <FactTable
      className="face-table"
      title="First reflections by face"
      readout={of}
      caption={
        <>
          <Source of="Face by face">{EARLY_LIMIT_SOURCE}</Source>
          {seat}
        </>
      }
      scrolls="Early reflections"
      rows={reflections}
      keyOf={({ hit }) => hit.face}
      chosen={face}
      onChoose={({ hit }) => onChoose(hit.face)}
      pressRow
      onPointRow={(row) => onPoint(row?.hit.face ?? null)}
      more={() => remedy}
      columns={[
        {
          key: 'face',
          head: 'face',
          cell: ({ hit, overDb }) => (
            <>
              <FaceMark kind={overDb > 0 ? 'over' : 'within'} /> {faceName(hit.face)}
            </>
          ),
        },
        {
          key: 'delay',
          head: <Source of="delay">Later than the direct sound.</Source>,
          cell: ({ path }) => `${path.delayMs.toFixed(1)} ms`,
        },
        {
          key: 'level',
          head: (
            <Source of="level">
              Of its loudest octave from 1 to 8 kHz, against the direct sound.
            </Source>
          ),
          cell: ({ levelDb }) => levelText(levelDb),
        },
        {
          key: 'octave',
          head: <Source of="at">The octave in which it is loudest.</Source>,
          cell: ({ octaveHz }) => bandName(octaveHz),
        },
        {
          key: 'over',
          head: (
            <Source of="over by">
              {`Over ${levelText(EARLY_LIMIT.levelDb)} within ${EARLY_LIMIT.withinMs} ms.`}
            </Source>
          ),
          cell: overText,
          cellClass: ({ overDb }) => (overDb > 0 ? 'outside' : undefined),
        },
      ]}
      lastRows={
        leftOut > 0 ? (
          <tr className="left-out">
            <td colSpan={5}>
              {leftOut} more {leftOut === 1 ? 'is' : 'are'} not judged: behind the box, the wall it
              is set into, or a face without a figure.
            </td>
          </tr>
        ) : null
      }
    />
  );
}

function overText({ overDb, path }: SeatReflection): string {
  if (overDb > 0) return `${overDb.toFixed(1)} dB`;
  return path.delayMs > EARLY_LIMIT.withinMs ? 'later' : 'within';
}
