/**
 * Empties the outbox, one batch at a time and in order. One tab sends at a time. An entry leaves only when the
 * server names its id. Anything else, from a dead network to a gateway's page, leaves everything in place and is
 * tried again: after a pause that grows to a minute, and at once when the network or the page comes back.
 */
import * as outbox from './outbox.js';
import { Trouble, fetchTable, postLooks, token } from './server.js';

const BATCH = 100;
const FIRST_PAUSE_MS = 1000;
const LONGEST_PAUSE_MS = 60000;

export class Sender {
  #owner = null;
  #knownToken = null;
  #classId = null;
  #failures = 0;
  #timer = 0;
  #busy = false;
  #again = false;
  #release = false;
  #retryAfter = 0;
  #batch = BATCH;
  #tell;

  /** @param tell called as tell({settled: ids, trouble: word or null, table: fresh class or null}) */
  constructor(tell) {
    this.#tell = tell;
  }

  /** Whose entries may go out. The server must have named this adult in this very session before anything is sent. */
  signedIn(owner, classId, csrf) {
    this.#owner = owner;
    this.#classId = classId;
    this.#knownToken = csrf;
    this.#failures = 0;
  }

  /** Another adult's looks must never leave under this session, nor this adult's under another. */
  signedOut() {
    this.#knownToken = null;
  }

  /** Sends what may go now. With `release` the seconds for undoing are over: the page is being left. */
  async drain(release = false) {
    this.#release ||= release;
    if (this.#busy) {
      this.#again = true;
      return;
    }
    this.#busy = true;
    clearTimeout(this.#timer);
    try {
      do {
        this.#again = false;
        const now = this.#release;
        this.#release = false;
        await this.#alone(() => this.#send(now));
      } while (this.#again);
    } finally {
      this.#busy = false;
      await this.#plan();
    }
  }

  /** The network or the page is back: no reason to wait out a pause. */
  wake() {
    this.#failures = 0;
    return this.drain();
  }

  #alone(work) {
    // Locks exist on secure origins only. Without them two tabs may send the same look; the server keeps one.
    return navigator.locks
      ? navigator.locks.request('stepwell-table-send', { ifAvailable: true }, (lock) => (lock ? work() : undefined))
      : work();
  }

  async #send(release) {
    if (!this.#owner) {
      return;
    }
    try {
      for (;;) {
        const waiting = await outbox.all();
        if (!waiting.some((entry) => entry.owner === this.#owner && entry.state === 'waiting')) {
          break;
        }
        const csrf = await this.#proveAdult();
        const batch = await outbox.take(this.#owner, this.#batch, release);
        if (batch.length === 0) {
          break;
        }
        await this.#post(batch, csrf, release);
        this.#failures = 0;
        this.#batch = Math.min(BATCH, this.#batch * 2);
      }
      this.#tell({ settled: [], trouble: null });
    } catch (error) {
      const trouble = error instanceof Trouble ? error : new Trouble('tablet');
      this.#failures += 1;
      this.#retryAfter = trouble.retryAfterMs;
      if (trouble.why === 'signin' || trouble.why === 'token') {
        this.#knownToken = null;
      }
      this.#tell({ settled: [], trouble: trouble.why });
    }
  }

  /**
   * The token changes with every sign-in. While it is the one under which the server named this adult, the session is
   * this adult's; when it changed, the server is asked again. The proven token goes out in the header, so that a
   * sign-in between asking and sending makes the server turn the request away.
   */
  async #proveAdult() {
    if (this.#knownToken && token() === this.#knownToken) {
      return this.#knownToken;
    }
    const table = await fetchTable(this.#classId);
    const now = token();
    if (table.adult.signIn !== this.#owner) {
      this.#tell({ settled: [], trouble: 'other', table });
      throw new Trouble('other');
    }
    this.#knownToken = now;
    return now;
  }

  async #post(batch, csrf, keepalive) {
    try {
      const verdicts = await postLooks(batch.map((entry) => entry.record), csrf, keepalive);
      const named = await outbox.settle(this.#owner, verdicts);
      if (named === 0) {
        throw new Trouble('gateway');
      }
      const kept = verdicts.filter((v) => v.status === 'stored' || v.status === 'duplicate').map((v) => v.id);
      this.#tell({ settled: kept, trouble: null });
    } catch (error) {
      if (error instanceof Trouble && (error.why === 'large' || error.why === 'malformed')) {
        if (batch.length > 1) {
          this.#batch = Math.max(1, Math.floor(batch.length / 4));
          return;
        }
        // One record that the server will not even read must not hold up the others.
        await outbox.settle(this.#owner,
          [{ id: batch[0].id, status: 'refused', reason: error.why === 'large' ? '@large' : '@malformed' }]);
        return;
      }
      throw error;
    }
  }

  /** A timer only while something waits. */
  async #plan() {
    clearTimeout(this.#timer);
    const waiting = (await outbox.all()).filter((e) => e.owner === this.#owner && e.state === 'waiting');
    if (waiting.length === 0) {
      return;
    }
    // Never shorter than a second: another tab may be the one that sends.
    let pause = Math.min(Math.max(1000, waiting[0].heldUntil - Date.now() + 50), outbox.HOLD_MS + 50);
    if (this.#failures > 0) {
      const most = Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** this.#failures);
      pause = Math.max(pause, this.#retryAfter, most / 2 + Math.random() * (most / 2));
    }
    this.#timer = setTimeout(() => this.drain(), pause);
  }
}
