/**
 * What the fields of a room file are made of. Every refusal is one sentence that names what was expected
 * and what the file says. Unknown fields pass and stay.
 */

import { z } from 'zod';
import { describe } from '../fault';
import { PLACE_LIMITS_M } from '../limits';

z.config({ jitless: true });

export const says = (expected: string) => ({
  error: (issue: { input?: unknown }) =>
    `must be ${expected}; the file says ${describe(issue.input)}.`,
});

export const number = (expected: string, low: number, high: number) => {
  const message = says(`${expected} from ${low} to ${high}`);
  return z.number(message).min(low, message).max(high, message);
};

export const whole = (expected: string, low: number, high: number) => {
  const message = says(`a whole number of ${expected} from ${low} to ${high}`);
  return z.number(message).int(message).min(low, message).max(high, message);
};

export const metres = (low: number, high: number) => number('a length in metres', low, high);

export const yesOrNo = () => z.boolean(says('true or false'));

export const text = (most: number) => {
  const message = says(`text of at most ${most} characters`);
  return z.string(message).max(most, message);
};

export const id = () => {
  const message = says('a name of 1 to 60 letters, digits, dots or dashes');
  return z.string(message).regex(/^[\w.+-]{1,60}$/, message);
};

export const choice = <const T extends readonly [string, ...string[]]>(options: T) =>
  z.enum(options, says(`one of ${options.join(', ')}`));

export const list = <T extends z.ZodType>(item: T, most: number) => {
  const message = says(`a list of at most ${most}`);
  return z.array(item, message).max(most, message);
};

export const group = <T extends z.ZodRawShape>(shape: T) =>
  z.looseObject(shape, says('a group of fields'));

export const coordinate = () => number('a place in metres', ...PLACE_LIMITS_M);

/** A place in the room, [x, y, z] in metres. */
export const point = () =>
  z.tuple([coordinate(), coordinate(), coordinate()], says('a place [x, y, z] in metres'));

export const range = (low: number, high: number) =>
  z
    .tuple([number('a number', low, high), number('a number', low, high)], says('[least, most]'))
    .refine(([least, most]) => least <= most, says('[least, most] in rising order'));
