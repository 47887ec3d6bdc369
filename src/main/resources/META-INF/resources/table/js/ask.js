/**
 * One question to ask a child now, and what was put down to look at again. The server chose the question and the order of
 * the numbers from everything seen; the page knows neither why, nor anything of it. Shown on a tap, as children read.
 */
import { button, dialog, h } from './dom.js';
import { inLanguage, t } from './texts.js';
import { showNumber } from './view-task.js';

const of = (visit, child) => visit.table.children.find((c) => c.child === child);

/** The question and the number for a child on the skill in hand; a number tried in this visit gives way to the next. */
export function proposal(visit, child) {
  const ask = of(visit, child)?.ask?.[visit.skill];
  const numbers = ask?.numbers ?? [];
  const tried = visit.tried[`${child} ${visit.skill}`] ?? [];
  const number = numbers.find((n) => !tried.includes(n)) ?? numbers[0] ?? null;
  const words = visit.skillInHand?.questions?.[ask?.question] ?? null;
  return words || number ? { words, number } : null;
}

export function askButton(visit, child, nameOf, act) {
  return proposal(visit, child) && button(`ask-${child}`, () => act.ask(child),
    { class: 'ask', 'aria-label': t('askNow', { name: nameOf(child) }) }, t('ask'));
}

export function openAsk(visit, child, nameOf, act) {
  const { words, number } = proposal(visit, child);
  const box = dialog('ask-card', 'ask-title',
    h('h2', { id: 'ask-title' }, t('askNow', { name: nameOf(child) })),
    number && h('p', { class: 'big' }, number),
    words && h('p', {}, inLanguage(words)),
    h('div', { class: 'starts' },
      number && button('use', () => { act.useNumber(number); box.close(); }, { class: 'primary' }, t('useNumber')),
      number && button('show-ask', () => { act.useNumber(number); box.close(); showNumber(number); }, {}, t('showNumber')),
      button('close', () => box.close(), {}, t('close'))));
}

/**
 * Open table tasks of the children at the table, folded; a tap takes the skill in hand. `key` names this list: the one
 * before a visit stays in the page, hidden, while the one in it is shown.
 */
export function againList(key, visit, nameOf, act) {
  const rows = visit.seated.flatMap((child) => (of(visit, child)?.again ?? [])
    .map((code) => ({ child, skill: visit.table.skills.find((s) => s.code === code) })).filter(({ skill }) => skill));
  return rows.length > 0 && h('details', { class: 'again', open: visit.againOpen },
    h('summary', { 'data-key': key,
      onclick: (e) => { visit.againOpen = !e.currentTarget.parentElement.open; } }, t('again', { n: rows.length })),
    h('ul', {}, rows.map(({ child, skill }) => h('li', {}, button(`${key}-${child}-${skill.code}`,
      () => act.skill(skill.code), { 'aria-pressed': String(visit.skill === skill.code) },
      `${nameOf(child)}: ${inLanguage(skill.title)}`)))));
}
