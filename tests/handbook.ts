import { loadHandbook } from '../src/site/handbook-files.ts';

/** The handbook as shipped, read once for all tests. */
export const handbook = loadHandbook();
