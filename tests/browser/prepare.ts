import { build, buildIsStale } from '../../app/server/build';
import { browserPath } from './find-browser';

console.log(`Browser: ${browserPath()}`);
if (buildIsStale(process.cwd())) build(process.cwd());
