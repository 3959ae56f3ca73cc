/** The near faces of one loudspeaker: how far, the first notch of each, and what moves the chosen one. */

import type { ReactElement, ReactNode } from 'react';
import { faceName } from '../../../core/room/faces';
import type { LengthUnits } from '../../../core/quantity/length';
import { measuresIn } from '../../../core/quantity/measures';
import { NOTCH_BAND_HZ, notchAdvice } from '../../../core/reflections/notch-remedy';
import { FaceMark } from './FaceMark';
import type { NearNotch } from '../../../core/analysis/near-faces';
import { Source } from '../../kit/Note';
import { FactTable } from '../../kit/table/FactTable';

const METHOD =
  'First notch of each face alone, at c / (2 x path difference); depth from distance and absorption. Image sources: Kuttruff, Room Acoustics (from memory).';

const NOT_IN_CURVE =
  'Not part of the curve: the opposite face is nearer, or as near, and only one of each pair takes part.';

export interface NotchTableProps {
  readonly notches: readonly NearNotch[];
  readonly units: LengthUnits;
  readonly face: string | null;
  readonly onChoose: (face: string) => void;
  /** Stands at the right of the caption. */
  readonly seat: ReactNode;
}

export function NotchTable(props: NotchTableProps): ReactElement {
  const { notches, units, face, onChoose, seat } = props;
  const { rounded } = measuresIn(units);
  return (
    <FactTable
      className="face-table"
      title="Notches of the near walls"
      caption={
        <>
          <Source of="First notches">{METHOD}</Source>
          {seat}
        </>
      }
      scrolls="Notches"
      rows={notches}
      keyOf={({ hit }) => hit.face}
      chosen={face}
      onChoose={({ hit }) => onChoose(hit.face)}
      pressRow
      more={(notch) =>
        [adviceText(notch, units), ...(notch.inCurve ? [] : [NOT_IN_CURVE])].join(' ')
      }
      columns={[
        {
          key: 'face',
          head: 'face',
          cell: ({ hit, inCurve }) => (
            <>
              <FaceMark kind={inCurve ? 'notch' : 'far-notch'} /> {faceName(hit.face)}
            </>
          ),
        },
        {
          key: 'away',
          head: <Source of="away">From the loudspeaker to the plane of the face.</Source>,
          cell: ({ fromFaceM }) => rounded(fromFaceM),
        },
        {
          key: 'longer',
          head: (
            <Source of="longer way">
              The way by the face is longer than the direct way by this.
            </Source>
          ),
          cell: ({ differenceM }) => rounded(differenceM),
        },
        {
          key: 'notch',
          head: <Source of="notch">{METHOD}</Source>,
          cell: ({ notchHz }) => (notchHz === null ? 'none' : `${notchHz.toFixed(0)} Hz`),
        },
        {
          key: 'depth',
          head: <Source of="depth">Of this face alone, against the free field.</Source>,
          cell: ({ depthDb }) => `−${Math.abs(depthDb).toFixed(1)} dB`,
        },
      ]}
    />
  );
}

function adviceText({ remedy, notchHz }: NearNotch, units: LengthUnits): string {
  if (notchHz === null) return 'The loudspeaker is set into this face: it makes no notch.';
  const [low, high] = NOTCH_BAND_HZ;
  if (!remedy)
    return `It lies ${notchHz < low ? `below ${low}` : `above ${high}`} Hz, where a notch is minded less: nothing has to move for it.`;
  return notchAdvice(remedy, measuresIn(units).about).join(' ');
}
