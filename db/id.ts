import { monotonicFactory } from 'ulid';

/** A new id. Ids made by one process sort in the order they were made. */
export const newId: () => string = monotonicFactory();
