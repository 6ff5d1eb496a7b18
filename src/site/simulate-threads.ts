import { availableParallelism } from 'node:os';
import { MessageChannel, type MessagePort, receiveMessageOnPort, Worker } from 'node:worker_threads';
import type { Counts } from '../analysis/simulate/counts.ts';
import { alone, type Counting } from '../analysis/simulate/simulate.ts';
import { type SharedTask, takeChunks } from './chunk-pile.ts';

/** Boards from which a further thread is worth the time it takes to start. */
const worthwhile = 200_000;

/**
 * Counting by several threads, which take chunks of boards from a common pile. Waits for them, so that whoever calls it
 * need not know. The results are those of one thread, bit for bit.
 */
export function threaded(threads = availableParallelism()): Counting {
  return (machine, trials, chunks) => {
    if (trials < worthwhile || threads < 2) return alone(machine, trials, chunks);
    const pile = new Int32Array(new SharedArrayBuffer(8));
    const task: SharedTask = { machine, trials, chunks, pile };
    const helpers = Array.from({ length: Math.min(threads, chunks) - 1 }, () => startHelper(task));
    const own = takeChunks(task);
    return [own, ...helpers.map((helper) => resultOf(helper, pile))];
  };
}

function startHelper(task: SharedTask): MessagePort {
  const { port1, port2 } = new MessageChannel();
  const worker = new Worker(new URL('./simulate-worker.ts', import.meta.url), {
    workerData: { task, port: port2 },
    transferList: [port2],
  });
  // A helper must not keep the program alive, nor be heard of later.
  worker.unref();
  return port1;
}

/** Waits until the helper has answered. */
function resultOf(port: MessagePort, pile: Int32Array): Counts {
  for (;;) {
    const answered = Atomics.load(pile, 1);
    const answer = receiveMessageOnPort(port)?.message as { counts: Counts } | { failure: string } | undefined;
    if (answer && 'failure' in answer) throw new Error(`a thread that simulates boards failed: ${answer.failure}`);
    if (answer) {
      port.close();
      return answer.counts;
    }
    Atomics.wait(pile, 1, answered, 1000);
  }
}
