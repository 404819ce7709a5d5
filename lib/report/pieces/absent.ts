import type { Writer } from '../writer';
import { faint } from '../type/inline';

/** Says plainly that a part was not recorded, so that its absence is not read as "nothing was found". */
export const absent = (writer: Writer, what: string): void =>
  writer.text([faint(`${what} was not recorded.`)]);

export const absentMany = (writer: Writer, what: string): void =>
  writer.text([faint(`${what} were not recorded.`)]);
