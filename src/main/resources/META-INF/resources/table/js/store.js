/**
 * The page's IndexedDB. A promise of `write` resolves only when its transaction has completed with strict durability:
 * what the page then calls saved survives the page, the browser and a flat battery.
 *
 * Every writing transaction spans all stores, so that the browser never has two under way: Chromium throws the whole
 * database away when it is killed with two unfinished ones on disk, even of different stores.
 */
const NAME = 'stepwell-table';
const VERSION = 2;

/** Steps from each earlier version to the next; each carries every entry over. */
const UPGRADES = [
  (db) => {
    const outbox = db.createObjectStore('outbox', { keyPath: 'seq', autoIncrement: true });
    outbox.createIndex('id', 'id', { unique: true });
    db.createObjectStore('page');
  },
  // Entries written in the clear stay as they are until their adult's key is here to seal them with.
  (db) => {
    db.createObjectStore('keys', { keyPath: 'owner' });
  },
];

let opening = null;
let wanted = false;
let inUse = () => false;
let blocked = () => {};

/** While `busy` says so, a newer page must wait for this store; `onBlocked` is called when this page has to wait. */
export function holdWhile(busy, onBlocked) {
  inUse = busy;
  blocked = onBlocked;
}

/** Gives the store to a newer page that asked for it, now that nothing is in hand. */
export async function letGo() {
  if (wanted && !inUse() && opening) {
    const db = await opening;
    opening = null;
    wanted = false;
    db.close();
  }
}

function request(version) {
  return new Promise((resolve, reject) => {
    const asked = indexedDB.open(NAME, version);
    asked.onupgradeneeded = (event) => {
      for (let from = event.oldVersion; from < VERSION; from += 1) {
        UPGRADES[from](asked.result, asked.transaction);
      }
    };
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
    asked.onblocked = () => blocked();
  });
}

function open() {
  opening ??= request(VERSION)
    // A newer page was here before: its store still holds everything this one needs.
    .catch((error) => { if (error?.name === 'VersionError') { return request(undefined); } throw error; })
    .then((db) => {
      db.onversionchange = () => { wanted = true; letGo(); };
      db.onclose = () => { opening = null; };
      return db;
    })
    .catch((error) => { opening = null; throw error; });
  return opening;
}

export const answer = (asked) => new Promise((resolve, reject) => {
  asked.onsuccess = () => resolve(asked.result);
  asked.onerror = () => reject(asked.error);
});

/** Runs work on one store and resolves with its result after the transaction is on the disk. One write at a time. */
export async function write(store, work) {
  const db = await open();
  const tx = db.transaction([...db.objectStoreNames], 'readwrite', { durability: 'strict' });
  const done = new Promise((resolve, reject) => {
    tx.oncomplete = resolve;
    tx.onabort = () => reject(tx.error ?? new Error('the tablet did not keep it'));
    tx.onerror = () => reject(tx.error);
  });
  done.catch(() => {});
  let result;
  try {
    result = await work(tx.objectStore(store));
  } catch (error) {
    try { tx.abort(); } catch { /* already over */ }
    throw error;
  }
  await done;
  return result;
}

export async function read(store, work) {
  const db = await open();
  return work(db.transaction(store, 'readonly').objectStore(store));
}
