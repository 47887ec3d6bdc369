/**
 * The looks that the server has not yet named as kept, on this tablet. Nothing here ever expires.
 *
 * entry: {seq, id, owner, classId, at, heldUntil, sentAt, state: 'waiting'|'refused', mono, life,
 *         box: sealed {record, reason}, or record and reason in the clear where nothing can be sealed}
 *   seq orders entries as they were tapped; owner is the number of the adult who made the record (the sign-in name on
 *   entries of the first version); heldUntil is the end of the ten seconds in which it may still be undone; sentAt is
 *   set before the first sending, and from then on the record is never altered, whatever came of the sending; mono and
 *   life tell the time of the tap by a clock that nobody sets.
 */
import { answer, read, write } from './store.js';
import * as vault from './vault.js';
import { moment, offsetAt } from './clock.js';

export const HOLD_MS = 10000;
const bound = (id) => `look ${id}`;

/** Taps are written in the order they came, although sealing takes a moment. */
let line = Promise.resolve();

async function closed({ record, reason = null, box, ...head }) {
  return vault.ready() && record ? { ...head, box: await vault.seal(bound(head.id), { record, reason }) }
    : { ...head, ...(box ? { box } : { record, reason }) };
}

/** The entry with its record, or with record null when its key is not here. */
async function opened(entry) {
  if (!entry.box) {
    return entry;
  }
  const content = await vault.unseal(bound(entry.id), entry.box);
  return { ...entry, record: content?.record ?? null, reason: content?.reason ?? null };
}

const content = (entry) => entry.box ?? JSON.stringify([entry.record, entry.reason]);
const byId = (store, id) => answer(store.index('id').get(id));

/**
 * Changes an entry while it `fits`. Sealing cannot happen inside a transaction, so the entry is looked at again when it
 * is written, and the change is made anew when another tab was quicker.
 */
async function change(id, fits, edit) {
  for (;;) {
    const before = await read('outbox', (store) => byId(store, id));
    if (!before || !fits(before)) {
      return false;
    }
    const open = await opened(before);
    if (!open.record) {
      return false;
    }
    const { box: _, ...plain } = open;
    const after = await closed({ ...plain, ...edit(open) });
    const done = await write('outbox', async (store) => {
      const now = await answer(store.get(before.seq));
      if (!now || !fits(now)) {
        return false;
      }
      if (content(now) !== content(before)) {
        return null;
      }
      await answer(store.put(after));
      return true;
    });
    if (done !== null) {
      return done;
    }
  }
}

/** Keeps one record. Resolves with its entry once it is on the disk; rejects when the tablet would not keep it. */
export function add(owner, record, classId = null) {
  const now = Date.now();
  const entry = { id: record.id, owner, classId, at: now, heldUntil: now + HOLD_MS, sentAt: null, state: 'waiting',
    ...moment(), record, reason: null };
  const kept = line.then(async () => {
    const last = await closed(entry);
    return write('outbox', (store) => answer(store.add(last)));
  });
  line = kept.catch(() => {});
  return kept.then((seq) => ({ ...entry, seq }));
}

const unsent = (entry) => entry.sentAt === null;

/** Alters a record that has not left the tablet. False when it has: then only a correction is left. */
export function amend(id, alter) {
  return change(id, unsent, ({ record }) => ({ record: { ...record, ...alter } }));
}

/** Takes back a record that has not left the tablet. False when it has. */
export function undo(id) {
  return write('outbox', async (store) => {
    const entry = await byId(store, id);
    if (!entry || !unsent(entry)) {
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
 * The next entries of this adult in the order of tapping, marked as sent before they are handed out; with `classId`
 * only up to the first of another class. With `release` the ten seconds are over at once, for a page that is being left.
 */
export async function take(owner, limit, release = false, classId = null) {
  const taken = await write('outbox', async (store) => {
    const now = Date.now();
    const batch = [];
    for (const entry of await answer(store.getAll())) {
      if (entry.owner !== owner || entry.state !== 'waiting') {
        continue;
      }
      if (batch.length === limit || (!release && held(entry, now)) || (classId && entry.classId !== classId)) {
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
  return Promise.all(taken.map(opened));
}

/** What of an entry goes over the network: the record, or the sealed box for the server to open. */
export const wire = (entry) => entry.record ?? { id: entry.id, sealed: entry.box };

/**
 * Takes the server's word: entries it names as stored or duplicate leave, refused ones stay with the reason, and
 * those it did not name stay as they are. Returns how many it named.
 */
export async function settle(owner, verdicts) {
  let named = 0;
  await write('outbox', async (store) => {
    for (const { id, status } of verdicts) {
      const entry = typeof id === 'string' ? await byId(store, id) : null;
      if (entry?.owner === owner && (status === 'stored' || status === 'duplicate')) {
        await answer(store.delete(entry.seq));
        named += 1;
      }
    }
  });
  for (const { id, status, reason } of verdicts) {
    if (status !== 'refused' || typeof id !== 'string') {
      continue;
    }
    const mine = (entry) => entry.owner === owner;
    const told = await change(id, mine, () => ({ state: 'refused', reason: reason || '' }));
    // Without its key the reason, which may name a child, is not kept; sending again brings it again.
    named += told || await write('outbox', async (store) => {
      const entry = await byId(store, id);
      return entry && mine(entry) && answer(store.put({ ...entry, state: 'refused' })).then(() => true);
    }) ? 1 : 0;
  }
  return named;
}

/** Puts a refused entry back in line: as it is, or altered, and then under the new id that `record` brings. */
export async function again(id, record = null) {
  const refused = (entry) => entry.state === 'refused';
  if (!record) {
    await write('outbox', async (store) => {
      const entry = await byId(store, id);
      if (entry && refused(entry)) {
        await answer(store.put({ ...entry, state: 'waiting' }));
      }
    });
    return;
  }
  await change(id, refused, () => ({ state: 'waiting', reason: null, id: record.id, record, sentAt: null,
    heldUntil: 0 }));
}

/** Drops a refused entry, because the teacher said so. */
export function discard(id) {
  return write('outbox', async (store) => {
    const entry = await byId(store, id);
    if (entry && entry.state === 'refused') {
      await answer(store.delete(entry.seq));
    }
  });
}

/** Everything that waits, in order, without what is sealed. */
export const heads = () => read('outbox', (store) => answer(store.getAll()));

/** Everything that waits, in order, opened where its key is in hand. */
export const all = async () => Promise.all((await heads()).map(opened));

/** Ids of the keys that entries of an adult, and one thing the page remembers, were sealed with. */
export async function keysInUse(owner, page) {
  const boxes = (await heads()).filter((e) => e.owner === owner).map((e) => e.box);
  return [...new Set([...boxes, (await headOfPage(page))?.box].filter(Boolean).map(vault.keyOf))];
}

/**
 * Seals what this adult left in the clear, by an earlier version of the page or before the key was here, and gives
 * entries of the first version the adult's number and the class of their child.
 */
export async function adopt(signIn, owner, classId, children) {
  const mine = (entry) => entry.owner === owner || entry.owner === signIn;
  const known = new Set(children.map((c) => c.child));
  for (const entry of await heads()) {
    if (mine(entry) && (!entry.box || entry.owner !== owner)) {
      await change(entry.id, mine, ({ record, classId: of }) => ({ owner,
        classId: of ?? (known.has(record.child) ? classId : null) }));
    }
  }
}

/** Adds the clock's difference to unsent records made before it was measured. */
export async function measure(owner) {
  for (const entry of await heads()) {
    const offset = entry.owner === owner && unsent(entry) ? offsetAt(entry) : null;
    if (offset !== null) {
      await change(entry.id, unsent, ({ record }) => ({ life: null,
        record: record.clock_offset_ms === null ? { ...record, clock_offset_ms: offset } : record }));
    }
  }
}

/** What the page itself remembers for an adult, sealed where that can be: who sits at the table, the class of the day. */
export async function rememberPage(key, owner, value, clear = {}) {
  const kept = vault.ready() ? { box: await vault.seal(`page ${key}`, value) } : { value };
  await write('page', (store) => answer(store.put({ ...clear, owner, ...kept }, key)));
}

/** What was remembered, with what stood in the clear beside it; null when nothing was or its key is not in hand. */
export async function recallPage(key) {
  const kept = await read('page', (store) => answer(store.get(key)));
  if (!kept?.box) {
    return kept?.value !== undefined ? kept.value : kept ?? null;
  }
  return vault.unseal(`page ${key}`, kept.box);
}

/** What stands in the clear: whose it is and since when. */
export const headOfPage = (key) => read('page', (store) => answer(store.get(key)));

/** Remembers what tells nothing of anybody and must be readable without a key. */
export const rememberPlain = (key, owner, value) => write('page', (store) => answer(store.put({ owner, value }, key)));

export const forgetPage = (key) => write('page', (store) => answer(store.delete(key)));

/** A number for this browser, so that an adult can tell tablets apart; made once. */
export function device(fresh) {
  return write('page', async (store) => {
    const kept = await answer(store.get('device'));
    if (!kept) {
      await answer(store.put(fresh, 'device'));
    }
    return kept ?? fresh;
  });
}
