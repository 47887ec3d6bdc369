/**
 * The looks that the server has not yet named as kept, in IndexedDB on this tablet. A promise here resolves only
 * when its transaction has completed with strict durability: what the page then calls saved survives the page, the
 * browser and a flat battery. Nothing here ever expires.
 *
 * entry: {seq, id, owner, at, heldUntil, sentAt, state: 'waiting'|'refused', reason, record}
 *   seq orders entries as they were tapped; owner is the sign-in name of the adult who made the record;
 *   heldUntil is the end of the ten seconds in which it may still be undone; sentAt is set before the first sending,
 *   and from then on the record is never altered, whatever came of the sending.
 */
const NAME = 'stepwell-table';
const VERSION = 1;
export const HOLD_MS = 10000;

/** Steps from each earlier version to the next; each carries every entry over. */
const UPGRADES = [
  (db) => {
    const outbox = db.createObjectStore('outbox', { keyPath: 'seq', autoIncrement: true });
    outbox.createIndex('id', 'id', { unique: true });
    db.createObjectStore('page');
  },
];

let opening = null;

function open() {
  opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, VERSION);
    request.onupgradeneeded = (event) => {
      for (let version = event.oldVersion; version < VERSION; version += 1) {
        UPGRADES[version](request.result, request.transaction);
      }
    };
    request.onsuccess = () => {
      const db = request.result;
      db.onversionchange = () => { db.close(); opening = null; };
      db.onclose = () => { opening = null; };
      resolve(db);
    };
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error('another tab holds an older store open'));
  }).catch((error) => { opening = null; throw error; });
  return opening;
}

const answer = (request) => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

/** Runs work in one transaction and resolves with its result after the transaction is on the disk. */
async function write(store, work) {
  const db = await open();
  const tx = db.transaction(store, 'readwrite', { durability: 'strict' });
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

async function read(store, work) {
  const db = await open();
  return work(db.transaction(store, 'readonly').objectStore(store));
}

/** Keeps one record. Resolves with its entry once it is on the disk; rejects when the tablet would not keep it. */
export async function add(owner, record) {
  const now = Date.now();
  const entry = { id: record.id, owner, at: now, heldUntil: now + HOLD_MS, sentAt: null, state: 'waiting',
    reason: null, record };
  const seq = await write('outbox', (store) => answer(store.add(entry)));
  return { ...entry, seq };
}

/** Alters a record that has not left the tablet. False when it has: then only a correction is left. */
export function amend(id, change) {
  return write('outbox', async (store) => {
    const entry = await answer(store.index('id').get(id));
    if (!entry || entry.sentAt !== null) {
      return false;
    }
    entry.record = { ...entry.record, ...change };
    await answer(store.put(entry));
    return true;
  });
}

/** Takes back a record that has not left the tablet. False when it has. */
export function undo(id) {
  return write('outbox', async (store) => {
    const entry = await answer(store.index('id').get(id));
    if (!entry || entry.sentAt !== null) {
      return false;
    }
    await answer(store.delete(entry.seq));
    return true;
  });
}

/** Whether an entry is still in its ten seconds. A clock that was set back does not hold it longer. */
function held(entry, now) {
  const left = entry.heldUntil - now;
  return entry.sentAt === null && left > 0 && left <= HOLD_MS;
}

/**
 * The next entries of this adult in the order of tapping, marked as sent before they are handed out. With `release`
 * the ten seconds are over at once, for a page that is being left.
 */
export function take(owner, limit, release = false) {
  return write('outbox', async (store) => {
    const now = Date.now();
    const batch = [];
    for (const entry of await answer(store.getAll())) {
      if (entry.owner !== owner || entry.state !== 'waiting') {
        continue;
      }
      if (batch.length === limit || (!release && held(entry, now))) {
        break;
      }
      batch.push(entry);
      if (entry.sentAt === null) {
        entry.sentAt = now;
        await answer(store.put(entry));
      }
    }
    return batch;
  });
}

/**
 * Takes the server's word: entries it names as stored or duplicate leave, refused ones stay with the reason, and
 * those it did not name stay as they are. Returns how many it named.
 */
export function settle(owner, verdicts) {
  return write('outbox', async (store) => {
    let named = 0;
    for (const { id, status, reason } of verdicts) {
      const entry = typeof id === 'string' ? await answer(store.index('id').get(id)) : null;
      if (!entry || entry.owner !== owner) {
        continue;
      }
      if (status === 'stored' || status === 'duplicate') {
        await answer(store.delete(entry.seq));
        named += 1;
      } else if (status === 'refused') {
        await answer(store.put({ ...entry, state: 'refused', reason: reason || '' }));
        named += 1;
      }
    }
    return named;
  });
}

/** Puts a refused entry back in line: as it is, or altered, and then under the new id that `record` brings. */
export function again(id, record = null) {
  return write('outbox', async (store) => {
    const entry = await answer(store.index('id').get(id));
    if (entry && entry.state === 'refused') {
      const next = { ...entry, state: 'waiting', reason: null };
      await answer(store.put(record ? { ...next, id: record.id, record, sentAt: null, heldUntil: 0 } : next));
    }
  });
}

/** Drops a refused entry, because the teacher said so. */
export function discard(id) {
  return write('outbox', async (store) => {
    const entry = await answer(store.index('id').get(id));
    if (entry && entry.state === 'refused') {
      await answer(store.delete(entry.seq));
    }
  });
}

/** Everything that waits, in order. */
export function all() {
  return read('outbox', (store) => answer(store.getAll()));
}

/** What the page itself remembers: the last class it was given, and who sits at the table. */
export function recallPage(key) {
  return read('page', (store) => answer(store.get(key)));
}

export function rememberPage(key, value) {
  return write('page', (store) => answer(value === null ? store.delete(key) : store.put(value, key)));
}
