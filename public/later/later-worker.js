// What takes long, off the screen's thread. Takes messages: a page's name, a job file's
// text, the phone's units, a width. For `sheets` it sends pages, each better than the one
// before, then `done`; for `water` one page. Or a `problem` in words. Whoever asked for
// sheets ends it by ending the worker.

import init, { Layouts, water_page } from './layout.js';

const STEPS_A_SLICE = 20;
const BETWEEN_PAGES_MS = 250;

const ready = init();

onmessage = async ({ data: { page, job, units, width } }) => {
  try {
    await ready;
    if (page === 'water') postMessage({ page: JSON.parse(water_page(job, units, width)) });
    else await lay(new Layouts(job, units, width));
  } catch (problem) {
    postMessage({ problem: typeof problem === 'string' ? problem : `The page stopped: ${problem}` });
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
