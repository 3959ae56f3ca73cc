/** Hatching at 45 degrees: what is told apart by pattern, never by colour alone. */

import { useId, type ReactElement } from 'react';
import styles from './chart.module.css';

export type HatchInk = 'faint' | 'accent' | 'ink';

/** Between the lines of each, px. */
const SPACING_PX: Readonly<Record<HatchInk, number>> = { faint: 6, accent: 7, ink: 5 };

export interface HatchUse {
  /** For `<Hatch>`. */
  readonly id: string;
  /** For the `fill` of what is hatched. */
  readonly fill: string;
}

/** A name for one hatch of one chart, which no other chart on the page has. */
export function useHatch(): HatchUse {
  const id = useId();
  return { id, fill: `url(#${id})` };
}

/** Stands once in the picture; what is filled with it refers to its id. */
export function Hatch({ id, ink }: { readonly id: string; readonly ink: HatchInk }): ReactElement {
  const size = SPACING_PX[ink];
  const [before, after] = [size - 1, size + 1];
  return (
    <defs>
      <pattern id={id} width={size} height={size} patternUnits="userSpaceOnUse">
        <path
          className={styles[`hatch-${ink}`]}
          d={`M-1,${after} L${after},-1 M-1,1 L1,-1 M${before},${after} L${after},${before}`}
        />
      </pattern>
    </defs>
  );
}
