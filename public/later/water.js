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
  if (problem) place.replaceChildren(element('p', 'assumed', problem));
  if (page) place.replaceChildren(...page.map(part));
  place.dataset.state = problem ? 'problem' : 'done';
  if (held) place.querySelector(`[data-key="${CSS.escape(held)}"]`)?.focus();
}

function part({ title, headline, lines, drawing: svg, asks, act }) {
  return card(element('h2', '', title), element('p', 'headline', headline), ...(svg ? [drawing(svg)] : []),
    ...(act ? [key(act, 'key wide no-print')] : []), ...asks.map(question),
    ...lines.map(({ class: name, text }) => element(name === 'heading' ? 'h3' : 'p', name, text)));
}

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
