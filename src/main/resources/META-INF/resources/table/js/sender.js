/**
 * Empties the outbox, one batch at a time and in order. One tab sends at a time. An entry leaves only when the
 * server names its id. Anything else, from a dead network to a gateway's page, leaves everything in place and is
 * tried again: after a pause that grows to a minute, and at once when the network or the page comes back.
 */
import * as outbox from './outbox.js';
import * as vault from './vault.js';
import { Trouble, adultOf, fetchTable, postLooks, token } from './server.js';

const BATCH = 100;
const FIRST_PAUSE_MS = 1000;
const LONGEST_PAUSE_MS = 60000;
const LEAVING_MS = 2000;

export class Sender {
  #owner = null;
  #knownToken = null;
  #seenToken = null;
  #classId = null;
  #failures = 0;
  #timer = 0;
  #busy = false;
  #again = false;
  #running = Promise.resolve();
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
    this.#owner = null;
    this.#knownToken = null;
  }

  /** Sends what may go now. With `release` the seconds for undoing are over: the page is being left. */
  drain(release = false) {
    this.#release ||= release;
    if (this.#busy) {
      this.#again = true;
    } else {
      this.#running = this.#run();
    }
    return this.#running;
  }

  /**
   * Sends before this tab goes to another page: what a hidden tab still finishes ends with a page that is left. Waits
   * two seconds at most; what did not go by then stays on the tablet.
   */
  leave() {
    return Promise.race([this.drain(true).catch(() => {}), new Promise((over) => { setTimeout(over, LEAVING_MS); })]);
  }

  async #run() {
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
    try {
      const owners = new Set((await outbox.heads()).filter((e) => e.state === 'waiting').map((e) => e.owner));
      await this.#notice();
      if (owners.delete(this.#owner)) {
        await outbox.measure(this.#owner);
        await this.#sendOf(this.#owner, release);
      }
      for (const other of owners) {
        await this.#sendOf(other, release);
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

  /** What one adult's entries may leave by: that adult's pass, else that adult's own session; else they stay. */
  async #sendOf(owner, release) {
    for (;;) {
      const next = (await outbox.heads()).find((e) => e.owner === owner && e.state === 'waiting');
      if (!next) {
        return;
      }
      const pass = await vault.passFor(owner, next.classId);
      if (!pass && owner !== this.#owner) {
        return;
      }
      const by = pass ? { pass } : { csrf: await this.#proveAdult() };
      const batch = await outbox.take(owner, this.#batch, release, pass ? next.classId : null);
      if (batch.length === 0) {
        return;
      }
      try {
        await this.#post(owner, batch, by, release);
      } catch (error) {
        if (!pass || error.why !== 'signin') {
          throw error;
        }
        // Ended or past its days: what waits stays, and goes by a session of its adult.
        await vault.dropPass(owner, next.classId, pass);
        continue;
      }
      this.#failures = 0;
      this.#batch = Math.min(BATCH, this.#batch * 2);
    }
  }

  /** A token that changed means that somebody signed in: if it was another adult, this page is not theirs to see. */
  async #notice() {
    const now = token();
    if (this.#owner && this.#knownToken && now && now !== this.#knownToken && now !== this.#seenToken) {
      await this.#proveAdult().catch((error) => {
        if (error.why === 'other') {
          throw error;
        }
        this.#seenToken = error.why === 'signin' ? now : null;
      });
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
    if (adultOf(table) !== this.#owner) {
      this.#tell({ settled: [], trouble: 'other', table });
      throw new Trouble('other');
    }
    this.#knownToken = now;
    return now;
  }

  async #post(owner, batch, by, keepalive) {
    try {
      const verdicts = await postLooks(batch.map(outbox.wire), by, keepalive);
      const named = await outbox.settle(owner, verdicts);
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
        await outbox.settle(owner,
          [{ id: batch[0].id, status: 'refused', reason: error.why === 'large' ? '@large' : '@malformed' }]);
        return;
      }
      throw error;
    }
  }

  /** A timer only while something waits. */
  async #plan() {
    clearTimeout(this.#timer);
    const waiting = [];
    for (const entry of (await outbox.heads()).filter((e) => e.state === 'waiting')) {
      if (entry.owner === this.#owner || await vault.passFor(entry.owner, entry.classId)) {
        waiting.push(entry);
      }
    }
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
