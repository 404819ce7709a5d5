/** A path of this app to return to, or `fallback` when the text could lead anywhere else. */
export function localPath(text: unknown, fallback: string): string {
  if (typeof text !== 'string') return fallback;
  const plain = /^\/(?![/\\])[\x21-\x7e]*$/.test(text) && !text.includes('\\');
  return plain ? text : fallback;
}
