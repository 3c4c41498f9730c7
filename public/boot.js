// Starts the app, and looks after the copy of it that works without a signal.
//
// What can be seen on <html>:
//   data-app      started | failed
//   data-offline  ready | failed     is this build kept on the phone?
//   data-update   waiting            a newer build is kept and waits to be used
// Each also comes as a window event (`duckboard-app`, …), for those already listening.
// The app answers an update with `duckboard-use-update` when nothing is half typed:
// only then is the page reloaded.

const page = document.documentElement;
let wanted = false;

startApp().finally(keepForOffline);

// What no first screen needs is loaded when the app asks for it.
window.addEventListener('duckboard-later', async ({ detail }) => {
  if (detail.page === 'figures' || detail.page === 'sample') return answer(detail);
  const { show } = await (detail.page === 'sheets' ? import('./later/sheets.js') : import('./later/cards.js'));
  show({ ...detail, width: Math.min(innerWidth - 32, 640) });
});

// With nothing if nothing comes: who asked goes on without it.
async function answer(asked) {
  const detail = await import('./later/cards.js').then(({ ask }) => ask(asked)).catch(() => undefined);
  window.dispatchEvent(new CustomEvent(`duckboard-${asked.page}`, { detail }));
}

async function startApp() {
  try {
    const { default: init } = await import('./duckboard.js');
    await init();
    document.getElementById('opening')?.remove();
    tell('app', 'started');
  } catch (error) {
    console.error(error);
    sayWhyNotStarted(error);
    tell('app', 'failed');
  }
}

function sayWhyNotStarted(error) {
  const lines = [
    ['h1', 'Duckboard did not start'],
    ['p', 'Everything that was marked saved is safe on this phone.'],
    ['p', 'Close Duckboard and open it again. If that does not help, restart the phone, then update its browser.'],
    ['p', 'Do not remove the app and do not clear the browser’s data: the saved jobs are kept there.'],
    ['p', `What the phone said: ${error?.message ?? error}`],
  ];
  const notice = document.createElement('section');
  notice.setAttribute('role', 'alert');
  for (const [tag, text] of lines) {
    const line = document.createElement(tag);
    line.textContent = text;
    notice.append(line);
  }
  const main = document.createElement('main');
  main.append(notice);
  document.body.replaceChildren(main);
}

async function keepForOffline() {
  try {
    const registration = await navigator.serviceWorker.register('./sw.js', { updateViaCache: 'none' });
    navigator.serviceWorker.addEventListener('controllerchange', reloadIfWanted);
    window.addEventListener('duckboard-use-update', () => useUpdate(registration));
    watchForUpdates(registration);
    await firstBuildKept(registration);
    tell('offline', 'ready');
  } catch (error) {
    console.warn('This build is not kept for use without a signal.', error);
    tell('offline', 'failed');
  }
}

function firstBuildKept(registration) {
  return new Promise((resolve, reject) => {
    navigator.serviceWorker.ready.then(resolve);
    onState(registration.installing, 'redundant', () => {
      if (!registration.active) reject(new Error('Not every file could be stored.'));
    });
  });
}

function watchForUpdates(registration) {
  const seeIfWaiting = () => {
    if (registration.waiting && registration.active) tell('update', 'waiting');
  };
  registration.addEventListener('updatefound', () =>
    onState(registration.installing, 'installed', seeIfWaiting));
  onState(registration.installing, 'installed', seeIfWaiting);
  seeIfWaiting();
}

function onState(worker, state, act) {
  worker?.addEventListener('statechange', () => {
    if (worker.state === state) act();
  });
}

// Without a waiting worker another tab was quicker: what is left is to load its build.
function useUpdate(registration) {
  wanted = true;
  if (registration.waiting) registration.waiting.postMessage({ type: 'activate' });
  else reloadIfWanted();
}

// The first worker also takes control, unasked: that must not reload the page.
function reloadIfWanted() {
  if (!wanted) return;
  wanted = false;
  location.reload();
}

function tell(topic, state) {
  page.dataset[topic] = state;
  window.dispatchEvent(new CustomEvent(`duckboard-${topic}`, { detail: state }));
}
