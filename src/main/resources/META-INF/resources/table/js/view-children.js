/** The children: whom to seat before a visit, and the large cards of those at the table. */
import { againList, askButton } from './ask.js';
import { button, draw, h } from './dom.js';
import { t } from './texts.js';
import { nextTask, startButtons } from './starts.js';
import { groupButtons, nextGroup } from './turns.js';
import { REGISTER_MOST } from './visit.js';

const ring = (seen) => h('span', { class: seen ? 'ring full' : 'ring', 'aria-hidden': 'true' });

const looksText = (n) => (n === 1 ? t('look') : t('looks', { n }));

function summary(visit, nameOf) {
  return visit.summary && h('section', { class: 'sheet summary', 'aria-labelledby': 'summary-title' },
    h('h2', { id: 'summary-title' }, t('lastVisit')),
    h('ul', {}, visit.summary.map(({ child, looks }) =>
      h('li', {}, ring(looks > 0), h('b', {}, nameOf(child)), ` ${looks ? looksText(looks) : t('unseen')}`))));
}

/** Before a visit: every child of the class by name, one tap each. */
export function drawSetup(region, visit, nameOf, act, pinText) {
  draw(region,
    summary(visit, nameOf),
    h('h2', { id: 'who' }, t('who')),
    h('p', {}, t('whoHint')),
    groupButtons(visit, act),
    h('div', { class: 'roster', role: 'group', 'aria-labelledby': 'who' }, visit.table.children.map(({ child }) =>
      button(`seat-${child}`, () => act.seat(child), { class: 'card',
        'aria-pressed': String(visit.seated.includes(child)) },
      h('span', { class: 'name' }, nameOf(child)),
      !visit.seenThisWeek(child) && [ring(false), h('span', { class: 'sw-unseen' }, `, ${t('unseenWeek')}`)]))),
    h('div', { class: 'starts' },
      button('start', act.start, { class: 'primary', disabled: visit.seated.length === 0 }, t('start')),
      button('all', act.everyone, {}, t('everyone')),
      button('none', act.nobody, {}, t('nobody'))),
    againList('before-again', visit, nameOf, act),
    h('div', { class: 'starts' }, button('initials', act.initials, {}, t('initialsChoose')),
      pinText && button('pin-choose', act.pin, {}, pinText)),
    startButtons(visit, nameOf, act));
}

/** During a visit: a tap on a card takes this child in hand, or logs the phrase that is in hand. */
export function drawChildren(region, visit, nameOf, act) {
  draw(region,
    h('div', { class: 'region-head' },
      h('h2', { id: 'at-table' }, t('children')),
      h('span', { class: 'quiet' }, t('minutes', { n: visit.minutes() })),
      button('stop', act.stop, {}, t('stop')),
      button('end', act.end, {}, t('end'))),
    nextGroup(visit, act),
    nextTask(visit, nameOf, act),
    h('div', { class: 'cards', role: 'group', 'aria-labelledby': 'at-table' }, visit.seated.map((child) => {
      const seen = (visit.counts[child] ?? 0) > 0;
      return h('div', { class: 'place' },
        button(`child-${child}`, () => act.child(child), { class: 'card',
          'aria-pressed': String(visit.armedChild === child) },
        h('span', { class: 'name' }, nameOf(child)),
        h('span', { class: 'mark' }, ring(seen), seen ? t('seen') : t('unseen'))),
        visit.seated.length <= REGISTER_MOST && askButton(visit, child, nameOf, act));
    })),
    againList('again', visit, nameOf, act));
}
