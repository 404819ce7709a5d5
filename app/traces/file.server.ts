import { readFileSync } from 'node:fs';
import { files } from '~/app/files.server';
import { takeText, type UploadedFile } from '~/app/imports/upload.server';
import { decodeText } from '~/lib/case/imports/csv';
import type { TracedShape } from '~/lib/case/trace';
import { refuse, type Result } from '~/lib/readings/result';
import { parseOutlineFile, type OutlineChoice, type OutlineFile } from '~/lib/tracing/outline-file';

/** Takes the chosen file into the store once points can be read from it. */
export const takeOutlineFile = (request: Request, shape: TracedShape): Promise<Result<UploadedFile>> =>
  takeText(request, {
    missing: 'Choose the file with the points first.',
    tooLarge: 'An outline is some thousand points; choose the file of one outline.',
    empty: 'Choose the file with the points itself.',
    check: (text) => parseOutlineFile(text, { shape }),
  });

/** The points of a stored file, with what was guessed about them. */
export function storedOutlineFile(sha256: string, shape: TracedShape): Result<OutlineFile> {
  if (!files().has(sha256)) return refuse('The file is no longer in the data folder. Choose it again.');
  const text = decodeText(readFileSync(files().pathOf(sha256)));
  return text.ok ? parseOutlineFile(text.value, { shape }) : text;
}

const SAMPLES = 4;

/** What the checking step shows of a file. */
export type FileView = {
  readonly columns: readonly { readonly label: string; readonly samples: string }[];
  readonly guesses: readonly string[];
  readonly skipped: readonly string[];
  readonly rows: number;
  readonly choice: OutlineChoice;
};

const MOST_SKIPPED = 5;

export function fileView(file: OutlineFile, choice: OutlineChoice): FileView {
  const samples = file.rows.slice(0, SAMPLES);
  const unreadable = file.skippedLines.filter(({ kind }) => kind === 'unreadable');
  return {
    columns: Array.from({ length: file.columnCount }, (_, column) => ({
      label: `Column ${column + 1}${file.headings[column] ? `, “${file.headings[column]}”` : ''}`,
      samples: samples.map(({ numbers }) => numbers[column] ?? '–').join(' · '),
    })),
    guesses: file.guesses,
    skipped: [
      ...unreadable
        .slice(0, MOST_SKIPPED)
        .map(({ line, text, message }) => `Line ${line}, “${text}”: ${message}`),
      ...(unreadable.length > MOST_SKIPPED ? [`and ${unreadable.length - MOST_SKIPPED} more lines`] : []),
    ],
    rows: file.rows.length,
    choice,
  };
}
