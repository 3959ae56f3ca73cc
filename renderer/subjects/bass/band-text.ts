/** `20 to 120 Hz`. */
export const bandText = ([lowHz, highHz]: readonly [number, number]): string =>
  `${lowHz.toFixed(0)} to ${highHz.toFixed(0)} Hz`;
