/** The look just made: where it is now, and all that one more tap can do to it. */
import { button, draw, h } from './dom.js';
import { inLanguage, t } from './texts.js';
import { REGISTER_MOST } from './visit.js';

const HOW = ['said', 'drew', 'showed', 'home_language', 'self_corrected', 'wrong_total'];
const LESS = ['copied', 'not_valid'];

/** What the screen may say about a look is never more than what is proven. */
export function stateText(last, nameOf) {
  const what = [nameOf(last.record.child), last.record.task].filter(Boolean).join(' · ');
  switch (last.state) {
    case 'saving': return `${t('saving')} ${what}`;
    case 'saved': return `${t('saved')} · ${what}`;
    case 'server': return `${t('onServer')} · ${what}`;
    case 'refused': return `${t('refused')} · ${what}`;
    case 'undone': return `${t('undone')} · ${what}`;
    default: return t('notSaved', { what: [what, last.record.skill, last.record.tags.join(' ')].join(' ') });
  }
}

function chips(visit, last, act) {
  const skill = visit.table.skills.find((s) => s.code === last.record.skill);
  const chip = (code, words) => button(`tag-${code}`, () => act.tag(code),
    { class: 'chip', 'aria-pressed': String(last.record.tags.includes(code)) }, words);
  const helpChip = (code) => button(`as-${code}`, () => act.lastHelp(code),
    { class: 'chip', 'aria-pressed': String(last.record.help === code) }, t(code));
  return h('details', { class: 'more', open: last.moreOpen },
    h('summary', { 'data-key': 'more',
      onclick: (e) => { last.moreOpen = !e.currentTarget.parentElement.open; } }, t('more')),
    h('div', { class: 'chips', role: 'group', 'aria-label': t('help') },
      ['none', 'cubes', 'prompt', 'modelled'].map(helpChip)),
    h('div', { class: 'chips', role: 'group', 'aria-label': t('more') },
      (skill?.errors ?? []).map((e) => chip(e.code, inLanguage(e.text))),
      [...HOW, ...LESS].map((code) => chip(code, t(code)))));
}

function others(visit, last, nameOf, act) {
  const rest = visit.seated.filter((child) => child !== last.record.child);
  return rest.length > 0 && visit.seated.length <= REGISTER_MOST
    && h('div', { class: 'chips', role: 'group', 'aria-label': t('otherChild') },
      h('span', { class: 'what' }, t('otherChild')),
      rest.map((child) => button(`move-${child}`, () => act.move(child), { class: 'chip' }, nameOf(child))));
}

export function drawLast(region, visit, last, nameOf, act) {
  const alive = last && ['saved', 'server'].includes(last.state);
  const isLook = alive && last.record.step !== null;
  const about = visit.armedChild ?? last?.record.child;
  draw(region,
    h('div', { class: 'last-head' },
      h('h2', {}, t('last')),
      h('p', { class: last?.state === 'failed' ? 'state failed' : 'state' },
        last ? stateText(last, nameOf) : t('lastNone')),
      alive && button('undo', act.undo, { class: 'strong' }, Date.now() < last.undoUntil ? t('undo') : t('takeBack'))),
    isLook && others(visit, last, nameOf, act),
    isLook && chips(visit, last, act),
    about && h('form', { class: 'note', onsubmit: (e) => { e.preventDefault(); act.note(e.target.elements.note); } },
      h('label', { class: 'field' }, h('span', {}, t('note', { name: nameOf(about) })),
        h('input', { name: 'note', 'data-key': 'note', maxlength: 2000, autocomplete: 'off' })),
      h('button', { type: 'submit', 'data-key': 'add-note' }, t('addNote'))));
}
