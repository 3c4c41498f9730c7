// Breaks the browser's database on purpose, and counts what goes on in it. Everything
// here works past the store, through the prototypes that the store must use too.

const real = {
  open: IDBFactory.prototype.open,
  close: IDBDatabase.prototype.close,
  put: IDBObjectStore.prototype.put,
  transaction: IDBDatabase.prototype.transaction,
  addEventListener: EventTarget.prototype.addEventListener,
  removeEventListener: EventTarget.prototype.removeEventListener,
  setTimeout: globalThis.setTimeout,
};

const seen = { openings: 0, completions: 0, durability: "", listeners: 0, timers: 0 };
const connected = new Set();
const held = new Set();
let plan = {};
mend();

export function mend() {
  plan = {
    refuse: { count: 0, error: "" },
    abort: 0,
    breakPut: { after: Infinity, error: "" },
    nextVersion: false,
  };
  hurryTimers(Infinity);
  for (const connection of held) connection.close();
  held.clear();
}

IDBFactory.prototype.open = function (name, version) {
  seen.openings += 1;
  const request = real.open.call(this, name, plan.nextVersion ? version + 1 : version);
  request.onsuccess = () => connected.add(request.result);
  return request;
};

IDBDatabase.prototype.close = function () {
  connected.delete(this);
  return real.close.call(this);
};

IDBDatabase.prototype.transaction = function (stores, mode, options) {
  if (plan.refuse.count > 0) {
    plan.refuse.count -= 1;
    throw new DOMException("on purpose", plan.refuse.error);
  }
  const transaction = real.transaction.call(this, stores, mode, options);
  if (mode === "readwrite") watch(transaction);
  return transaction;
};

function watch(transaction) {
  seen.durability = String(transaction.durability);
  transaction.oncomplete = () => (seen.completions += 1);
  if (plan.abort > 0) {
    plan.abort -= 1;
    Promise.resolve().then(() => transaction.abort());
  }
}

IDBObjectStore.prototype.put = function (...record) {
  if (plan.breakPut.after === 0) {
    plan.breakPut.after = Infinity;
    throw new DOMException("on purpose", plan.breakPut.error);
  }
  plan.breakPut.after -= 1;
  return real.put.apply(this, record);
};

EventTarget.prototype.addEventListener = function (...listener) {
  seen.listeners += 1;
  return real.addEventListener.apply(this, listener);
};

EventTarget.prototype.removeEventListener = function (...listener) {
  seen.listeners -= 1;
  return real.removeEventListener.apply(this, listener);
};

export function refuseTransactions(count, error) {
  plan.refuse = { count, error };
}

export function abortWrites(count) {
  plan.abort = count;
}

export function breakPutAfter(after, error) {
  plan.breakPut = { after, error };
}

export function askForNextVersion() {
  plan.nextVersion = true;
}

export function hurryTimers(longest) {
  globalThis.setTimeout = (callback, wait) => {
    const counted = () => {
      seen.timers += 1;
      callback();
    };
    return real.setTimeout.call(globalThis, counted, wait >= longest ? 0 : wait);
  };
}

export function keepBusy(connection) {
  const busyIn = plan;
  const lines = real.transaction.call(connection, ["lines"], "readwrite").objectStore("lines");
  const again = () => {
    if (plan === busyIn) lines.get("nothing").onsuccess = again;
  };
  again();
}

export function openings() {
  return seen.openings;
}

export function connections() {
  return connected.size;
}

export function completions() {
  return seen.completions;
}

export function lastDurability() {
  return seen.durability;
}

export function timers() {
  return seen.timers;
}

export function listeners() {
  return seen.listeners;
}

// Opens a database as it is and ignores whoever asks to let go of it.
export function holdOpen(name) {
  return new Promise((resolve, reject) => {
    const request = real.open.call(indexedDB, name);
    request.onsuccess = () => {
      held.add(request.result);
      resolve(request.result);
    };
    request.onerror = () => reject(request.error);
  });
}

export function deleteDatabase(name) {
  return new Promise((resolve, reject) => {
    const request = indexedDB.deleteDatabase(name);
    request.onsuccess = () => resolve(true);
    request.onblocked = () => resolve(false);
    request.onerror = () => reject(request.error);
  });
}
