/** The near faces of one loudspeaker: how far, the first notch of each, and what moves the chosen one. */

import { useEffect, useRef, type ReactElement, type ReactNode } from 'react';
import { faceName } from '../../../core/room/faces';
import type { LengthUnits } from '../../../core/quantity/length';
import { measuresIn } from '../../../core/quantity/measures';
import { MINDED_HZ, notchAdvice } from '../../../core/reflections/notch-remedy';
import { FaceMark } from './FaceMark';
import type { WallNotch } from './near-walls';
import { scrollable } from '../../kit/controls/scrollable';

const METHOD =
  'First notch of each face alone, at c / (2 x path difference); depth from distance and absorption. Image sources: Kuttruff, Room Acoustics (from memory)';

const NOT_IN_CURVE =
  'Not part of the curve: the opposite face is nearer, or as near, and only one of each pair takes part';

export interface NotchTableProps {
  readonly notches: readonly WallNotch[];
  readonly units: LengthUnits;
  readonly face: string | null;
  readonly onChoose: (face: string) => void;
  /** Stands at the right of the caption. */
  readonly seat: ReactNode;
}

export function NotchTable(props: NotchTableProps): ReactElement {
  const { notches, units, face, onChoose, seat } = props;
  return (
    <figure className="chart face-table" aria-label="Notches of the near walls">
      <figcaption>
        <span title={METHOD}>First notches</span>
        {seat}
      </figcaption>
      <div className="table-box" {...scrollable('Notches')}>
        <table>
          <thead>
            <tr>
              <th scope="col">face</th>
              <th scope="col" title="From the loudspeaker to the plane of the face">
                away
              </th>
              <th scope="col" title="The way by the face is longer than the direct way by this">
                longer way
              </th>
              <th scope="col" title={METHOD}>
                notch
              </th>
              <th scope="col" title="Of this face alone, against the free field">
                depth
              </th>
            </tr>
          </thead>
          <tbody>
            {notches.map((notch) => (
              <NotchRows
                key={notch.hit.face}
                notch={notch}
                units={units}
                chosen={notch.hit.face === face}
                onChoose={() => onChoose(notch.hit.face)}
              />
            ))}
          </tbody>
        </table>
      </div>
    </figure>
  );
}

function NotchRows(props: {
  readonly notch: WallNotch;
  readonly units: LengthUnits;
  readonly chosen: boolean;
  readonly onChoose: () => void;
}): ReactElement {
  const { notch, units, chosen, onChoose } = props;
  const { hit, fromFaceM, differenceM, notchHz, depthDb, inCurve } = notch;
  const more = useRef<HTMLTableRowElement>(null);
  useEffect(() => {
    if (chosen) more.current?.scrollIntoView({ block: 'nearest' });
  }, [chosen]);
  return (
    <>
      <tr className={chosen ? 'chosen' : undefined} onClick={onChoose}>
        <th scope="row">
          <button
            type="button"
            aria-expanded={chosen}
            title={inCurve ? 'Part of the curve' : NOT_IN_CURVE}
            onClick={onChoose}
          >
            <FaceMark kind={inCurve ? 'notch' : 'far-notch'} /> {faceName(hit.face)}
          </button>
        </th>
        <td>{measuresIn(units).rounded(fromFaceM)}</td>
        <td>{measuresIn(units).rounded(differenceM)}</td>
        <td>{notchHz === null ? 'none' : `${notchHz.toFixed(0)} Hz`}</td>
        <td>−{Math.abs(depthDb).toFixed(1)} dB</td>
      </tr>
      {chosen ? (
        <tr className="chosen more" ref={more}>
          <td colSpan={5}>{adviceText(notch, units)}</td>
        </tr>
      ) : null}
    </>
  );
}

function adviceText({ remedy, notchHz }: WallNotch, units: LengthUnits): string {
  if (notchHz === null) return 'The loudspeaker is set into this face: it makes no notch.';
  const [low, high] = MINDED_HZ;
  if (!remedy)
    return `It lies ${notchHz < low ? `below ${low}` : `above ${high}`} Hz, where a notch is minded less: nothing has to move for it.`;
  return notchAdvice(remedy, measuresIn(units).about).join(' ');
}
