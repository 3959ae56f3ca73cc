/**
 * Power that a small source gives off beside up to three hard faces at right angles, against the free
 * field: the far-field view of boundary interference, without a seat. Waterhouse, J. Acoust. Soc. Am. 27
 * (1955) 247; Allison, J. Audio Eng. Soc. 22 (1974) 314 (formula from memory; its limits of 3, 6 and 9 dB
 * at low frequencies are those of 2, 4 and 8 sources in phase).
 */

/**
 * Level in dB re free field at `frequencyHz` of a source at `distancesM` from one, two or three hard
 * faces at right angles: 10 lg(1 + sum of j0(2 k d) over the images), j0(x) = sin(x) / x and d the
 * distance to a face, an edge or the corner.
 */
export function cornerPowerDb(
  distancesM: readonly number[],
  frequencyHz: number,
  speedMS: number,
): number {
  const wavenumberPerM = (2 * Math.PI * frequencyHz) / speedMS;
  const power = imageDistancesM(distancesM).reduce(
    (sum, distanceM) => sum + sinc(2 * wavenumberPerM * distanceM),
    1,
  );
  return 10 * Math.log10(Math.max(power, 1e-6));
}

/** Half the distance between the source and each of its images: 1, 3 or 7 of them. */
function imageDistancesM(distancesM: readonly number[]): readonly number[] {
  return distancesM.reduce<readonly number[]>(
    (images, d) => [...images, d, ...images.map((other) => Math.hypot(other, d))],
    [],
  );
}

const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(x) / x);
