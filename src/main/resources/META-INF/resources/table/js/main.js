/** Opens the Table: who is signed in, which class, what lies on this tablet; then connects views, desk and sender. */
import * as outbox from './outbox.js';
import * as clock from './clock.js';
import { Sender } from './sender.js';
import { adultOf, endSession, fetchTable, token } from './server.js';
import * as vault from './vault.js';
import { holdWhile, letGo } from './store.js';
import { equip } from './equip.js';
import { Lock } from './lock.js';
import { choosePin, hasPin } from './pin.js';
import { chooseInitials } from './initials.js';
import { openAsk } from './ask.js';
import { Visit } from './visit.js';
import { Desk } from './desk.js';
import { naming } from './names.js';
import { button, dialog, draw, h } from './dom.js';
import { hasText, switchLanguage, t } from './texts.js';
import { drawTask } from './view-task.js';
import { drawChildren, drawSetup } from './view-children.js';
import { drawPhrases } from './view-phrases.js';
import { drawLast } from './view-last.js';
import { countText, openOutbox } from './view-outbox.js';
import { actions } from './actions.js';
import { keepForOffline, takeNewVersion } from './offline.js';
import * as tally from './tally.js';
import { drawNotices } from './view-notices.js';

/** How long a class that the server gave may be opened again without asking it. */
const CLASS_FRESH_MS = 36 * 3600000;

const region = (id) => document.getElementById(id);
const state = { visit: null, desk: null, owner: null, trouble: null, persistent: true, offlineSince: null, otherTab: false,
  pin: false };
const sender = new Sender(hear);
const lock = new Lock({ owner: () => state.visit && state.owner, t, end: signOut });
holdWhile(() => Boolean(state.visit?.open), () => { state.otherTab = true; drawNotices(region('notices'), state); });
const otherTabs = 'BroadcastChannel' in window ? new BroadcastChannel('stepwell-table') : null;
otherTabs?.addEventListener('message', () => countWaiting());

/**
 * A button replaced between finger down and finger up would swallow the tap: drawing waits until every finger's tap is
 * through. A finger that is down again is another press: the end of the one before says nothing about it.
 */
const finger = { presses: new Map(), count: 0, owed: false };
const through = (pointer, press) => {
  if (finger.presses.get(pointer) === press) {
    finger.presses.delete(pointer);
  }
  if (finger.owed && finger.presses.size === 0) {
    draws();
  }
};
document.addEventListener('pointerdown', (e) => {
  finger.count += 1;
  finger.presses.set(e.pointerId, finger.count);
}, true);
document.addEventListener('click', (e) => {
  if (e.pointerId === undefined) {
    finger.presses.clear();
  } else {
    finger.presses.delete(e.pointerId);
  }
}, true);
document.addEventListener('pointerup', (e) => {
  const press = finger.presses.get(e.pointerId);
  setTimeout(() => through(e.pointerId, press), 50);
}, true);
// A word that is being composed, by dictation or for an accent, would break in two the same way.
document.addEventListener('compositionstart', () => finger.presses.set('word', 0), true);
document.addEventListener('compositionend', () => through('word', 0), true);
document.addEventListener('pointercancel', (e) => through(e.pointerId, finger.presses.get(e.pointerId)), true);

/** What the large regions were drawn from last: most news changes nothing in them, and a tap must show at once. */
const drawn = { visit: null, task: '', phrases: '' };
function drawIfOther(name, visit, what, work) {
  const from = JSON.stringify([t('language'), visit.skill, visit.seated, ...what]);
  if (drawn[name] !== from) {
    drawn[name] = from;
    work();
  }
}

function draws() {
  finger.owed = finger.presses.size > 0;
  if (finger.owed) {
    return;
  }
  const { visit, desk } = state;
  document.documentElement.lang = t('language') === 'Español' ? 'en' : 'es';
  document.title = `${t('title')} · Stepwell`;
  region('title').textContent = t('title');
  drawBar();
  drawNotices(region('notices'), state);
  if (!visit) {
    return;
  }
  visit.propose();
  const nameOf = nameNow();
  region('setup').hidden = visit.open;
  region('visit').hidden = !visit.open;
  if (visit.open) {
    if (drawn.visit !== visit) {
      Object.assign(drawn, { visit, task: '', phrases: '' });
    }
    drawIfOther('task', visit, [visit.task, visit.cubesOut, visit.extraHelp, visit.numbers],
      () => drawTask(region('task'), visit, act));
    drawChildren(region('children'), visit, nameOf, act);
    drawIfOther('phrases', visit, [visit.shield, visit.letters, visit.armedChild, visit.armedPhrase],
      () => drawPhrases(region('phrases'), visit, nameOf, act));
    drawLast(region('last'), visit, desk.last, nameOf, act);
  } else {
    drawSetup(region('setup'), visit, nameOf, act, vault.ready() && t(state.pin ? 'pinOther' : 'pinChoose'));
  }
}

const nameNow = () => naming(state.visit.table.children, state.visit.shield, state.visit.initials);

function drawBar() {
  const { visit } = state;
  draw(region('tools'),
    visit && button('shield', act.shield, { 'aria-pressed': String(visit.shield) }, t('shield')),
    visit && button('letters', act.letters, { 'aria-pressed': String(visit.letters) }, t('letters')),
    button('language', () => { switchLanguage(); draws(); }, {}, t('language')),
    visit && button('sign-out', () => signOut('out'), {}, t('signOut')),
    h('a', { href: '/', class: 'as-button', 'data-key': 'home', onclick: goHome }, t('home')));
  countWaiting();
}

/** A look tapped a moment ago is sent first, so that the screens behind this one know it. */
async function goHome(event) {
  if (!event.ctrlKey && !event.metaKey && !event.shiftKey) {
    event.preventDefault();
    await sender.leave();
    location.assign('/');
  }
}

let counting = Promise.resolve();

/** Of two counts under way the one begun last is shown; whoever waits for the older waits for that one. */
function countWaiting() {
  const mine = showCount(() => counting === mine);
  counting = mine;
  return mine.then(() => (counting === mine ? undefined : counting));
}

async function showCount(newest) {
  try {
    const entries = await outbox.heads();
    if (!newest()) {
      return;
    }
    const { visit, owner } = state;
    tally.count(entries);
    const text = countText(entries, owner);
    draw(region('count'), owner && visit
      ? button('outbox', () => openOutbox(visit, owner, nameNow(),
        state.trouble && t(state.trouble), () => sender.wake()), {}, text)
      : h('span', {}, text));
  } catch {
    draw(region('count'), h('span', {}, t('noStore')));
  }
}

/** What the sender found out. */
function hear({ settled, trouble }) {
  state.trouble = trouble && hasText(trouble) ? trouble : null;
  state.desk?.settled(settled);
  if (settled.length > 0) {
    otherTabs?.postMessage('settled');
  }
  if (trouble === 'other') {
    gate('other');
    return;
  }
  // With nothing to send nobody was asked, so nothing is known of the network.
  if (!trouble && settled.length > 0) {
    state.offlineSince = null;
  }
  draws();
}

/** Nothing of the class is shown; only how much waits. */
async function gate(why) {
  state.visit = null;
  state.desk = null;
  state.owner = null;
  document.querySelectorAll('dialog:not(.cover)').forEach((box) => box.close());
  sender.signedOut();
  region('setup').hidden = true;
  region('visit').hidden = true;
  region('gate').hidden = false;
  const entries = await outbox.heads().catch(() => []);
  draw(region('gate'), h('h2', {}, t('gateTitle')),
    h('p', {}, ['signin', 'token'].includes(why) ? null : why === 'network' ? t('gateOffline') : t(why)),
    entries.length > 0 && h('p', {}, t('gateWait', { count: entries.length })),
    h('div', { class: 'starts' },
      h('a', { class: 'as-button primary', href: '/login?next=/table/' }, t('signInButton')),
      button('retry', () => location.reload(), {}, t('retry'))));
  state.trouble = null;
  draws();
  sender.drain();
}

/** Seals what is here at once; the session ends now, or at the next opening with network. */
async function signOut(why) {
  const proof = token();
  await vault.sealAway();
  if (!await endSession()) {
    await outbox.rememberPlain('out', '', proof);
  }
  await gate(why);
}

/** Whether a sign-out made without network is still owed to the server. */
async function signOutOwed() {
  const proof = (await outbox.headOfPage('out').catch(() => null))?.value;
  if (proof !== undefined && proof === token() && !await endSession()) {
    return true;
  }
  await outbox.forgetPage('out').catch(() => {});
  return false;
}

async function openClass(table) {
  state.owner = adultOf(table);
  await lock.opening(state.owner).catch(() => {});
  state.visit = new Visit(table);
  await state.visit.recall().catch(() => {});
  state.pin = await hasPin(state.owner).catch(() => false);
  state.desk = new Desk(state.owner, state.visit, changed, countWaiting);
  region('class').textContent = table.class.name;
  // What waits is said before anything can be tapped, so that nobody reads "all on the server" first.
  await countWaiting();
  draws();
}

/** After anything that a tap changed: draw, remember, and let the sender plan. */
function changed() {
  draws();
  // A look goes to the disk before anything else does: what the visit remembers follows when it is there.
  if (state.desk?.last?.state !== 'saving') {
    state.visit?.remember().catch(() => {});
  }
  letGo().catch(() => {});
  if (state.desk?.last?.state === 'saved') {
    sender.drain();
    clearTimeout(state.undoTimer);
    state.undoTimer = setTimeout(draws, outbox.HOLD_MS + 100);
  }
}

const act = { ...actions(state, changed, dialog),
  ask: (child) => openAsk(state.visit, child, nameNow(), act),
  pin: () => choosePin(state.owner, () => { state.pin = true; draws(); }),
  initials: () => chooseInitials(state.visit, naming(state.visit.table.children, false), changed) };

/** For the next hours without network: key, pass, and the class as it is now, on secure addresses and sealed only. */
async function prepare(table) {
  const before = vault.ready();
  await equip(table).catch(() => {});
  if (vault.ready()) {
    if (!before && state.visit?.untouched) {
      await state.visit.recall().catch(() => {});
    }
    state.pin = await hasPin(state.owner).catch(() => false);
    await outbox.rememberPage('class', adultOf(table), { table, at: Date.now(), offset: clock.offsetMs() })
      .catch(() => {});
    draws();
  }
}

/** The class that this tablet was given last, if the key of its adult is still here. */
async function keptClass() {
  const head = await outbox.headOfPage('class');
  if (head?.box && !await vault.unlock(head.owner)) {
    return null;
  }
  return outbox.recallPage('class');
}

async function forgetClass(table) {
  await outbox.forgetPage('class');
  if (table) {
    const { key, initialsKey } = new Visit(table);
    await outbox.forgetPage(key);
    await outbox.forgetPage(initialsKey);
  }
}

async function start() {
  draws();
  await tally.compare().catch(() => {});
  const classId = new URLSearchParams(location.search).get('class');
  if (await signOutOwed()) {
    await gate('out');
    return;
  }
  try {
    const table = await fetchTable(classId);
    const owner = adultOf(table);
    await vault.sealAway((other) => other !== owner).catch(() => {});
    await vault.unlock(owner).catch(() => {});
    sender.signedIn(owner, classId, token());
    await openClass(table);
    await prepare(table);
  } catch (error) {
    const kept = await keptClass().catch(() => null);
    if (error.why === 'missing') {
      // The class is no longer this adult's: nothing of it stays here but looks that wait, which are the server's to judge.
      await forgetClass(kept?.table).catch(() => {});
    }
    const usable = kept && Date.now() - kept.at < CLASS_FRESH_MS && kept.at - Date.now() < CLASS_FRESH_MS;
    if (!['network', 'gateway', 'server', 'busy'].includes(error.why) || !usable) {
      await gate(error.why ?? 'server');
      return;
    }
    clock.recall(kept.offset);
    state.trouble = error.why;
    state.offlineSince = kept.at;
    sender.signedIn(adultOf(kept.table), classId, null);
    await openClass(kept.table);
  }
  sender.drain();
}

window.addEventListener('online', () => sender.wake());
document.addEventListener('visibilitychange', () =>
  (document.visibilityState === 'hidden' ? sender.drain(true) : sender.wake()));
setInterval(() => { if (state.visit?.open || state.visit?.table.block?.length) { draws(); } }, 15000);
navigator.serviceWorker?.addEventListener('message', (e) => { if (e.data === 'send') { sender.wake(); } });

start().then(async () => {
  state.persistent = await navigator.storage?.persist?.().catch(() => false) ?? false;
  drawNotices(region('notices'), state);
  await keepForOffline();
  await takeNewVersion(() => !state.visit?.open);
});
