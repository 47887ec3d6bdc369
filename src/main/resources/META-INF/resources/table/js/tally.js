/**
 * How many looks wait, kept beside the database that holds them: a browser may empty that one for want of space, or
 * because it took it for damaged, and the page would then say that nothing waits. A number and a time, no id, no name.
 *
 * kept: {store: the database's own mark, waiting, since, gone: {waiting, since} or null until somebody has read it}
 */
import { device, headOfPage } from './outbox.js';
import { uuidv7 } from './uuid.js';

const KEY = 'stepwell-table-waiting';
let mark = null;

function kept() {
  try { return JSON.parse(localStorage.getItem(KEY)); } catch { return null; }
}

function keep(next) {
  const text = JSON.stringify(next);
  try {
    if (localStorage.getItem(KEY) !== text) { localStorage.setItem(KEY, text); }
  } catch { /* a browser that keeps not even this says so elsewhere */ }
}

/** Before anything else is written: is this the database that was counted? */
export async function compare() {
  const before = kept();
  mark = await headOfPage('device') ?? await device(uuidv7());
  if (before && before.store !== mark && before.waiting > 0) {
    keep({ store: mark, waiting: 0, since: null, gone: { waiting: before.waiting, since: before.since } });
  }
}

/** Takes down what waits now. */
export function count(entries) {
  if (mark) {
    keep({ store: mark, waiting: entries.length, since: entries.length > 0 ? Math.min(...entries.map((e) => e.at)) : null,
      gone: kept()?.gone ?? null });
  }
}

/** What was lost with a database that the browser emptied, at most; null when nothing was or it has been read. */
export const gone = () => kept()?.gone ?? null;

export function read() {
  keep({ ...kept(), gone: null });
}
