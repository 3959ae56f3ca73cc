/** Holds an exception to the part of the window that it arose in; what stands there instead says so. */

import { Component, type ReactElement, type ReactNode } from 'react';
import { useProject } from '../../state/session';
import { errorText } from './error-text';

export interface PartBoundaryProps {
  /** The part as the person knows it, with its article and a capital: `The drawing`. */
  readonly part: string;
  /** A new value tries the part again: the room has changed, another subject was opened. */
  readonly retryOn?: unknown;
  /** What stands in place of the part, where it is not the usual sentence. */
  readonly instead?: (error: unknown, retry: () => void) => ReactNode;
  readonly children: ReactNode;
}

interface PartState {
  readonly broken: { readonly error: unknown } | null;
}

/** Errors that a part already stands for, so that they are not told a second time. */
export const heldErrors = new WeakSet<Error>();

export class PartBoundary extends Component<PartBoundaryProps, PartState> {
  override state: PartState = { broken: null };

  static getDerivedStateFromError(this: void, error: unknown): PartState {
    if (error instanceof Error) heldErrors.add(error);
    return { broken: { error } };
  }

  override componentDidUpdate(before: PartBoundaryProps): void {
    if (this.state.broken && before.retryOn !== this.props.retryOn) this.retry();
  }

  private readonly retry = (): void => this.setState({ broken: null });

  override render(): ReactNode {
    const { broken } = this.state;
    const { part, instead, children } = this.props;
    if (!broken) return children;
    if (instead) return instead(broken.error, this.retry);
    return <BrokenPart part={part} error={broken.error} onRetry={this.retry} />;
  }
}

/** A part that is tried again with every change of the room. */
export function RoomPart({
  part,
  children,
}: {
  readonly part: string;
  readonly children: ReactNode;
}): ReactElement {
  return (
    <PartBoundary part={part} retryOn={useProject()}>
      {children}
    </PartBoundary>
  );
}

function BrokenPart({
  part,
  error,
  onRetry,
}: {
  readonly part: string;
  readonly error: unknown;
  readonly onRetry: () => void;
}): ReactElement {
  return (
    <div className="broken-part" role="alert">
      <strong>{part} cannot be shown just now</strong>
      <p>
        An error in the program stopped it. All the rest works on, and your room is kept as it is:
        save it, undo the last change, or try again.
      </p>
      <p className="error-text">{errorText(error)}</p>
      <button type="button" onClick={onRetry}>
        Try again
      </button>
    </div>
  );
}
