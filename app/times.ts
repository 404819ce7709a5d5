/** A local time of the site, "2026-03-14T09:30", as it is shown: "2026-03-14 09:30". */
export const localTime = (text: string): string => text.slice(0, 16).replace('T', ' ');

/** A moment of the log (UTC), as it is shown. */
export const moment = (text: string): string => `${text.slice(0, 19).replace('T', ' ')} UTC`;
