/** Degrees and radians. */

export const degrees = (radians: number): number => (radians * 180) / Math.PI;
export const radians = (angleDeg: number): number => (angleDeg * Math.PI) / 180;
