/*
 * Keeps the Table page for a start without network. Its scope is /table/ alone. The files are kept as one set that
 * was read together; a new set is read whole at a safe moment and used from the next opening on, so that a page never
 * runs on files of two versions. It keeps no answer of the server's and no name of a child.
 */
'use strict';
const FILES = [
  '/table/', '/table/table.css', '/table/manifest.webmanifest', '/table/icon.svg', '/look/stepwell.css',
  ...['cubes', 'modelled', 'none', 'words'].map((name) => `/look/icons/${name}.svg`),
  ...['actions', 'ask', 'clock', 'desk', 'dom', 'equip', 'initials', 'lock', 'look', 'main', 'names', 'offline', 'outbox',
    'pin', 'sender', 'server', 'starts', 'store', 'tally', 'texts', 'turns', 'uuid', 'vault', 'view-children', 'view-last', 'view-notices', 'view-outbox', 'view-phrases', 'view-task', 'visit']
    .map((name) => `/table/js/${name}.js`),
];
const PREFIX = 'stepwell-table-';

/** Put into a set as its last file: a set without it was cut off in the middle and is never used. */
const WHOLE = '/table/whole';

const sets = async () => (await caches.keys()).filter((name) => name.startsWith(PREFIX)).sort();

/** Sets are numbered as they come, whatever the clock says; the newest whole one is in use. */
async function setInUse() {
  for (const name of (await sets()).reverse()) {
    if (await (await caches.open(name)).match(WHOLE)) {
      return name;
    }
  }
  return null;
}

async function readSet() {
  return Promise.all(FILES.map(async (path) => {
    const response = await fetch(path, { cache: 'no-cache', redirect: 'error' });
    const kind = response.headers.get('Content-Type') ?? '';
    // A gateway's page in place of a script must never become part of a set.
    if (!response.ok || (kind.includes('html') && path !== '/table/')) {
      throw new Error(`${path} is not there`);
    }
    const bytes = await response.arrayBuffer();
    if (path === '/table/' && !new TextDecoder().decode(bytes).includes('data-page="stepwell-table"')) {
      throw new Error('another page answered');
    }
    return { path, bytes, headers: response.headers };
  }));
}

async function same(cache, files) {
  for (const { path, bytes } of files) {
    const kept = await cache.match(path);
    const old = kept ? new Uint8Array(await kept.arrayBuffer()) : null;
    const now = new Uint8Array(bytes);
    if (!old || old.length !== now.length || !old.every((byte, i) => byte === now[i])) {
      return false;
    }
  }
  return true;
}

async function takeSet() {
  const files = await readSet();
  const current = await setInUse();
  if (current && await same(await caches.open(current), files)) {
    return;
  }
  const newest = Number.parseInt((await sets()).at(-1)?.slice(PREFIX.length) ?? '0', 10) || 0;
  const name = PREFIX + String(newest + 1).padStart(15, '0');
  const cache = await caches.open(name);
  for (const { path, bytes, headers } of files) {
    await cache.put(path, new Response(bytes, { headers }));
  }
  await cache.put(WHOLE, new Response('whole'));
  for (const old of await sets()) {
    if (old !== name && old !== current) {
      await caches.delete(old);
    }
  }
}

async function answer(event, path) {
  const name = await setInUse();
  const kept = name && await (await caches.open(name)).match(path);
  return kept ?? fetch(event.request);
}

self.addEventListener('install', (event) => event.waitUntil(takeSet()));
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
self.addEventListener('message', (event) => {
  if (event.data === 'refresh') {
    event.waitUntil(takeSet().catch(() => {}));
  }
});
self.addEventListener('sync', (event) => {
  event.waitUntil(self.clients.matchAll().then((pages) => pages.forEach((page) => page.postMessage('send'))));
});
self.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== self.location.origin) {
    return;
  }
  const path = url.pathname === '/table/index.html' ? '/table/' : url.pathname;
  if (FILES.includes(path)) {
    event.respondWith(answer(event, path));
  }
});
