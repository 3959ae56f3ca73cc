/** The frame of all evidence: a named figure, its caption, and at the right of it what is read there. */

import type { ReactElement, ReactNode } from 'react';
import styles from './Figure.module.css';

export interface FigureProps {
  /** Its name for a screen reader, and in the index of the page. */
  readonly title: string;
  readonly caption: ReactNode;
  /** At the right of the caption: what is pointed at, or the whole in a few words. */
  readonly readout?: ReactNode;
  /** The readout follows the hand, so that a screen reader says it. */
  readonly live?: boolean;
  /** What the marks mean, at the right of the caption. */
  readonly legend?: ReactNode;
  readonly className?: string | undefined;
  readonly children: ReactNode;
}

export function Figure(props: FigureProps): ReactElement {
  const { title, caption, readout, live = false, legend, className, children } = props;
  return (
    <figure
      className={className === undefined ? styles.figure : `${styles.figure} ${className}`}
      aria-label={title}
    >
      <figcaption>
        {caption}
        {legend === undefined ? null : (
          <span className={styles.legend} data-part="legend">
            {legend}
          </span>
        )}
        {readout === undefined ? null : (
          <span
            className={styles.readout}
            data-part="readout"
            aria-live={live ? 'polite' : undefined}
          >
            {readout}
          </span>
        )}
      </figcaption>
      {children}
    </figure>
  );
}

/** One entry of the legend: the mark, and what it stands for. */
export function LegendEntry(props: {
  /** Class of its swatch. */
  readonly mark: string;
  readonly className?: string;
  readonly children: ReactNode;
}): ReactElement {
  return (
    <span className={props.className}>
      <i className={`swatch ${props.mark}`} />
      {props.children}
    </span>
  );
}
