/** One of a few, side by side: a group of radio buttons that looks like a row of stamps. */

import { useId, type ReactElement } from 'react';

export interface ChoiceProps<T extends string> {
  readonly legend: string;
  readonly options: readonly {
    readonly value: T;
    readonly label: string;
    readonly title?: string;
  }[];
  readonly value: T;
  readonly onChange: (value: T) => void;
  readonly hideLegend?: boolean;
  /** The chosen one was pressed again. */
  readonly onAgain?: () => void;
}

export function Choice<T extends string>(props: ChoiceProps<T>): ReactElement {
  const { legend, options, value, onChange, hideLegend = false, onAgain } = props;
  const name = useId();
  return (
    <fieldset className="choice">
      <legend className={hideLegend ? 'for-readers' : undefined}>{legend}</legend>
      {options.map((option) => (
        <label key={option.value} title={option.title}>
          <input
            type="radio"
            name={name}
            value={option.value}
            checked={option.value === value}
            onChange={() => onChange(option.value)}
            onClick={() => {
              if (option.value === value) onAgain?.();
            }}
          />
          <span>{option.label}</span>
        </label>
      ))}
    </fieldset>
  );
}
