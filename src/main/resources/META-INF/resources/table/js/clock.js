/**
 * What the tablet's clock says, and how far it is off. A look carries both, as they were at the tap: the time is
 * never mended here, so that sending again never changes a record.
 */
let offset = null;
let serverAtZero = null;
const LIFE = crypto.getRandomValues(new Uint32Array(2)).join('-');

/** Beyond this a clock is worth a word to the teacher. */
export const WORTH_SAYING_MS = 2 * 60 * 1000;

/** Local time with its offset from UTC, such as 2026-03-02T09:14:03.120-06:00: its date is the day of the look. */
export function stamp(date = new Date(), minutes = -date.getTimezoneOffset()) {
  const sign = minutes < 0 ? '-' : '+';
  const two = (n) => String(Math.floor(Math.abs(n))).padStart(2, '0');
  const local = new Date(date.getTime() + minutes * 60000).toISOString().slice(0, -1);
  return `${local}${sign}${two(minutes / 60)}:${two(minutes % 60)}`;
}

/**
 * Takes the server's time out of an answer. The answer was written somewhere between asking and hearing, so the
 * middle is taken; an exchange slower than ten seconds says too little and is left out.
 */
export function learn(serverTime, asked, heard = Date.now()) {
  const server = Date.parse(serverTime);
  if (Number.isNaN(server) || heard - asked > 10000 || heard < asked) {
    return;
  }
  offset = Math.round((asked + heard) / 2 - server);
  serverAtZero = heard - offset - performance.now();
}

/** When something happens by the clock that counts from the opening of the page and that nobody can set. */
export const moment = () => ({ mono: performance.now(), life: LIFE });

/**
 * How far the tablet's clock was off at a moment before it was measured: by what the unset clock says since, so that a
 * clock put right in between does not matter. Null when it was never measured, or the page was opened anew since.
 */
export function offsetAt({ at, mono, life }) {
  return serverAtZero === null || life !== LIFE ? null : Math.round(at - (serverAtZero + mono));
}

/** Tablet clock minus server clock in milliseconds, or null while it was never measured. */
export function offsetMs() {
  return offset;
}

/** Puts back what an earlier page measured, for a start without network. */
export function recall(millis) {
  if (offset === null && Number.isFinite(millis)) {
    offset = millis;
  }
}
