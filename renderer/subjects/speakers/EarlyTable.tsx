/** First reflections face by face, and for the chosen one what brings it under the limit. */

import { useEffect, useRef, type ReactElement, type ReactNode } from 'react';
import { bandName } from '../../../core/quantity/bands';
import { faceName } from '../../../core/room/faces';
import type { SeatReflection } from '../../../core/reflections/early-at-seat';
import { EARLY_LIMIT, EARLY_LIMIT_SOURCE } from '../../../core/reflections/early-limit';
import { levelText } from './early-reflections';
import { FaceMark } from './FaceMark';
import { scrollable } from '../../kit/controls/scrollable';

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
    <figure className="chart face-table" aria-label="First reflections by face">
      <figcaption>
        <span title={EARLY_LIMIT_SOURCE}>Face by face</span>
        <span className="readout">{of}</span>
        {seat}
      </figcaption>
      <div className="table-box" {...scrollable('Early reflections')}>
        <table>
          <thead>
            <tr>
              <th scope="col">face</th>
              <th scope="col" title="Later than the direct sound">
                delay
              </th>
              <th
                scope="col"
                title="Of its loudest octave from 1 to 8 kHz, against the direct sound"
              >
                level
              </th>
              <th scope="col" title="The octave in which it is loudest">
                at
              </th>
              <th
                scope="col"
                title={`Over ${levelText(EARLY_LIMIT.levelDb)} within ${EARLY_LIMIT.withinMs} ms`}
              >
                over by
              </th>
            </tr>
          </thead>
          <tbody>
            {reflections.map((reflection) => (
              <EarlyRows
                key={reflection.hit.face}
                reflection={reflection}
                chosen={reflection.hit.face === face}
                onChoose={() => onChoose(reflection.hit.face)}
                onPoint={onPoint}
                remedy={remedy}
              />
            ))}
            {leftOut > 0 ? (
              <tr className="left-out">
                <td colSpan={5}>
                  {leftOut} more {leftOut === 1 ? 'is' : 'are'} not judged: behind the box, the wall
                  it is set into, or a face without a figure.
                </td>
              </tr>
            ) : null}
          </tbody>
        </table>
      </div>
    </figure>
  );
}

function EarlyRows(props: {
  readonly reflection: SeatReflection;
  readonly chosen: boolean;
  readonly onChoose: () => void;
  readonly onPoint: (face: string | null) => void;
  readonly remedy: ReactNode;
}): ReactElement {
  const { reflection, chosen, onChoose, onPoint, remedy } = props;
  const { hit, path, levelDb, octaveHz, overDb } = reflection;
  const more = useRef<HTMLTableRowElement>(null);
  useEffect(() => {
    if (chosen) more.current?.scrollIntoView({ block: 'nearest' });
  }, [chosen]);
  return (
    <>
      <tr
        className={chosen ? 'chosen' : undefined}
        onClick={onChoose}
        onPointerEnter={() => onPoint(hit.face)}
        onPointerLeave={() => onPoint(null)}
      >
        <th scope="row">
          <button type="button" aria-expanded={chosen} onClick={onChoose}>
            <FaceMark kind={overDb > 0 ? 'over' : 'within'} /> {faceName(hit.face)}
          </button>
        </th>
        <td>{path.delayMs.toFixed(1)} ms</td>
        <td>{levelText(levelDb)}</td>
        <td>{bandName(octaveHz)}</td>
        <td className={overDb > 0 ? 'outside' : undefined}>{overText(reflection)}</td>
      </tr>
      {chosen ? (
        <tr className="chosen more" ref={more}>
          <td colSpan={5}>{remedy}</td>
        </tr>
      ) : null}
    </>
  );
}

function overText({ overDb, path }: SeatReflection): string {
  if (overDb > 0) return `${overDb.toFixed(1)} dB`;
  return path.delayMs > EARLY_LIMIT.withinMs ? 'later' : 'within';
}
