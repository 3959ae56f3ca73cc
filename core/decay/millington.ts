import type { FacesInput } from './face-absorption';
import { absorptionExponent, decayTimeS } from './reverberation';

/**
 * Millington-Sette: surface term -sum S_i ln(1 - alpha_i), each coefficient cut at 0.99 because a
 * single open window would otherwise end every decay at once.
 * Source: G. Millington, JASA 4 (1932) 69; W. J. Sette, JASA 4 (1933) 193. Valid where no single
 * coefficient is high; it understates the time of a room with some strongly absorbing faces.
 */
export function millingtonS(input: FacesInput): number {
  const walls = input.faces.reduce(
    (sum, face) => sum + face.areaM2 * absorptionExponent(face.coefficient),
    0,
  );
  return decayTimeS(input, walls);
}
