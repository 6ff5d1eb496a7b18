import { enableCompileCache } from 'node:module';

// One board from its spec to its findings in a process of its own, started by cold.ts; prints milliseconds, megabytes.
enableCompileCache('.cache/code');
const { find } = await import('../analysis/find.ts');
const { readDesigns } = await import('../site/designs.ts');
const { loadHandbook } = await import('../site/handbook-files.ts');
const { readSpec } = await import('../spec/read-spec.ts');

const [name, trials] = [process.argv[2]!, Number(process.argv[3])];
const book = loadHandbook();
const { board: id, revision, files } = readDesigns('designs', [name])[0]!;
const start = performance.now();
const { board } = readSpec(files.get('spec.yaml')!, { file: name, board: id, revision }, book);
if (!board) throw new Error(`${name} cannot be read`);
find(board, { seed: 1, trials, digest: '', tool: '' });
console.log(JSON.stringify({ ms: performance.now() - start, memory: process.resourceUsage().maxRSS / 1024 }));
