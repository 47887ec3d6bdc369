/** What waits on this tablet: always counted in the bar, and in full in a dialog, with a way to mend each. */
import { button, dialog, h } from './dom.js';
import * as outbox from './outbox.js';
import { uuidv7 } from './uuid.js';
import { WORTH_SAYING_MS, stamp } from './clock.js';
import { currentLanguage, t } from './texts.js';

const COLUMNS = ['id', 'observed_at', 'child', 'skill', 'task', 'step', 'help', 'kind', 'observer', 'tags', 'note',
  'replaces', 'withdrawn', 'clock_offset_ms'];

export const hour = (millis) => new Intl.DateTimeFormat(currentLanguage(),
  Date.now() - millis < 20 * 3600000 ? { timeStyle: 'short' } : { dateStyle: 'medium', timeStyle: 'short' })
  .format(millis);

/** The line of the bar: how many of this adult's wait and since when, how many were not taken, how many are others'. */
export function countText(entries, owner) {
  const waiting = entries.filter((e) => e.owner === owner && e.state === 'waiting');
  const refused = entries.filter((e) => e.owner === owner && e.state === 'refused').length;
  const others = entries.filter((e) => e.owner !== owner).length;
  return [
    waiting.length > 0 ? t('wait', { count: waiting.length, since: hour(Math.min(...waiting.map((e) => e.at))) })
      : refused === 0 && t('allSent'),
    refused > 0 && t('refusedCount', { count: refused }),
    others > 0 && t('othersCount', { count: others }),
  ].filter(Boolean).join(' · ');
}

const quote = (value) => (/[",\r\n]/.test(value) ? `"${value.replaceAll('"', '""')}"` : value);

/** The time of a look by the server's clock, as the server itself takes it, in the tablet's own offset. */
function serverTime({ observed_at: at, clock_offset_ms: off }) {
  if (off === null || Math.abs(off) < WORTH_SAYING_MS) {
    return at;
  }
  const [, sign, hours, minutes] = /([+-])(\d\d):(\d\d)$/.exec(at);
  return stamp(new Date(Date.parse(at) - off), (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes)));
}

/** The entries as observations.csv, which the server also takes as an upload. */
export function asCsv(entries, observer) {
  const rows = entries.map(({ record }) => COLUMNS.map((name) => {
    const value = name === 'observer' ? observer : name === 'observed_at' ? serverTime(record) : record[name];
    return quote(Array.isArray(value) ? value.join(';') : String(value ?? ''));
  }).join(','));
  return `${[COLUMNS.join(','), ...rows].join('\n')}\n`;
}

function download(entries, observer) {
  const url = URL.createObjectURL(new Blob([asCsv(entries, observer)], { type: 'text/csv' }));
  const link = h('a', { href: url, download: `stepwell-looks-${new Date().toISOString().slice(0, 10)}.csv` });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), 60000);
}

function refusedItem(entry, visit, nameOf, done) {
  const { record } = entry;
  const reason = !record ? t('sealedHere') : entry.reason?.startsWith('@') ? t(entry.reason.slice(1)) : entry.reason || t('noReason');
  const mend = (change) => done(outbox.again(entry.id, { ...record, ...change, id: uuidv7() }));
  const other = h('select', { 'aria-label': t('toChild'),
    onchange: (e) => mend({ child: e.target.value }) }, h('option', { value: '' }, t('toChild')),
  visit.table.children.map((c) => h('option', { value: c.child }, nameOf(c.child))));
  const drop = button('drop', () => {
    if (drop.dataset.sure) {
      done(outbox.discard(entry.id));
    } else {
      drop.dataset.sure = 'yes';
      drop.textContent = t('dropSure');
    }
  }, {}, t('drop'));
  return h('li', {},
    h('p', {}, h('b', {}, [record && nameOf(record.child), record?.skill, record?.task, hour(entry.at)].filter(Boolean)
      .join(' · '))),
    h('p', { class: 'reason' }, reason),
    h('div', { class: 'chips' },
      button('again', () => done(outbox.again(entry.id)), {}, t('tryAgain')),
      record && button('new', () => mend({}), {}, t('asNew')), record && other, drop));
}

/** Opens the dialog. `sendNow` empties what may go; `troubleText` says why something waits. */
export async function openOutbox(visit, owner, nameOf, troubleText, sendNow) {
  const entries = await outbox.all();
  const mine = entries.filter((e) => e.owner === owner);
  const refused = mine.filter((e) => e.state === 'refused');
  const others = entries.length - mine.length;
  const done = async (work) => { await work; box.close(); sendNow(); };
  const box = dialog('outbox', 'outbox-title',
    h('h2', { id: 'outbox-title' }, t('outbox')),
    h('p', {}, countText(entries, owner)),
    troubleText && h('p', {}, troubleText),
    others > 0 && h('p', {}, t('sealed')),
    h('ul', { class: 'refused' }, refused.map((entry) => refusedItem(entry, visit, nameOf, done))),
    mine.length > 0 && h('p', { class: 'quiet' }, t('fileHint')),
    h('div', { class: 'starts' },
      button('send', () => { box.close(); sendNow(); }, { class: 'primary' }, t('sendNow')),
      mine.length > 0 && button('file', () => download(mine.filter((e) => e.record), visit.table.adult.signIn), {}, t('toFile')),
      button('close', () => box.close(), {}, t('close'))));
}
