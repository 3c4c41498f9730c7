// Shows pages of cards: where water comes from, what is under the house, the order list.
// The app asks for one with a `duckboard-later` event; it is drawn into the element called
// like the page for as long as that is there. A tap on an answer and what is typed into a
// field go back to the app, which logs them and asks again.

import { card, drawing, element } from './dom.js';

let worker;
let units;
// The job on the screen: what was typed for one is never logged in another.
let job;
// What was typed and is not logged yet, what of it was sent to be read, and what was wrong
// with it, by job and the field's key.
const drafts = new Map();
// A field that is taken away while somebody types in it is not left by them.
let isDrawing = false;

export function show(asked) {
  units = asked.units;
  job = asked.job.match(/"id": "([0-9a-f]+)"/)?.[1];
  worker ??= started();
  worker.postMessage(asked);
}

// How long whoever asks is kept waiting: a job file is wanted now, the sample may have to
// be loaded first.
const PATIENCE_MS = { figures: 10_000, sample: 60_000 };

// By a worker of its own: a search that takes long keeps no page waiting, and ends with it.
export function ask(asked) {
  const once = new Worker(new URL('./later-worker.js', import.meta.url), { type: 'module' });
  const told = new Promise((resolve, reject) => {
    once.onmessage = ({ data }) => (data.told ? resolve(data.told) : reject(data.problem));
    once.onerror = reject;
    setTimeout(reject, PATIENCE_MS[asked.page]);
    once.postMessage(asked);
  });
  return told.finally(() => once.terminate());
}

function started() {
  const begun = new Worker(new URL('./later-worker.js', import.meta.url), { type: 'module' });
  begun.onmessage = ({ data }) => (data.key ? settle(data) : draw(data));
  begun.onerror = () => {
    worker = undefined;
    drafts.forEach(draft => { draft.sent = undefined; });
    for (const name of ['due', 'ventilating', 'cautions', 'water', 'under', 'orders', 'logged']) {
      draw({ name, problem: 'This page could not be worked out. What is saved is safe.' });
    }
  };
  return begun;
}

function draw({ name, page, problem }) {
  const place = document.getElementById(name);
  if (!place) return;
  isDrawing = true;
  const { dataset, selectionStart: from, selectionEnd: to } = document.activeElement ?? {};
  const held = dataset?.key;
  const open = new Set([...place.querySelectorAll('details[open]')].map(({ dataset }) => dataset.of));
  if (problem) place.replaceChildren(element('p', 'assumed', problem));
  if (page) place.replaceChildren(...pageParts(page, name));
  const isReport = place.closest('.report') !== null;
  place.querySelectorAll('details').forEach(details => { details.open = isReport || open.has(details.dataset.of); });
  place.dataset.state = problem ? 'problem' : 'done';
  const again = held && place.querySelector(`[data-key="${CSS.escape(held)}"]`);
  again?.focus();
  // Whoever is typing goes on where they were.
  if (again && from !== undefined) again.setSelectionRange(from, to);
  isDrawing = false;
}

// A page that is a table too is that on paper, and its first card.
function pageParts({ cards, table, logged }, name) {
  const parts = [...cards.flatMap(part), ...logged.map(titled)];
  if (!table) return parts;
  parts.slice(1).forEach(card => card.classList.add('not-on-paper'));
  return [save(table.csv, name), parts[0], onPaper(table), ...parts.slice(1)];
}

function onPaper({ columns, sections }) {
  const { box, table } = boxed('table-box on-paper', 'Order list', columns);
  for (const [section, rows] of sections) {
    const body = table.createTBody();
    const heading = element('th', 'section', section);
    heading.colSpan = columns.length;
    body.insertRow().append(heading);
    fill(body, rows);
  }
  return box;
}

// What was logged, in rows under a title.
function titled({ title, columns, rows }) {
  const { box, table } = boxed('table-box', title, columns);
  fill(table.createTBody(), rows);
  const section = element('section');
  section.append(element('h2', '', title), box);
  return section;
}

// A table with its head, in a box that scrolls sideways, by keys too.
function boxed(name, says, columns) {
  const box = element('div', name);
  box.tabIndex = 0;
  box.setAttribute('role', 'region');
  box.setAttribute('aria-label', says);
  const table = element('table');
  const head = table.createTHead().insertRow();
  for (const column of columns) {
    const cell = element('th', '', column);
    cell.scope = 'col';
    head.append(cell);
  }
  box.append(table);
  return { box, table };
}

function fill(body, rows) {
  for (const row of rows) body.insertRow().append(...row.map(cell => element('td', '', cell)));
}

const FEW = 4;

function part({ group, title, headline, lines, drawing: svg, asks, fields, act, shows }) {
  const small = lines.filter(({ class: name }) => name === 'doubt').map(line);
  const large = lines.filter(({ class: name }) => name !== 'doubt').map(line);
  const questions = [...fields.map(field), ...asks.map(question)];
  const isLong = fields.length > 0 || questions.length > FEW;
  const words = fields.length > 0 ? 'enter or change' : 'all questions';
  const folds = element('div', 'folds');
  if (isLong) folds.append(folded(`${title}: ${words}`, words, questions));
  if (small.length) folds.append(folded(`why: ${title}`, 'why', small));
  const shown = card(element('h2', '', title), ...(headline ? [element('p', 'headline', headline)] : []),
    ...(svg ? [drawing(svg)] : []), ...(act ? [proposal(act, shows)] : []), ...large,
    ...(isLong ? [] : questions), folds);
  return group ? [element('h2', 'group', group), shown] : [shown];
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
  document.querySelectorAll('.later details').forEach(details => { details.open = true; }));

// What would be logged is shown in words first, and drawn above; then it takes a key of its own.
function proposal(act, shows) {
  const box = element('div', 'proposal no-print');
  const ask = element('button', 'key wide', `${act.label}: look at it first`);
  ask.type = 'button';
  ask.onclick = () => {
    const row = element('div', 'answers-row');
    const no = element('button', 'key', 'not now');
    no.type = 'button';
    no.onclick = () => { box.replaceChildren(ask); ask.focus(); };
    const yes = key({ ...act, label: 'log this opening' }, 'key wide');
    row.append(no, yes);
    box.replaceChildren(element('p', '', shows), row);
    no.focus();
  };
  box.append(ask);
  return box;
}

function question({ asks, answers }) {
  const group = element('div', 'check');
  group.setAttribute('role', 'group');
  group.setAttribute('aria-label', asks);
  group.classList.toggle('unanswered', !answers.some(({ is_so }) => is_so));
  group.classList.toggle('many', answers.length !== 3);
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
  button.onclick = () => record(logs);
  return button;
}

function record(logs) {
  window.dispatchEvent(new CustomEvent('duckboard-record', { detail: logs }));
}

// What is typed counts when the field is left or Enter is pressed. What is refused stays
// in its field with the reason, and nothing that was typed goes when the page is made anew.
function field({ key: of, asks, unit, is_number, typed, again, shared }) {
  const box = element('label', 'field');
  const input = element('input');
  const why = element('span', 'problem');
  why.setAttribute('role', 'alert');
  const name = `${job} ${of}`;
  const draft = drafts.get(name);
  input.value = draft?.text ?? typed;
  input.dataset.key = of;
  const standsIn = shared ? `as all joists: ${shared}` : '';
  input.placeholder = again ? `say again: ${again}` : standsIn;
  input.autocomplete = 'off';
  input.enterKeyHint = 'done';
  input.inputMode = is_number ? 'decimal' : 'text';
  tell(input, why, draft?.refused);
  input.oninput = () => drafts.set(name, { text: input.value });
  // Once the page is made anew the browser takes what stands in a field for unchanged.
  input.onchange = input.onblur = () => {
    if (isDrawing) return;
    const text = input.value.trim();
    if (text === '' || text === typed) {
      drafts.delete(name);
      input.value = typed;
      tell(input, why);
    } else if (drafts.get(name)?.sent !== text) {
      drafts.set(name, { text: input.value, sent: text });
      worker.postMessage({ key: of, text, units, of: job });
    }
  };
  box.classList.toggle('unanswered', !typed);
  box.append(element('span', '', unit ? `${asks} (${unit})` : asks), input, why);
  return box;
}

// Of another job than the one on the screen nothing is logged: it waits in its field.
function settle({ key, text, of, logs, refused }) {
  const name = `${of} ${key}`;
  const draft = drafts.get(name);
  const isWanted = draft?.sent === text;
  if (of !== job) {
    if (isWanted) draft.sent = undefined;
  } else if (logs) {
    if (isWanted) drafts.delete(name);
    record(logs);
  } else if (isWanted) {
    draft.refused = refused;
    const input = document.querySelector(`input[data-key="${CSS.escape(key)}"]`);
    if (input) tell(input, input.nextElementSibling, refused);
  }
}

function tell(input, why, refused) {
  input.setAttribute('aria-invalid', String(Boolean(refused)));
  why.textContent = refused ?? '';
}

function save(csv, name) {
  const link = element('a', 'key wide no-print', 'Save as a table (CSV)');
  link.href = URL.createObjectURL(new Blob([csv], { type: 'text/csv' }));
  link.download = `duckboard-${name}.csv`;
  return link;
}
