/**
 * Inputs above, findings below, and a divider between them. Until it is dragged the inputs are as tall
 * as their fields need, and the findings keep room for a few lines.
 */

import {
  useRef,
  useState,
  type CSSProperties,
  type KeyboardEvent,
  type PointerEvent,
  type ReactElement,
  type ReactNode,
} from 'react';
import { INPUTS_SHARE, keepInputsShare, readInputsShare, withinShare } from '../state/kept-divider';

const KEY_STEP = 0.04;

export function Margin(props: {
  readonly inputs: ReactNode;
  readonly findings: ReactNode;
}): ReactElement {
  const margin = useRef<HTMLElement>(null);
  const [share, setShare] = useState(readInputsShare);
  const [held, setHeld] = useState(false);
  const put = (next: number | null): void => {
    const within = next === null ? null : withinShare(next);
    setShare(within);
    keepInputsShare(within);
  };
  /** Share at which the divider stands, also where nobody has moved it. */
  const shareNow = (): number => {
    const box = margin.current?.getBoundingClientRect();
    const inputs = margin.current?.firstElementChild?.getBoundingClientRect();
    return share ?? (box && inputs ? inputs.height / box.height : 0.5);
  };
  const follow = (event: PointerEvent): void => {
    const box = margin.current?.getBoundingClientRect();
    if (held && box) put((event.clientY - box.top) / box.height);
  };
  const press = (event: KeyboardEvent): void => {
    const next: Readonly<Record<string, number | null>> = {
      ArrowUp: shareNow() - KEY_STEP,
      ArrowDown: shareNow() + KEY_STEP,
      Home: INPUTS_SHARE.least,
      End: INPUTS_SHARE.most,
      Enter: null,
    };
    if (!(event.key in next)) return;
    event.preventDefault();
    put(next[event.key] ?? null);
  };
  const rows =
    share === null
      ? undefined
      : ({ '--inputs-row': `minmax(0, ${(share * 100).toFixed(2)}%)` } as CSSProperties);
  return (
    <aside ref={margin} className="margin" style={rows}>
      {props.inputs}
      <div
        className={held ? 'divider held' : 'divider'}
        role="separator"
        aria-orientation="horizontal"
        aria-label="Divider between inputs and findings. Arrow keys move it, Enter fits it to the inputs."
        aria-valuemin={INPUTS_SHARE.least * 100}
        aria-valuemax={INPUTS_SHARE.most * 100}
        aria-valuenow={Math.round((share ?? 0.5) * 100)}
        aria-valuetext={
          share === null ? 'as the inputs need' : `${Math.round(share * 100)} percent`
        }
        tabIndex={0}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          setHeld(true);
        }}
        onPointerMove={follow}
        onPointerUp={() => setHeld(false)}
        onPointerCancel={() => setHeld(false)}
        onDoubleClick={() => put(null)}
        onKeyDown={press}
      />
      {props.findings}
    </aside>
  );
}
