// The sheet search, off the screen's thread. Takes one message: a job file's text, the
// phone's units, a width. Sends pages, each better than the one before, then `done`; or
// a `problem` in words. Whoever asked ends it by ending the worker.

import init, { Layouts } from './layout.js';

const STEPS_A_SLICE = 20;
const BETWEEN_PAGES_MS = 250;

onmessage = async ({ data: { job, units, width } }) => {
  try {
    await init();
    await lay(new Layouts(job, units, width));
  } catch (problem) {
    postMessage({ problem: typeof problem === 'string' ? problem : `The layout stopped: ${problem}` });
  }
};

async function lay(layouts) {
  let shown;
  let last = -Infinity;
  for (let done = false; !done;) {
    done = layouts.step(STEPS_A_SLICE);
    if (!done && performance.now() - last < BETWEEN_PAGES_MS) continue;
    last = performance.now();
    const page = layouts.page();
    if (page && page !== shown) postMessage({ page: JSON.parse(page) });
    shown = page ?? shown;
  }
  postMessage({ done: true });
}
