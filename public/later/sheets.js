// Shows how sheets are laid and cut, as the search finds it. The app asks for it with
// a `duckboard-later` event; it draws into #sheets for as long as that is there.

import { card, drawing, element } from './dom.js';

const NOT_STARTED = 'The layout could not be started. What is saved is safe.';
const ENDED = 'The search has ended early. What it found so far is below; what is saved is safe.';

let worker;
// Has this search found a layout? It stays if the search dies: it keeps the rules.
let isLaid = false;

export function show(asked) {
  isLaid = false;
  worker?.terminate();
  worker = new Worker(new URL('./later-worker.js', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }) => draw(data);
  worker.onerror = () => draw(isLaid ? { ended: ENDED } : { problem: NOT_STARTED });
  worker.postMessage(asked);
}

function draw({ page, done, problem, ended }) {
  const place = document.getElementById('sheets');
  if (!place || done || problem || ended) {
    worker?.terminate();
    worker = undefined;
  }
  if (!place) return;
  if (problem) place.replaceChildren(element('p', 'assumed', problem));
  if (ended) place.prepend(element('p', 'assumed', ended));
  if (page) {
    isLaid = true;
    place.replaceChildren(...parts(page));
  }
  place.dataset.state = problem || ended ? 'problem' : done ? 'done' : 'searching';
}

function parts({ floors, assumed, doubts, sources, at_the_saw }) {
  return [
    ...floors.flatMap(floorParts),
    card(element('h2', '', 'Rules'), ...doubts.map(doubt => element('p', 'doubt', doubt)),
      element('p', 'assumed', `assumed: ${assumed.join('; ')}`),
      element('p', 'doubt', `sources: ${sources.join('; ')}`)),
    card(element('h2', '', 'At the saw'), ...at_the_saw.map(line => element('p', '', line))),
  ];
}

function floorParts({ name, headline, line, plan, needed, sheets }) {
  return [
    card(element('h2', '', `${name}: sheets laid on the joists`), element('p', 'headline', headline),
      element('p', '', line), ...(plan ? [drawing(plan)] : [])),
    ...sheets.map(cutSheet),
    ...needed.map(need),
  ];
}

function cutSheet({ title, drawing: svg, cuts }) {
  const list = element('ol', 'cuts');
  list.append(...cuts.map(cut => element('li', '', cut)));
  return card(element('h3', '', title), ...(svg ? [drawing(svg), list] : []));
}

function need({ title, headline, lines }) {
  return card(element('h3', '', title), element('p', 'headline', headline),
    ...lines.map(line => element('p', '', line)));
}
