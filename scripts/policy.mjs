// What the pages may do: load and reach nothing but themselves. Sent as a header by our own server, and written into
// the page itself for whoever serves it otherwise.
const rules = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "worker-src 'self'",
  "connect-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
];

/** Only a header can say who may frame the page. */
export const policyFor = (where) =>
  [...rules, ...(where === 'header' ? ["frame-ancestors 'none'"] : [])].join('; ');
