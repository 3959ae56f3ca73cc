/**
 * What the page may load and run, the same in the desktop program and in the browser edition.
 * Everything comes from the program's own origin; pictures may also be made in the page itself
 * (charts and textures drawn to a canvas become `data:` or `blob:` addresses).
 */
const DIRECTIVES: readonly (readonly [name: string, sources: string])[] = [
  ['default-src', "'self'"],
  ['script-src', "'self'"],
  ['style-src', "'self'"],
  ['img-src', "'self' data: blob:"],
  ['font-src', "'self'"],
  ['connect-src', "'self'"],
  ['worker-src', "'self'"],
  ['object-src', "'none'"],
  ['frame-src', "'none'"],
  ['base-uri', "'none'"],
  ['form-action', "'none'"],
  ['frame-ancestors', "'none'"],
];

export const CONTENT_SECURITY_POLICY = DIRECTIVES.map((directive) => directive.join(' ')).join(
  '; ',
);

/**
 * The looser policy of the development server alone: hot reload injects inline scripts and styles
 * and keeps a socket open. Never used for the built program.
 */
export function developmentPolicy(origin: string): string {
  const socket = origin.replace(/^http/, 'ws');
  return [
    "default-src 'self'",
    "script-src 'self' 'unsafe-inline'",
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    `connect-src 'self' ${socket}`,
    "worker-src 'self' blob:",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');
}
