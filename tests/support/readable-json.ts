/** JSON that can be read and compared: short things on one line, figures to `DIGITS` significant digits. */

/** Far fewer than a computer has, so that another one writes the same. */
const DIGITS = 6;
const LINE = 110;

export const readableJson = (value: unknown): string => `${write(value, '')}\n`;

function write(value: unknown, indent: string): string {
  if (typeof value === 'number') return String(Number(value.toPrecision(DIGITS)));
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const isList = Array.isArray(value);
  const deeper = `${indent}  `;
  const parts = (at: string): readonly string[] =>
    isList
      ? value.map((one) => write(one, at))
      : Object.entries(value).map(([key, one]) => `${JSON.stringify(key)}: ${write(one, at)}`);
  const [open, close] = isList ? ['[', ']'] : ['{', '}'];
  const inner = parts(deeper);
  const flat = inner.length === 0 ? `${open}${close}` : `${open} ${inner.join(', ')} ${close}`;
  if (!flat.includes('\n') && indent.length + flat.length <= LINE) return flat;
  return `${open}\n${inner.map((part) => `${deeper}${part}`).join(',\n')}\n${indent}${close}`;
}
