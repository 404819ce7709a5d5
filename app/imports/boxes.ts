/** Names of the boxes in which a column of the file is matched, counted from 0. */
export const targetBox = (column: number): string => `column:${column}`;
export const unitBox = (column: number): string => `unit:${column}`;
