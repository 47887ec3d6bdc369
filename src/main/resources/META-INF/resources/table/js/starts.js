/**
 * Short starts of the first weeks: one child at a time, a few tasks one after another, three minutes. Offered as long as
 * no unit is in hand. Whom this tablet has met is known at once; whom others met, from the next opening on.
 */
import { button, h } from './dom.js';
import { inLanguage, t } from './texts.js';

const tasksOf = (visit) => (visit.table.starts?.skills ?? [])
  .filter((code) => visit.table.skills.some((s) => s.code === code));

/** Before a visit: a button for each child who was not met yet. */
export function startButtons(visit, nameOf, act) {
  const met = [...(visit.table.starts?.met ?? []), ...visit.met];
  const left = visit.table.children.filter(({ child }) => !met.includes(child));
  return tasksOf(visit).length > 0 && left.length > 0
    && h('section', { class: 'sheet', 'aria-labelledby': 'short-starts' },
      h('h2', { id: 'short-starts' }, t('shortStarts', { n: left.length })),
      h('p', {}, t('shortStartsHint', { n: tasksOf(visit).length })),
      h('div', { class: 'starts', role: 'group', 'aria-labelledby': 'short-starts' },
        left.map(({ child }) => button(`meet-${child}`, () => act.meet(child), {}, nameOf(child)))));
}

/** During one: which of the tasks this is, and the way to the next. */
export function nextTask(visit, nameOf, act) {
  const tasks = tasksOf(visit);
  if (!visit.open || visit.meeting === null || visit.seated.length !== 1 || tasks.length === 0) {
    return null;
  }
  const next = visit.table.skills.find((s) => s.code === tasks[visit.meeting + 1]);
  return h('p', { class: 'turn' }, t('shortTask', { n: visit.meeting + 1, of: tasks.length }), ' ',
    next ? button('next-task', act.nextTask, {}, t('shortNext', { skill: inLanguage(next.title) }))
      : button('met', act.nextTask, {}, t('shortDone', { name: nameOf(visit.seated[0]) })));
}

/** One child at the table, the first task in hand. */
export function meet(visit, child) {
  visit.byHand = true;
  visit.seated = [child];
  visit.start();
  visit.meeting = 0;
  visit.armedChild = child;
  visit.takeSkill(tasksOf(visit)[0]);
}

/** The next task; after the last one the visit is over and the child met. */
export function further(visit) {
  const tasks = tasksOf(visit);
  visit.meeting += 1;
  if (visit.meeting < tasks.length) {
    visit.takeSkill(tasks[visit.meeting]);
    return;
  }
  visit.met = [...visit.met, visit.seated[0]];
  visit.end();
  visit.byHand = false;
}
