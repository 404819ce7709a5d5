import { ok, refuse, type Result } from '~/lib/readings/result';
import { sizeText } from './size-text';

/** All of a file that is no larger than `mostBytes`. A larger one is read to its end and not kept. */
export async function readPhotoFile(
  fileName: string,
  stream: AsyncIterable<Uint8Array>,
  mostBytes: number,
): Promise<Result<Buffer>> {
  let chunks: Uint8Array[] = [];
  let bytes = 0;
  for await (const chunk of stream) {
    bytes += chunk.byteLength;
    if (bytes <= mostBytes) chunks.push(chunk);
    else chunks = [];
  }
  if (bytes > mostBytes) {
    return refuse(
      // Rounded up, so that a little too much never reads as the most there may be.
      `“${fileName}” has ${sizeText(Math.ceil(bytes / 1e5) * 1e5)}; the most that is taken of one photo is ${sizeText(mostBytes)}. ` +
        'Save it at a lower size and choose it again.',
    );
  }
  if (bytes === 0) return refuse(`“${fileName}” is empty. Choose the picture itself.`);
  return ok(Buffer.concat(chunks));
}
