import { CONTENT_SECURITY_POLICY } from './content-security-policy';

/** Headers of every answer, whether by the own scheme or by the loopback server. */
export const BASE_HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': CONTENT_SECURITY_POLICY,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

/**
 * Headers for a served file. The page itself is never stored, so that a newer build is seen at
 * once; the rest may be kept but is asked for again.
 */
export function fileHeaders(contentType: string): Record<string, string> {
  return {
    ...BASE_HEADERS,
    'Content-Type': contentType,
    'Cache-Control': contentType.startsWith('text/html') ? 'no-store' : 'no-cache',
  };
}
