/** The system's code of an error (`ENOENT`, `EACCES`, ...), or null for any other thrown value. */
export function errorCode(error: unknown): string | null {
  if (!(error instanceof Error) || !('code' in error)) return null;
  return typeof error.code === 'string' ? error.code : null;
}
