/**
 * The chooser of a finish: a search field over a list, worked by arrow keys (combobox and listbox after
 * WAI-ARIA), and below it all that is known of the row that is looked at.
 */

import {
  useEffect,
  useId,
  useMemo,
  useRef,
  useState,
  type KeyboardEvent,
  type ReactElement,
} from 'react';
import { outsideNowS } from '../../core/decay/finish-effect';
import { bandMark } from '../../core/quantity/bands';
import { Choice } from '../kit/controls/Choice';
import { useAnalysis, useProject, useSession } from '../state/session';
import { FinishDetails } from './FinishDetails';
import { FinishOption, GLANCE_HZ } from './FinishOption';
import { finishList, type FinishOrder, type FinishSpot } from './finish-list';

export interface FinishDialogProps {
  readonly of: string;
  readonly value: string;
  readonly spot: FinishSpot;
  readonly onChoose: (id: string) => void;
  readonly onClose: () => void;
}

/** Rows that Page Up and Page Down move by. */
const PAGE = 6;

export function FinishDialog(props: FinishDialogProps): ReactElement {
  const { of, value, spot, onChoose, onClose } = props;
  const project = useProject();
  const analysis = useAnalysis();
  const units = useSession((session) => session.units);
  const [query, setQuery] = useState('');
  const [order, setOrder] = useState<FinishOrder>('help');
  const [activeId, setActive] = useState<string | null>(null);
  const dialog = useRef<HTMLDialogElement>(null);
  const search = useRef<HTMLInputElement>(null);
  const id = useId();
  const groups = useMemo(
    () => finishList({ project, analysis, spot, units, query, order }),
    [project, analysis, spot, units, query, order],
  );
  const rows = groups.flatMap((group) => group.rows);
  const at = Math.max(
    0,
    rows.findIndex((row) => row.finish.id === activeId),
  );
  const active = rows[at];
  const nowS = outsideNowS(analysis.decay);
  const optionId = (finishId: string): string => `${id}-${finishId}`;

  useEffect(() => {
    const element = dialog.current;
    if (element && !element.open) element.showModal();
    // The browser gives the focus to the first button; the search field is what one came for.
    search.current?.focus();
  }, []);
  const activeOption = active ? optionId(active.finish.id) : undefined;
  useEffect(() => {
    if (activeOption !== undefined)
      document.getElementById(activeOption)?.scrollIntoView({ block: 'nearest' });
  }, [activeOption, query, order]);

  /** Closed by itself, the dialog gives the focus back to the field that it was opened from. */
  const choose = (finishId: string): void => {
    dialog.current?.close();
    onChoose(finishId);
  };

  const moves: Readonly<Record<string, number>> = {
    ArrowDown: at + 1,
    ArrowUp: at - 1,
    PageDown: at + PAGE,
    PageUp: at - PAGE,
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const to = moves[event.key];
    if (to !== undefined) {
      event.preventDefault();
      setActive(rows[Math.min(rows.length - 1, Math.max(0, to))]?.finish.id ?? null);
    } else if (event.key === 'Enter' && active) {
      event.preventDefault();
      choose(active.finish.id);
    }
  };

  return (
    <dialog
      ref={dialog}
      className="finish-dialog"
      aria-label={`Finish of ${of}`}
      onClose={onClose}
      // Keys of the chooser are its own: none of them moves or deletes something in the drawing.
      onKeyDown={(event) => event.stopPropagation()}
      onClick={(event) => {
        if (event.target === dialog.current) dialog.current.close();
      }}
    >
      <div className="finish-page">
        <div className="finish-head">
          <h2>Finish of {of}</h2>
          <button type="button" onClick={() => dialog.current?.close()}>
            Close
          </button>
          <label className="finish-search">
            <span>Find</span>
            <input
              type="text"
              role="combobox"
              ref={search}
              autoComplete="off"
              spellCheck={false}
              placeholder="drywall, carpet, curtain, 2x4"
              aria-expanded="true"
              aria-autocomplete="list"
              aria-controls={`${id}-list`}
              aria-activedescendant={activeOption}
              value={query}
              onChange={(event) => {
                setQuery(event.currentTarget.value);
                setActive(null);
              }}
              onKeyDown={onKeyDown}
            />
          </label>
          <Choice
            legend="Order"
            hideLegend
            options={[
              { value: 'help', label: 'What helps first' },
              { value: 'name', label: 'By name' },
            ]}
            value={order}
            onChange={setOrder}
          />
        </div>
        <div id={`${id}-list`} className="finish-list" role="listbox" aria-label="Finishes">
          {groups.map((group, i) => (
            <div key={group.title} role="group" aria-labelledby={`${id}-group-${i}`}>
              <div className="finish-group" id={`${id}-group-${i}`} role="presentation">
                <b>
                  {group.title} <span>{group.rows.length}</span>
                </b>
                <span className="finish-bands" aria-hidden="true">
                  {GLANCE_HZ.map((hz) => (
                    <span key={hz}>{bandMark(hz)}</span>
                  ))}
                </span>
                <span aria-hidden="true">to the target</span>
              </div>
              {group.rows.map((row) => (
                <FinishOption
                  key={row.finish.id}
                  row={row}
                  id={optionId(row.finish.id)}
                  spot={spot}
                  nowS={nowS}
                  active={row === active}
                  present={row.finish.id === value}
                  onLook={() => setActive(row.finish.id)}
                  onChoose={() => choose(row.finish.id)}
                />
              ))}
            </div>
          ))}
        </div>
        {active ? (
          <FinishDetails row={active} onChoose={() => choose(active.finish.id)} />
        ) : (
          <p className="hint finish-details" role="status">
            No finish has all these words. Try one of them, or design your own under Own finishes.
          </p>
        )}
      </div>
    </dialog>
  );
}
