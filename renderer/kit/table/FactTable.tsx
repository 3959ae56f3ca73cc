/**
 * A table of evidence: a row a thing, its name first. A row can be chosen (a press on it, or its name,
 * which is a button then), unfold what is to be said of it, and preview itself in the drawing.
 */

import { useEffect, useRef, type ReactElement, type ReactNode, type TdHTMLAttributes } from 'react';
import { scrollable } from '../controls/scrollable';
import { previewRow, type Preview } from '../../state/preview';
import { Figure, type FigureProps } from '../Figure';
import styles from './FactTable.module.css';

export interface Column<Row> {
  readonly key: string;
  /** Left out in all columns of a table without a head. */
  readonly head?: ReactNode;
  readonly headClass?: string | undefined;
  readonly cell: (row: Row) => ReactNode;
  readonly cellClass?: (row: Row) => string | undefined;
  /** Pointing at a cell of this column or at its head: true when it begins. */
  readonly onPoint?: (begins: boolean) => void;
}

export interface FactTableProps<Row> extends Omit<FigureProps, 'children'> {
  /** Name of the box that scrolls, for a screen reader. */
  readonly scrolls: string;
  readonly tableClass?: string;
  /** The first one names the row. */
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly keyOf: (row: Row) => string;
  readonly rowClass?: (row: Row) => string | undefined;
  readonly chosen?: string | null;
  /** The name of a row is a button then. */
  readonly onChoose?: (row: Row) => void;
  /** A press anywhere on the row chooses it too. */
  readonly pressRow?: boolean;
  /** What is unfolded under the chosen row. */
  readonly more?: (row: Row) => ReactNode;
  readonly onPointRow?: (row: Row | null) => void;
  /** What a row shows in the drawing while the focus is in it. */
  readonly preview?: (row: Row) => Preview | null;
  /** Rows of another kind before and after: whole `tr` elements. */
  readonly firstRows?: ReactNode;
  readonly lastRows?: ReactNode;
  /** Over the table. */
  readonly note?: ReactNode;
  /** In place of the table where there are no rows and none of another kind. */
  readonly empty?: ReactNode;
}

export function FactTable<Row>(props: FactTableProps<Row>): ReactElement {
  const { title, caption, readout, live, legend, className } = props;
  const { scrolls, tableClass, columns, rows, keyOf, firstRows, lastRows, note, empty } = props;
  const headed = columns.some(({ head }) => head !== undefined);
  return (
    <Figure
      title={title}
      caption={caption}
      readout={readout}
      live={live ?? false}
      legend={legend}
      className={className}
    >
      <div className={styles.box} data-part="table" {...scrollable(scrolls)}>
        {note}
        {rows.length === 0 && empty !== undefined ? (
          empty
        ) : (
          <table className={tableClass}>
            {headed ? (
              <thead>
                <tr>
                  {columns.map(({ key, head, headClass, onPoint }) => (
                    <th key={key} scope="col" className={headClass} {...pointing(onPoint)}>
                      {head}
                    </th>
                  ))}
                </tr>
              </thead>
            ) : null}
            <tbody>
              {firstRows}
              {rows.map((row) => (
                <FactRow key={keyOf(row)} row={row} table={props} />
              ))}
              {lastRows}
            </tbody>
          </table>
        )}
      </div>
    </Figure>
  );
}

function FactRow<Row>(props: {
  readonly row: Row;
  readonly table: FactTableProps<Row>;
}): ReactElement {
  const { row, table } = props;
  const { columns, keyOf, rowClass, pressRow = false, onChoose, onPointRow, preview } = table;
  const key = keyOf(row);
  const chosen = table.chosen === key;
  const more = chosen ? table.more?.(row) : undefined;
  const unfolded = useRef<HTMLTableRowElement>(null);
  useEffect(() => {
    // Newer browsers answer scrolling with a promise, which nobody waits for.
    if (chosen) void unfolded.current?.scrollIntoView({ block: 'nearest' });
  }, [chosen]);
  const shown = preview?.(row) ?? null;
  const classes = [chosen ? 'chosen' : '', rowClass?.(row) ?? ''].filter((name) => name !== '');
  return (
    <>
      <tr
        className={classes.length === 0 ? undefined : classes.join(' ')}
        onClick={onChoose && pressRow ? () => onChoose(row) : undefined}
        onPointerEnter={onPointRow && (() => onPointRow(row))}
        onPointerLeave={onPointRow && (() => onPointRow(null))}
        {...(shown ? previewRow(key, shown) : {})}
      >
        {columns.map(({ key: column, cell, cellClass, onPoint }, n) =>
          n === 0 ? (
            <th key={column} scope="row" className={cellClass?.(row)}>
              {onChoose ? (
                <button
                  type="button"
                  {...(table.more ? { 'aria-expanded': chosen } : { 'aria-pressed': chosen })}
                  onClick={(event) => {
                    event.stopPropagation();
                    onChoose(row);
                  }}
                >
                  {cell(row)}
                </button>
              ) : (
                cell(row)
              )}
            </th>
          ) : (
            <td key={column} className={cellClass?.(row)} {...pointing(onPoint)}>
              {cell(row)}
            </td>
          ),
        )}
      </tr>
      {more === undefined ? null : (
        <tr className="chosen more" ref={unfolded}>
          <td colSpan={columns.length}>{more}</td>
        </tr>
      )}
    </>
  );
}

const pointing = (
  onPoint: ((begins: boolean) => void) | undefined,
): Pick<TdHTMLAttributes<HTMLTableCellElement>, 'onPointerEnter' | 'onPointerLeave'> =>
  onPoint ? { onPointerEnter: () => onPoint(true), onPointerLeave: () => onPoint(false) } : {};
