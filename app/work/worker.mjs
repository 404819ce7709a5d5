// A worker thread does not take over the loader of the process, so it registers its own.
import { register } from 'tsx/esm/api';

register();
await import('./worker.ts');
