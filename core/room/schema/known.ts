/** From what a schema reads to what the program holds. */

/**
 * The fields that the program knows, deeply read-only. Fields that it does not know are in the data, but
 * no code may read them.
 */
export type Known<T> = T extends readonly unknown[]
  ? { readonly [K in keyof T]: Known<T[K]> }
  : T extends object
    ? { readonly [K in keyof T as string extends K ? never : K]: Known<T[K]> }
    : T;

/** `T` with `K` surely there. */
export type With<T, K extends keyof T> = Omit<T, K> & Required<Pick<T, K>>;
