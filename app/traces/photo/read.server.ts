import exifr from 'exifr';
import sharp from 'sharp';
import { z } from 'zod';
import type { LoadedCase } from '~/app/case.server';
import { files } from '~/app/files.server';
import { systemOf } from '~/app/readings/take.server';
import { renditionPath } from '~/db/photo-intake';
import type { Photo } from '~/lib/case/record';
import { refuse } from '~/lib/readings/result';
import { isScaleWay } from './scale';
import { tracedPhoto } from './traced';

/** The picture that is traced on: the photo upright and no larger than needed. */
export async function workingPicture(photo: Photo) {
  const path = await renditionPath(files(), photo.sha256, 'trace');
  const { width, height } = await sharp(path).metadata();
  return { width, height };
}

const FOCAL_MM = z.number().min(5).max(2000);

/** Focal length as of 35-mm film that the file of the photo names; null when it names none. */
export async function focal35Of(photo: Photo): Promise<number | null> {
  try {
    const tags: unknown = await exifr.parse(files().pathOf(photo.sha256), ['FocalLengthIn35mmFormat']);
    const said = z.object({ FocalLengthIn35mmFormat: FOCAL_MM }).safeParse(tags);
    return said.success ? said.data.FocalLengthIn35mmFormat : null;
  } catch {
    return null;
  }
}

const MOST_POINTS = 40_000;
const point = z.tuple([z.number(), z.number()]);
const drawingSchema = z.object({
  size: point,
  marks: z.array(point).max(4),
  clicks: z.array(point).max(500),
  path: z.array(point).max(MOST_POINTS),
  straight: z.array(z.int().min(0)).max(500),
  widthPx: z.number().positive().nullable(),
});

const DISTANCE_LENGTH = 40;

function parsed(form: FormData) {
  try {
    return drawingSchema.safeParse(JSON.parse(String(form.get('drawing') ?? '')));
  } catch {
    return null;
  }
}

/** Reads the form of the tracing screen: the outline with its uncertainty, or what is still to be set. */
export async function readTracing(
  form: FormData,
  { record }: LoadedCase,
  photo: Photo,
): Promise<ReturnType<typeof tracedPhoto>> {
  const way = form.get('way');
  const drawing = parsed(form);
  if (!drawing?.success || !isScaleWay(way)) {
    return refuse(
      'The line was not sent with the form. Tracing needs scripts: allow them and trace it again, or type pin offsets.',
    );
  }
  const { width, height } = await workingPicture(photo);
  const { size } = drawing.data;
  if (size[0] !== width || size[1] !== height) {
    return refuse('The picture has changed since. Load the page again and trace it once more.');
  }
  const distance = (index: number): string =>
    String(form.get(`distance${index}`) ?? '').slice(0, DISTANCE_LENGTH);
  return tracedPhoto({
    ...drawing.data,
    way,
    distances: [distance(0), distance(1)],
    system: systemOf(record.fields),
    focal35Mm: await focal35Of(photo),
  });
}
