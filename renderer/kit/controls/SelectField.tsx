/** One of many, by name; groups are optional. */

import { useId, type ReactElement } from 'react';

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
  /** Where the present choice comes from; shown on hover. */
  readonly title?: string | undefined;
}

export function SelectField(props: SelectFieldProps): ReactElement {
  const { label, value, groups, onChange, title } = props;
  const id = useId();
  return (
    <div className="select" title={title}>
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChange(event.currentTarget.value)}>
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
