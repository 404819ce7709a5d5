const isBytes = (part: unknown): part is Uint8Array => part instanceof Uint8Array;

/**
 * Puts what is written on the present page so far into one piece of memory. pdfkit keeps every
 * stroke of a page apart until the page is closed, which here is at the very end, for the page
 * numbers; a hundred pages would be hundreds of thousands of small pieces to look after.
 */
export function gatherPage(doc: PDFKit.PDFDocument): void {
  const content: unknown = 'content' in doc.page ? doc.page.content : undefined;
  if (typeof content !== 'object' || content === null || !('buffer' in content)) return;
  const { buffer } = content;
  if (Array.isArray(buffer) && buffer.every(isBytes)) content.buffer = [Buffer.concat(buffer)];
}
