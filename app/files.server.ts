import { dataDir } from '~/db/open';
import { fileStore, type FileStore } from '~/db/files';

// Kept on the global object: while developing, modules are loaded anew on each change.
const kept = globalThis as typeof globalThis & { flangemarkFiles?: FileStore };

/** The one store of photos and imported files of this process. */
export const files = (): FileStore => (kept.flangemarkFiles ??= fileStore(dataDir()));
