/**
 * Keys and passes of adults on this tablet. The server gives each adult a key per tablet; the browser holds it so that
 * no script can read it out again, until sign-out or fourteen days. A pass lets looks of one adult and class be added
 * and nothing be read; it stays after sign-out, because it is how sealed entries leave.
 *
 * row: {owner, current: key id or null, since, until, keys: {id: CryptoKey}, passes: {classId: {token, until}}}
 */
import { answer, read, write } from './store.js';

const DAY_MS = 24 * 3600000;
const HALF_MS = 7 * DAY_MS;
const MOST_MS = 14 * DAY_MS;
let row = null;

/** Browsers seal on secure addresses only. */
export const canSeal = () => window.isSecureContext && Boolean(crypto.subtle);

const toText = (bytes) => btoa(String.fromCharCode(...new Uint8Array(bytes)))
  .replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
const toBytes = (text) => Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (c) => c.charCodeAt(0));

const rowOf = (owner) => read('keys', (store) => answer(store.get(owner)));
const still = (since, until, now = Date.now()) => now >= since - DAY_MS && now < Math.min(until, since + MOST_MS);

/** Takes an adult's key in hand; false when there is none or its days are over, and then it is dropped. */
export async function unlock(owner) {
  const kept = canSeal() ? await rowOf(owner) : null;
  if (kept?.current && !still(kept.since, kept.until)) {
    await sealAway((other) => other !== owner);
    row = null;
    return false;
  }
  row = kept?.current ? kept : null;
  return row !== null;
}

/** Whether an adult's things can be sealed now. */
export const ready = () => row !== null;

/** Whether to ask the server for a pass and key, because one is missing or half of its days are over. */
export async function wants(owner, classId, keyIds) {
  const kept = await rowOf(owner);
  const pass = kept?.passes[classId];
  const now = Date.now();
  return !pass || now > pass.until - HALF_MS || now < pass.until - MOST_MS - DAY_MS
    || (canSeal() && (!row || now > row.until - HALF_MS || keyIds.some((id) => !row.keys[id])));
}

/** Keeps what the server gave: keys so that they never leave the browser again, and the pass. */
export async function receive(owner, classId, given) {
  const keys = {};
  if (canSeal()) {
    for (const [id, raw] of Object.entries(given.keys ?? {})) {
      keys[id] = await crypto.subtle.importKey('raw', toBytes(raw), 'AES-GCM', false, ['encrypt', 'decrypt']);
    }
  }
  const now = Date.now();
  const sealing = Boolean(keys[given.key]);
  row = await write('keys', async (store) => {
    const kept = (await answer(store.get(owner))) ?? { owner, keys: {}, passes: {} };
    const next = { ...kept, current: sealing ? given.key : null, since: now, until: Date.parse(given.keyUntil),
      keys: { ...kept.keys, ...keys },
      passes: { ...kept.passes, [classId]: { token: given.pass, until: Date.parse(given.passUntil) } } };
    await answer(store.put(next));
    return next;
  });
  if (!sealing) {
    row = null;
  }
}

/**
 * Drops every key of the adults chosen; what they sealed is ciphertext from then on. Passes stay while something of
 * theirs waits, and nothing else of theirs does.
 */
export async function sealAway(chosen = () => true) {
  const waiting = new Set((await read('outbox', (store) => answer(store.getAll()))).map((e) => e.owner));
  await write('keys', async (store) => {
    for (const kept of await answer(store.getAll())) {
      if (chosen(kept.owner) && waiting.has(kept.owner)) {
        await answer(store.put({ ...kept, current: null, keys: {} }));
      } else if (chosen(kept.owner)) {
        await answer(store.delete(kept.owner));
      }
    }
  });
  await write('page', async (store) => {
    for (const key of await answer(store.getAllKeys())) {
      const value = await answer(store.get(key));
      if (key !== 'device' && !(key.startsWith('initials:') && value?.box) && chosen(value?.owner ?? key.split(':')[1] ?? '')) {
        await answer(store.delete(key));
      }
    }
  });
  if (row && chosen(row.owner)) {
    row = null;
  }
}

/** Seals a value for the adult in hand: `1.KEY.NONCE.BOX`. `bound` is sealed with it and must be the same to open. */
export async function seal(bound, value) {
  const nonce = crypto.getRandomValues(new Uint8Array(12));
  const id = row.current;
  const box = await crypto.subtle.encrypt({ name: 'AES-GCM', iv: nonce, additionalData: new TextEncoder().encode(bound) },
    row.keys[id], new TextEncoder().encode(JSON.stringify(value)));
  return `1.${id}.${toText(nonce)}.${toText(box)}`;
}

/** Opens what was sealed; null when its key is not in hand. */
export async function unseal(bound, text) {
  const [, id, nonce, box] = text.split('.');
  const key = row?.keys[id];
  if (!key) {
    return null;
  }
  const plain = await crypto.subtle.decrypt({ name: 'AES-GCM', iv: toBytes(nonce),
    additionalData: new TextEncoder().encode(bound) }, key, toBytes(box)).catch(() => null);
  return plain && JSON.parse(new TextDecoder().decode(plain));
}

/** Id of the key that something was sealed with. */
export const keyOf = (text) => text.split('.')[1];

/** The token by which looks of this adult and class may be added, or null. */
export async function passFor(owner, classId) {
  return (classId && (await rowOf(owner))?.passes[classId]?.token) || null;
}

/** Forgets a pass that the server refused. */
export function dropPass(owner, classId, token) {
  return write('keys', async (store) => {
    const kept = await answer(store.get(owner));
    if (kept?.passes[classId]?.token === token) {
      delete kept.passes[classId];
      await answer(store.put(kept));
    }
  });
}
