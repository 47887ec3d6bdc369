/** Skill, number and help: what the next look is about. */
import { button, dialog, draw, h, icon } from './dom.js';
import { inLanguage, t } from './texts.js';

function skillChoice(visit, act) {
  return h('label', { class: 'field' }, h('span', {}, t('skill')),
    h('select', { 'data-key': 'skill', onchange: (e) => act.skill(e.target.value) },
      visit.table.skills.map((s) =>
        h('option', { value: s.code, selected: s.code === visit.skill }, inLanguage(s.title)))));
}

/** One big number, for the tablet turned round. */
export function showNumber(task) {
  const box = dialog('number-card', 'number-card-text', h('p', { id: 'number-card-text' }, task),
    button('close', () => box.close(), {}, t('close')));
}

function numberChoice(visit, act) {
  const { numbers } = visit;
  return h('div', { class: 'number', role: 'group', 'aria-label': t('number') },
    h('label', { class: 'field' }, h('span', {}, t('number')),
      h('input', { 'data-key': 'task', class: 'task', value: visit.task, maxlength: 40, autocomplete: 'off',
        enterkeyhint: 'done', oninput: (e) => act.task(e.target.value.trim()) })),
    numbers.length > 1 && button('next', act.nextNumber, { class: 'strong' }, t('nextNumber')),
    button('show', () => showNumber(visit.task), {}, t('showNumber')));
}

/** Cubes on the table hold for the visit; a prompt or a shown way holds for one look. */
function helpChoice(visit, act) {
  const extra = (value, name, sign) => button(`help-${name}`, () => act.extraHelp(value),
    { 'aria-pressed': String(visit.extraHelp === value), class: 'help' }, icon(sign), h('span', {}, t(name)));
  const cubes = (value, name) => button(`cubes-${name}`, () => act.cubes(value),
    { 'aria-pressed': String(visit.cubesOut === value), class: 'help' }, h('span', {}, t(name)));
  const base = visit.cubesOut ? extra(null, 'helpCubes', 'cubes') : extra(null, 'helpNone', 'none');
  return [
    h('div', { class: 'choice', role: 'group', 'aria-label': t('cubesOut') },
      h('span', { class: 'what' }, icon('cubes'), t('cubesOut')), cubes(true, 'yes'), cubes(false, 'no')),
    h('div', { class: 'choice', role: 'group', 'aria-label': t('help') },
      h('span', { class: 'what' }, t('help')),
      base, extra('prompt', 'helpPrompt', 'words'), extra('modelled', 'helpModelled', 'modelled')),
  ];
}

export function drawTask(region, visit, act) {
  draw(region,
    h('div', { class: 'task-row' }, skillChoice(visit, act), numberChoice(visit, act)),
    h('div', { class: 'help-row' }, helpChoice(visit, act)));
}
