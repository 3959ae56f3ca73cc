/** A place by tape measure: from the left wall, from the screen wall, above the floor. */

import type { ReactElement } from 'react';
import type { Point, ShellSize } from '../../../core/room/project';
import { LengthField } from './LengthField';
import type { Gesture } from '../../state/gesture';

export interface PlaceFieldsProps {
  /** Of whose place it is, for a screen reader. */
  readonly name: string;
  readonly position: Point;
  readonly size: ShellSize;
  /** To which point of it the places are measured, for example `the middle of the box`. */
  readonly measuredTo: string;
  readonly onChange: (position: Point, gesture: Gesture | null) => void;
}

const FIELDS = [
  ['from the left wall', 'width'],
  ['from the screen wall', 'length'],
  ['above the floor', 'height'],
] as const;

export function PlaceFields(props: PlaceFieldsProps): ReactElement {
  const { name, position, size, measuredTo, onChange } = props;
  return (
    <>
      <p className="hint">Measured to {measuredTo}.</p>
      {FIELDS.map(([label, side], axis) => (
        <LengthField
          key={side}
          label={`${name} ${label}`}
          shortLabel={label}
          valueM={position[axis] ?? 0}
          lowM={0}
          highM={size[side]}
          onChange={(value, gesture) => {
            const next: [number, number, number] = [...position];
            next[axis] = value;
            onChange(next, gesture);
          }}
        />
      ))}
    </>
  );
}
