/** A local time of the site, "2026-03-14T09:30", as it is shown: "2026-03-14 09:30". */
export const localTime = (text: string): string => text.slice(0, 16).replace('T', ' ');

/** A moment of the log (UTC), as it is shown. */
export const moment = (text: string): string => `${text.slice(0, 19).replace('T', ' ')} UTC`;

const LOCAL_TIME = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2})?$/;

/** True for a date and time as a form sends them, without zone, of a day that there is. */
export const isLocalTime = (text: string): boolean => {
  if (!LOCAL_TIME.test(text)) return false;
  const read = new Date(`${text}Z`);
  // 30 February is read as a day of March.
  return !Number.isNaN(read.getTime()) && read.toISOString().startsWith(text.slice(0, 16));
};
