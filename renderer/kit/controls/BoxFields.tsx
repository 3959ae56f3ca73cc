/** Width, height and depth of a cabinet; a usual one is assumed until somebody says. */

import type { ReactElement } from 'react';
import { BOX_SIDE_LIMITS_M } from '../../../core/room/limits';
import type { Point } from '../../../core/room/project';
import type { Gesture } from '../../state/gesture';
import { LengthField } from './LengthField';

const SIDES = ['width', 'height', 'depth'] as const;

export interface BoxFieldsProps {
  /** Whose box it is, before the name of the side. */
  readonly of: string;
  readonly boxM: Point;
  readonly onChange: (boxM: Point, gesture: Gesture | null) => void;
}

export function BoxFields({ of, boxM, onChange }: BoxFieldsProps): ReactElement {
  const [lowM, highM] = BOX_SIDE_LIMITS_M;
  return (
    <>
      {SIDES.map((side, n) => (
        <LengthField
          key={side}
          label={`${of} ${side}`}
          valueM={boxM[n] ?? 0}
          lowM={lowM}
          highM={highM}
          onChange={(valueM, gesture) => {
            const next: [number, number, number] = [...boxM];
            next[n] = valueM;
            onChange(next, gesture);
          }}
        />
      ))}
    </>
  );
}

export interface OwnBoxFieldsProps {
  /** As stated; undefined where nobody has said. */
  readonly boxM: Point | undefined;
  readonly usualM: Point;
  /** Null takes the usual one. */
  readonly onChange: (boxM: Point | null, gesture: Gesture | null) => void;
}

/** The same of a loudspeaker or subwoofer of the room, which may leave it open. */
export function OwnBoxFields({ boxM, usualM, onChange }: OwnBoxFieldsProps): ReactElement {
  return (
    <>
      <BoxFields of="box" boxM={boxM ?? usualM} onChange={onChange} />
      {boxM ? (
        <button type="button" className="plain" onClick={() => onChange(null, null)}>
          Take the usual box
        </button>
      ) : (
        <p className="hint">No size is stated: a usual cabinet is assumed.</p>
      )}
    </>
  );
}
