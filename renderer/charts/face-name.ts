/** A face as a builder calls it: `front`, or `soffit-1, underside`. */
export function faceName(face: string): string {
  const [solid, side] = face.split(':');
  if (side === undefined) return face;
  const names: Readonly<Record<string, string>> = { floor: 'underside', ceiling: 'top' };
  return `${solid ?? ''}, ${names[side] ?? side}`;
}
