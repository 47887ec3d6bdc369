/**
 * What the tablet's clock says, and how far it is off. A look carries both, as they were at the tap: the time is
 * never mended here, so that sending again never changes a record.
 */
let offset = null;

/** Beyond this a clock is worth a word to the teacher. */
export const WORTH_SAYING_MS = 2 * 60 * 1000;

/** Local time with its offset from UTC, such as 2026-03-02T09:14:03.120-06:00: its date is the day of the look. */
export function stamp(date = new Date()) {
  const minutes = -date.getTimezoneOffset();
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
