/** One of many, by name; groups are optional. */

import { useId, type ReactElement } from 'react';
import { Source } from '../Note';

export interface SelectGroup {
  /** Heading of the group; empty for options that stand alone. */
  readonly heading: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
}

export interface SelectFieldProps {
  readonly label: string;
  readonly value: string;
  readonly groups: readonly SelectGroup[];
  readonly onChange: (value: string) => void;
  /** Where the figures of the present choice come from; the name of the field tells it then. */
  readonly source?: string | undefined;
}

export function SelectField(props: SelectFieldProps): ReactElement {
  const { label, value, groups, onChange, source } = props;
  const id = useId();
  return (
    <div className="select">
      {source === undefined ? (
        <label htmlFor={id}>{label}</label>
      ) : (
        <span className="select-name">
          <Source of={label}>{source}</Source>
        </span>
      )}
      <select
        id={id}
        aria-label={source === undefined ? undefined : label}
        value={value}
        onChange={(event) => onChange(event.currentTarget.value)}
      >
        {groups.map((group) => {
          const options = group.options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ));
          return group.heading === '' ? (
            options
          ) : (
            <optgroup key={group.heading} label={group.heading}>
              {options}
            </optgroup>
          );
        })}
      </select>
    </div>
  );
}
