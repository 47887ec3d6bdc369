/**
 * Speaks to the server and says plainly what came of it. An answer counts only when it is what was asked for: a
 * hotel's or school's gateway page with status 200 is an outage, not an answer.
 *
 * GET /api/table?class=ID (the parameter is optional) answers, for one class of the adult who is signed in:
 *   {adult: {id, signIn, name}, class: {id, name},
 *    children: [{child, given_name, label,       label tells two of one name apart, such as "Sofía M."
 *                ask: {code: {question, numbers}},   per skill: index of a question of the skill, numbers to try
 *                again: [code]}],                skills of open table tasks
 *    skills: [{code, title: {en, es},
 *              phrases: [{code, step, text: {en, es}}], errors: [{code, text: {en, es}}],
 *              questions: [{en, es}],            to ask at the table; may be empty
 *              numbers: ["14", "16"],            numbers worth offering, in order; may be empty
 *              objectsBelong: [4, 5]}],          steps whose task needs objects by nature
 *    groups: [{group, children: [child], skill, number}],   today's groups as saved; may be empty
 *    block: [{starts, ends, group}],             turns at the teacher table on the running day; group may be null
 *    starts: {skills: [code], met: [child]},    short starts of the first weeks; no skills once a unit is in hand
 *    focusSkill,                                 code of the skill the class is on, or null
 *    seenThisWeek: [child], zone,                the school's time zone, which decides the day
 *    serverTime}                                 instant with offset
 * 401 without a session. Nothing in it tells a child's step, tier or past.
 */
import { learn } from './clock.js';

const TIMEOUT_MS = 20000;

/** What went wrong, in one word that texts.js has a sentence for. */
export class Trouble extends Error {
  constructor(why, status = 0, retryAfterMs = 0) {
    super(why);
    this.why = why;
    this.status = status;
    this.retryAfterMs = retryAfterMs;
  }
}

/** The token that proves a request comes from this page; it changes when somebody signs in. */
export function token() {
  const match = /(?:^|;\s*)XSRF-TOKEN=([^;]*)/.exec(document.cookie);
  return match ? decodeURIComponent(match[1]) : '';
}

const WHY = { 400: 'malformed', 401: 'signin', 403: 'token', 404: 'missing', 413: 'large', 429: 'busy' };

async function exchange(path, options) {
  const stop = new AbortController();
  const timer = setTimeout(() => stop.abort(), TIMEOUT_MS);
  const asked = Date.now();
  try {
    const response = await fetch(path, { redirect: 'manual', cache: 'no-store', signal: stop.signal,
      credentials: 'same-origin', ...options, headers: { Accept: 'application/json', ...options.headers } });
    if (response.type === 'opaqueredirect') {
      throw new Trouble('gateway');
    }
    if (!response.ok) {
      const wait = Number.parseInt(response.headers.get('Retry-After') ?? '', 10);
      throw new Trouble(WHY[response.status] ?? 'server', response.status, wait > 0 ? wait * 1000 : 0);
    }
    if (!(response.headers.get('Content-Type') ?? '').includes('json')) {
      throw new Trouble('gateway', response.status);
    }
    const body = await response.json();
    learn(body.serverTime ?? response.headers.get('Date') ?? '', asked);
    return body;
  } catch (error) {
    if (error instanceof Trouble) {
      throw error;
    }
    throw new Trouble(error instanceof SyntaxError ? 'gateway' : 'network');
  } finally {
    clearTimeout(timer);
  }
}

/** The adult's number; servers of the first version had only the sign-in name. */
export const adultOf = (table) => table.adult.id ?? table.adult.signIn;

export async function fetchTable(classId) {
  const body = await exchange(classId ? `/api/table?class=${encodeURIComponent(classId)}` : '/api/table',
    { method: 'GET' });
  if (!body.adult?.signIn || !Array.isArray(body.children) || !Array.isArray(body.skills)) {
    throw new Trouble('gateway');
  }
  return body;
}

/**
 * Sends records and returns the server's verdicts: by the session and its token, or by a pass, and then without any
 * cookie. `keepalive` lets a small batch outlive the page.
 */
export async function postLooks(records, { csrf, pass }, keepalive = false) {
  const body = JSON.stringify(records);
  const verdicts = await exchange('/api/observations', { method: 'POST', body,
    keepalive: keepalive && body.length < 60000, credentials: pass ? 'omit' : 'same-origin',
    headers: { 'Content-Type': 'application/json', ...(pass ? { 'X-Stepwell-Pass': pass } : { 'X-XSRF-TOKEN': csrf }) } });
  if (!Array.isArray(verdicts)) {
    throw new Trouble('gateway');
  }
  return verdicts;
}

/** Asks for a pass and a key: {pass, passUntil, key, keyUntil, keys: {id: key in Base64}}. */
export async function askPass(classId, device, label, keys) {
  const given = await exchange('/api/table/pass', { method: 'POST',
    body: JSON.stringify({ class: classId, device, label, keys }),
    headers: { 'Content-Type': 'application/json', 'X-XSRF-TOKEN': token() } });
  if (!given.pass || !given.key) {
    throw new Trouble('gateway');
  }
  return given;
}

/** Ends the session. True when the server has done so, or had none. */
export async function endSession() {
  try {
    const answered = await fetch('/logout', { method: 'POST', redirect: 'manual', credentials: 'same-origin',
      headers: { 'X-XSRF-TOKEN': token() } });
    return answered.type === 'opaqueredirect' || answered.ok;
  } catch {
    return false;
  }
}
