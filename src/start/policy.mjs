// @ts-check
/**
 * The page's content-security policy, once: the build writes it into index.html, the loopback server and the
 * Electron window send it with every file (a worker takes its policy from its own file's answer).
 * The one hash is the style element that react-aria adds for its pressable parts.
 */
export const contentSecurityPolicy = [
  "default-src 'self'",
  "script-src 'self'",
  "style-src 'self' 'sha256-38RhXrc7EdReTKsOm23ZPOCUgniTUUcjky8QOOrQx6o='",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");
