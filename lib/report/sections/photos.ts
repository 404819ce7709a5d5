import { nameOf } from '../../case/name-of';
import type { Photo } from '../../case/record';
import { absentMany } from '../pieces/absent';
import type { Report, Section } from '../report';
import { INK } from '../type/inks';
import { breakLines, faint, mono, type Inline, type Line, type Run } from '../type/inline';
import { localTime, nameOfPerson } from '../words';
import type { Writer } from '../writer';

const PER_PAGE = 2;
const SIZE = 8;
const LEAD = SIZE * 1.35;
const GAP = 16;
/** Photos set between two pauses in which what was written is handed on. */
const BREATH = 4;

const position = ({ latitude, longitude }: Photo): string =>
  latitude === null || longitude === null
    ? 'position was not recorded'
    : `${Math.abs(latitude).toFixed(5)}° ${latitude < 0 ? 'S' : 'N'}, ${Math.abs(longitude).toFixed(5)}° ${longitude < 0 ? 'W' : 'E'}`;

function words(photo: Photo, report: Report): Inline {
  const { record, refs } = report;
  const taker = nameOfPerson(record, photo.personId);
  const shows: Run[] = photo.subject === null ? [] : [{ text: `  Shows: ${nameOf(record, photo.subject)}.` }];
  return [
    { text: `${refs.ofPhoto(photo.id) ?? ''}  `, face: 'bold', ink: 'accent' },
    { text: photo.caption.trim() || 'No caption was recorded.', face: 'bold' },
    ...shows,
    {
      text: `\n${photo.takenAt === null ? 'Time was not recorded' : localTime(photo.takenAt)} · ${position(photo)} · ${
        taker === null ? 'taker was not recorded' : `by ${taker}`
      } · ${photo.fileName}`,
      ink: 'faint',
    },
    faint('\nSHA-256 '),
    mono(photo.sha256),
  ];
}

/** Size of a picture within a box, never enlarged beyond 150 dots to the inch of paper. */
function fitted(photo: Photo, width: number, height: number): readonly [number, number] {
  const scale = Math.min(width / photo.width, height / photo.height);
  return [photo.width * scale, photo.height * scale];
}

function place(photo: Photo, report: Report, writer: Writer, slot: number): void {
  const lines: readonly Line[] = breakLines(
    words(photo, report),
    writer.width(),
    { size: SIZE },
    writer.measure,
  );
  const below = lines.length * LEAD + 5;
  const path = report.input.photoFile(photo.sha256);
  const [width, height] = fitted(photo, writer.width(), slot - below);
  writer.block(height + below, 'Figure', photo.caption || photo.fileName, (box) => {
    const x = box.x + (box.width - width) / 2;
    if (path === null) writer.missing({ x, y: box.y, width, height }, 'The picture file is missing.');
    else writer.picture(path, { x, y: box.y, width, height });
    writer.frame({ x, y: box.y, width, height }, INK.rule);
    writer.lines(lines, box.x, box.y + height + 5, { size: SIZE, lead: LEAD });
  });
}

export const photosSection: Section = {
  id: 'photos',
  title: 'Photos',
  kind: 'numbered',
  startsPage: true,
  async build(report, writer) {
    const photos = report.record.photos.filter(({ removed }) => removed === null);
    if (photos.length === 0) return absentMany(writer, 'Photos');
    writer.text(
      'Each is a reduced picture of the original file; the SHA-256 is of the original, kept unchanged with the case. Times are those of the camera’s clock.',
      { after: 8 },
    );
    let onPage = 0;
    for (const [i, photo] of photos.entries()) {
      if (onPage === PER_PAGE) {
        writer.newPage();
        onPage = 0;
      }
      const left = PER_PAGE - onPage;
      place(photo, report, writer, (writer.room() - (left - 1) * GAP) / left);
      writer.space(GAP);
      onPage += 1;
      if ((i + 1) % BREATH === 0) await writer.breathe();
    }
  },
};
