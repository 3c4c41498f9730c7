// What takes long, off the screen's thread. Takes messages: a page's name, a job file's
// text, the phone's units, who logs on it, a width. For `sheets` it sends pages, each better than the one
// before, then `done`; for pages of cards one page; for `figures` those of a file's
// snapshot; for `sample` the sample's entries on the device that `job` names. A message
// with `key` and `text` is what was typed into a field of the job `of`: it sends that back
// with what is to be logged, or with what is wrong. Or a `problem` in words. Whoever asked
// for sheets ends it by ending the worker.

import init, { Layouts, figures_of, page as pageOf, sample_of, typed } from './layout.js';

const STEPS_A_SLICE = 20;
const BETWEEN_PAGES_MS = 250;

const ready = init();

onmessage = async ({ data: { page, job, units, by, width, key, text, of } }) => {
  try {
    await ready;
    if (key) postMessage({ key, text, of, ...read(key, text, units) });
    else if (page === 'sheets') await lay(new Layouts(job, units, width));
    else if (page === 'figures') postMessage({ told: figures_of(job, units) });
    else if (page === 'sample') postMessage({ told: sample_of(job) });
    else postMessage({ name: page, page: JSON.parse(pageOf(page, job, units, by, width)) });
  } catch (problem) {
    postMessage({ name: page, problem: typeof problem === 'string' ? problem : `The page stopped: ${problem}` });
  }
};

function read(key, text, units) {
  try {
    return { logs: typed(key, text, units) };
  } catch (refused) {
    return { refused: String(refused) };
  }
}

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
