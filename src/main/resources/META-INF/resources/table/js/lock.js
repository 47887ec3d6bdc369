/**
 * What the screen does when nobody touches it: after a minute it covers itself, and one tap brings it back and does
 * nothing else; after five minutes it asks for the PIN, if one was chosen on this tablet. Wrong PINs wait longer each
 * time, and the fifth ends the sign-in.
 */
import { h } from './dom.js';
import * as outbox from './outbox.js';
import { hasPin, rightPin } from './pin.js';

const COVER_MS = 60000;
const LOCK_MS = 300000;
const WAIT_MS = [0, 0, 2000, 5000, 15000];
const MOST_WRONG = 5;
const QUIET = 'dialog.number-card[open], dialog.stopped[open]';

export class Lock {
  #at = Date.now();
  #mono = performance.now();
  #noted = 0;
  #cover = null;
  #timer = 0;

  /** @param page {owner(): adult's number or null when nothing is shown, t, end(): ends the sign-in} */
  constructor(page) {
    this.page = page;
    for (const event of ['pointerdown', 'keydown']) {
      document.addEventListener(event, () => { if (!this.#cover) { this.#touched(); } }, true);
    }
    document.addEventListener('visibilitychange', () => this.#look());
    this.#arm();
  }

  /** Before a class is shown: covers the screen when this adult left it longer ago than a PIN forgives. */
  async opening(owner) {
    const left = (await outbox.headOfPage(`active:${owner}`))?.value;
    if (left !== undefined && await hasPin(owner) && !(Date.now() - left >= 0 && Date.now() - left < LOCK_MS)) {
      this.#at = 0;
      this.#show();
    } else {
      this.#touched();
    }
  }

  #idle() {
    const wall = Date.now() - this.#at;
    return wall < 0 ? LOCK_MS : Math.max(wall, performance.now() - this.#mono);
  }

  #touched() {
    this.#at = Date.now();
    this.#mono = performance.now();
    this.#arm();
    const owner = this.page.owner();
    if (owner && Math.abs(this.#at - this.#noted) > 15000) {
      this.#noted = this.#at;
      outbox.rememberPlain(`active:${owner}`, owner, this.#at).catch(() => {});
    }
  }

  #arm() {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#look(), Math.max(500, COVER_MS - this.#idle()));
  }

  #look() {
    const idle = this.#idle();
    if (this.page.owner() && !this.#cover && idle >= (document.querySelector(QUIET) ? LOCK_MS : COVER_MS)) {
      this.#show();
      return;
    }
    if (idle < COVER_MS || document.querySelector(QUIET)) {
      clearTimeout(this.#timer);
      this.#timer = setTimeout(() => this.#look(), Math.max(500, Math.min(COVER_MS, LOCK_MS - idle)));
    }
  }

  #show() {
    document.getElementById('all').inert = true;
    this.#cover = h('dialog', { class: 'cover', 'aria-label': this.page.t('covered') },
      h('button', { type: 'button', class: 'cover-tap', 'data-key': 'uncover', onclick: () => this.#tapped() },
        this.page.t('covered')));
    this.#cover.addEventListener('cancel', (event) => { event.preventDefault(); this.#tapped(); });
    document.body.append(this.#cover);
    this.#cover.showModal();
  }

  #uncover() {
    this.#cover?.remove();
    this.#cover = null;
    document.getElementById('all').inert = false;
    this.#touched();
  }

  async #tapped() {
    const owner = this.page.owner();
    if (this.#idle() < LOCK_MS || !owner || !await hasPin(owner)) {
      this.#uncover();
    } else if (!this.#cover.querySelector('form')) {
      this.#ask(owner);
    }
  }

  #ask(owner, said = '') {
    const { t } = this.page;
    const input = h('input', { type: 'password', inputmode: 'numeric', autocomplete: 'off', 'data-key': 'pin',
      maxlength: 8, required: true });
    const form = h('form', { class: 'pin' },
      h('label', { class: 'field' }, h('span', {}, t('pinAsk')), input),
      h('p', { role: 'status', 'data-key': 'pin-said' }, said),
      h('div', { class: 'starts' },
        h('button', { type: 'submit', class: 'primary', 'data-key': 'pin-open' }, t('pinOpen')),
        h('button', { type: 'button', 'data-key': 'pin-out', onclick: () => this.#end('out') }, t('signOut'))));
    form.addEventListener('submit', (event) => { event.preventDefault(); this.#try(owner, input, form); });
    this.#cover.replaceChildren(form);
    input.focus();
  }

  async #try(owner, input, form) {
    const { t } = this.page;
    const key = `tries:${owner}`;
    const before = (await outbox.headOfPage(key))?.value ?? { wrong: 0, at: 0 };
    const since = Date.now() - before.at;
    const wait = WAIT_MS[before.wrong] - since;
    if (since >= 0 && wait > 0) {
      form.querySelector('[role=status]').textContent = t('pinWait', { n: Math.ceil(wait / 1000) });
      return;
    }
    // Counted before it is looked at, so that closing the page gives no further try.
    const wrong = before.wrong + 1;
    await outbox.rememberPlain(key, owner, { wrong, at: Date.now() });
    if (await rightPin(owner, input.value)) {
      await outbox.forgetPage(key);
      this.#uncover();
    } else if (wrong >= MOST_WRONG) {
      await this.#end('pinEnded');
    } else {
      const left = MOST_WRONG - wrong;
      this.#ask(owner, left === 1 ? t('pinLast') : t('pinWrong', { n: left }));
    }
  }

  async #end(why) {
    await this.page.end(why);
    this.#uncover();
  }
}
