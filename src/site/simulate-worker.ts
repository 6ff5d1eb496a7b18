import { type MessagePort, workerData } from 'node:worker_threads';
import { type SharedTask, takeChunks } from './chunk-pile.ts';

// One thread of a simulation: started by simulate-threads.ts, answers once and ends.
const { task, port } = workerData as { readonly task: SharedTask; readonly port: MessagePort };
try {
  port.postMessage({ counts: takeChunks(task) });
} catch (error) {
  port.postMessage({ failure: String(error) });
}
Atomics.add(task.pile, 1, 1);
Atomics.notify(task.pile, 1);
port.close();
