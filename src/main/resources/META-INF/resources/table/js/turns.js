/**
 * Which group is at the teacher table now: from the groups and the rotations that came with the class, so that it is known
 * without network too. It proposes and never takes a visit away.
 */
import * as clock from './clock.js';
import { button, h } from './dom.js';
import { t } from './texts.js';

/** The turn that runs, the change before it included; null before and after the block. */
export function turnNow(table, now = Date.now() - (clock.offsetMs() ?? 0)) {
  const turns = (table.block ?? []).map((turn) => ({ ...turn, from: Date.parse(turn.starts), to: Date.parse(turn.ends) }));
  return turns.length > 0 && now >= turns[0].from ? turns.find((turn) => now < turn.to) ?? null : null;
}

/** The group of that turn, if anybody of it may be seen here. */
export function groupNow(table, now) {
  const turn = turnNow(table, now);
  const group = (table.groups ?? []).find((g) => g.group === turn?.group);
  return group && group.children.length > 0 ? group : null;
}

const sits = (visit, group) => group.children.length === visit.seated.length
  && group.children.every((child) => visit.seated.includes(child));

/** Before a visit: a button per group, the one whose turn it is marked. */
export function groupButtons(visit, act) {
  const groups = (visit.table.groups ?? []).filter((group) => group.children.length > 0);
  const now = groupNow(visit.table);
  return groups.length > 0 && h('div', { class: 'starts', role: 'group', 'aria-label': t('groupsToday') },
    groups.map((group) => button(`group-${group.group}`, () => act.group(group),
      { 'aria-pressed': String(sits(visit, group)) },
      t('groupNumber', { n: group.group }), group === now && ` · ${t('now')}`)));
}

/** During a visit: whose turn it is when it is another group's. */
export function nextGroup(visit, act) {
  const now = visit.open && groupNow(visit.table);
  return now && !sits(visit, now) && !now.children.some((child) => visit.seated.includes(child))
    && h('p', { class: 'turn' }, t('groupDue', { n: now.group }), ' ',
      button('turn', () => act.turn(now), {}, t('groupTake', { n: now.group })));
}
