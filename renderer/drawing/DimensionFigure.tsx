/** The figure on a dimension line of the room. */

import type { ReactElement } from 'react';
import { SIZE_LIMITS_M } from '../../core/room/limits';
import type { Side } from '../../core/room/project';
import { useProject, useSession } from '../state/session';
import { TypedFigure } from './TypedFigure';

export const SIDE_NAMES: Readonly<Record<Side, string>> = {
  width: 'Width',
  length: 'Length',
  height: 'Height',
};

export function DimensionFigure({
  side,
  marked,
}: {
  readonly side: Side;
  readonly marked: boolean;
}): ReactElement {
  const { size } = useProject().room;
  const change = useSession((session) => session.change);
  const [lowM, highM] = SIZE_LIMITS_M[side];
  return (
    <TypedFigure
      className={marked ? 'dimension-figure marked' : 'dimension-figure'}
      label={SIDE_NAMES[side]}
      valueM={size[side]}
      lowM={lowM}
      highM={highM}
      kind="room"
      onChange={(value, gesture) =>
        change({ kind: 'size', size: { ...size, [side]: value } }, gesture)
      }
    />
  );
}
