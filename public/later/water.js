// Shows where water comes from, how far it goes and when the floor may be closed. The app
// asks for it with a `duckboard-later` event; it draws into #water for as long as that is
// there. A tap on an answer goes back to the app, which logs it and asks again.

import { card, drawing, element } from './dom.js';

let worker;

export function show(asked) {
  worker ??= started();
  worker.postMessage(asked);
}

function started() {
  const begun = new Worker(new URL('./later-worker.js', import.meta.url), { type: 'module' });
  begun.onmessage = ({ data }) => draw(data);
  begun.onerror = () => {
    worker = undefined;
    draw({ problem: 'This page could not be worked out. What is saved is safe.' });
  };
  return begun;
}

function draw({ page, problem }) {
  const place = document.getElementById('water');
  if (!place) return;
  const held = document.activeElement?.dataset.key;
  const open = new Set([...place.querySelectorAll('details[open]')].map(({ dataset }) => dataset.of));
  if (problem) place.replaceChildren(element('p', 'assumed', problem));
  if (page) place.replaceChildren(...page.map(part));
  const isReport = place.closest('.report') !== null;
  place.querySelectorAll('details').forEach(details => { details.open = isReport || open.has(details.dataset.of); });
  place.dataset.state = problem ? 'problem' : 'done';
  if (held) place.querySelector(`[data-key="${CSS.escape(held)}"]`)?.focus();
}

const FEW = 4;

function part({ title, headline, lines, drawing: svg, asks, act }) {
  const small = lines.filter(({ class: name }) => name === 'doubt').map(line);
  const large = lines.filter(({ class: name }) => name !== 'doubt').map(line);
  const questions = asks.map(question);
  const many = questions.length > FEW;
  return card(element('h2', '', title), ...(headline ? [element('p', 'headline', headline)] : []),
    ...(svg ? [drawing(svg)] : []), ...(act ? [key(act, 'key wide no-print')] : []), ...large,
    ...(many ? [folded(`${title}: all questions`, 'all questions', questions)] : questions),
    ...(small.length ? [folded(`why: ${title}`, 'why', small)] : []));
}

function line({ class: name, text }) {
  return element(name === 'heading' ? 'h3' : 'p', name, text);
}

// Folded up on the screen, all there on paper; it stays as it is when the page is made anew.
function folded(of, words, parts) {
  const details = element('details');
  details.dataset.of = of;
  const summary = element('summary', '', words);
  summary.setAttribute('aria-label', of);
  details.append(summary, ...parts);
  return details;
}

window.addEventListener('beforeprint', () =>
  document.querySelectorAll('#water details').forEach(details => { details.open = true; }));

function question({ asks, answers }) {
  const group = element('div', 'check');
  group.setAttribute('role', 'group');
  group.setAttribute('aria-label', asks);
  const row = element('div', 'answers-row');
  row.append(...answers.map(answer => key(answer, 'key')));
  group.append(element('p', '', asks), row);
  return group;
}

function key({ label, is_so, logs }, name) {
  const button = element('button', name, label);
  button.type = 'button';
  button.dataset.key = logs;
  if (name === 'key') button.setAttribute('aria-pressed', String(is_so));
  button.onclick = () => window.dispatchEvent(new CustomEvent('duckboard-record', { detail: logs }));
  return button;
}
