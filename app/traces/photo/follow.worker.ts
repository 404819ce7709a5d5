import { followLine } from '~/lib/tracing/follow-line';
import { prepareImage, type PreparedImage } from '~/lib/tracing/prepare-image';
import type { FollowerAnswer, FollowerQuestion } from './follower';

/**
 * Follows pencil lines away from the page's own thread, so that it stays quick: told the address of
 * a picture it fetches and prepares it once, then answers each pair of points.
 */
const answer = (said: FollowerAnswer): void => postMessage(said);

let image: PreparedImage | null = null;

/** Luma of ITU-R BT.601, which JPEG itself uses. */
const LUMA = [0.299, 0.587, 0.114] as const;

async function open(url: string): Promise<void> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`The picture could not be fetched (${response.status}).`);
  const bitmap = await createImageBitmap(await response.blob());
  const { width, height } = bitmap;
  const context = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('This browser cannot read the picture.');
  context.drawImage(bitmap, 0, 0);
  const { data } = context.getImageData(0, 0, width, height);
  const grey = new Uint8ClampedArray(width * height);
  for (let i = 0; i < grey.length; i += 1)
    grey[i] =
      LUMA[0] * (data[4 * i] ?? 0) + LUMA[1] * (data[4 * i + 1] ?? 0) + LUMA[2] * (data[4 * i + 2] ?? 0);
  image = prepareImage(grey, width, height);
  answer({ type: 'ready' });
}

addEventListener('message', ({ data }: MessageEvent<FollowerQuestion>) => {
  if (data.type === 'open') {
    open(data.url).catch((error: unknown) =>
      answer({ type: 'failed', why: error instanceof Error ? error.message : String(error) }),
    );
  } else if (image !== null) {
    answer({ type: 'line', id: data.id, line: followLine(image, data.from, data.to) });
  }
});
