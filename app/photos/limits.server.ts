import { MAX_PHOTO_BYTES } from '~/db/photo-intake';

export const LARGEST_BYTES = MAX_PHOTO_BYTES;

/** How many files one form may carry: a day's walk with a camera, and an end to a mistake. */
export const MOST_FILES = 200;
