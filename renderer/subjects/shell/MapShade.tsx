/** The shade of the map: ground where modes are even, ink where they are not. */

import { useEffect, useRef, type ReactElement } from 'react';
import type { ProportionMap } from '../../../core/proportions/map';
import { channels } from '../../drawing/paint-colors';
import { useSession } from '../../state/session';

/** From this unevenness on the shade is full, Hz. */
export const FULL_SHADE_HZ = 90;
/** How much of the ink full shade takes; the marks on the map stay readable. */
export const FULL_SHADE = 0.86;

interface MapShadeProps {
  readonly map: ProportionMap | null;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The shade: ground where modes are even, ink where they are not. */
export function MapShade({ map, left, top, width, height }: MapShadeProps): ReactElement {
  const canvas = useRef<HTMLCanvasElement>(null);
  const appearance = useSession((session) => session.appearance);
  useEffect(() => {
    const element = canvas.current;
    const context = element?.getContext('2d');
    if (!element || !context || !map) return;
    const style = getComputedStyle(document.documentElement);
    const from = channels(style.getPropertyValue('--raised'));
    const to = channels(style.getPropertyValue('--ink'));
    const image = context.createImageData(map.columns, map.rows);
    for (let row = 0; row < map.rows; row++) {
      for (let column = 0; column < map.columns; column++) {
        const value = map.values[row * map.columns + column] ?? 0;
        const share = FULL_SHADE * Math.min(1, value / FULL_SHADE_HZ);
        const pixel = 4 * ((map.rows - 1 - row) * map.columns + column);
        for (let c = 0; c < 3; c++) {
          image.data[pixel + c] = (from[c] ?? 0) + share * ((to[c] ?? 0) - (from[c] ?? 0));
        }
        image.data[pixel + 3] = 255;
      }
    }
    context.putImageData(image, 0, 0);
  }, [map, appearance]);
  return (
    <canvas
      ref={canvas}
      className="map-shade"
      width={map?.columns ?? 1}
      height={map?.rows ?? 1}
      style={{ left, top, width, height }}
      aria-hidden="true"
    />
  );
}
