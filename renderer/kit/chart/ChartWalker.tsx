/**
 * A chart by keyboard: lies over its picture, takes the focus and walks along its marks. It says each
 * mark in words; the picture itself shows where it stands.
 */

import type { KeyboardEvent, ReactElement } from 'react';
import styles from './chart.module.css';

export interface ChartWalkerProps {
  /** What is walked along, for a screen reader. */
  readonly label: string;
  /** Marks along the chart, from its left. */
  readonly count: number;
  /** Mark that the walk has come to; null before the first step. */
  readonly at: number | null;
  /** That mark in words. */
  readonly text: string;
  /** Marks that one press with Shift goes over. */
  readonly stride?: number;
  readonly onWalk: (at: number) => void;
  readonly onLeave: () => void;
  readonly onChoose: (at: number) => void;
}

export function ChartWalker(props: ChartWalkerProps): ReactElement | null {
  const { label, count, at, text, stride = 10, onWalk, onLeave, onChoose } = props;
  if (count === 0) return null;
  const last = count - 1;
  const walk = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const step = event.shiftKey ? stride : 1;
    const next: Readonly<Record<string, number>> = {
      ArrowRight: at === null ? 0 : at + step,
      ArrowUp: at === null ? 0 : at + step,
      ArrowLeft: at === null ? last : at - step,
      ArrowDown: at === null ? last : at - step,
      Home: 0,
      End: last,
    };
    const to = next[event.key];
    if (to !== undefined) onWalk(Math.max(0, Math.min(last, to)));
    else if ((event.key === 'Enter' || event.key === ' ') && at !== null) onChoose(at);
    else return;
    event.preventDefault();
  };
  return (
    <div
      className={styles.walker}
      role="slider"
      tabIndex={0}
      aria-label={`${label}: arrow keys walk, Enter chooses`}
      aria-valuemin={1}
      aria-valuemax={count}
      aria-valuenow={(at ?? 0) + 1}
      aria-valuetext={at === null ? 'nothing yet' : text}
      onKeyDown={walk}
      onBlur={onLeave}
    />
  );
}
