import { enableCompileCache } from 'node:module';
import { cacheFolder } from '../site/cache-folder.ts';

// Loaded with `--import`, before a command: modules that a command imports are compiled before its own first line runs.
enableCompileCache(cacheFolder('compile'));
