const PLAIN = /[^A-Za-z0-9._ -]+/g;

/** What encodeURIComponent leaves and RFC 5987, 3.2.1 does not allow. */
const strictly = (text: string): string =>
  encodeURIComponent(text).replace(/['()*]/g, (c) => `%${c.charCodeAt(0).toString(16).toUpperCase()}`);

/**
 * Content-Disposition of a file shown in the browser: a name that is safe for every reader, and the
 * name as it came for those that understand it (RFC 6266, 4.3).
 */
export function inlineAs(fileName: string): string {
  const base = (fileName.split(/[/\\]/).pop() ?? '').replace(/\p{Surrogate}/gu, '_').trim();
  const plain = base.replace(PLAIN, '_').replace(/^[. ]+/, '') || 'photo';
  return `inline; filename="${plain}"; filename*=UTF-8''${strictly(base || plain)}`;
}
