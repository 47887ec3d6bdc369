/** What each tap means, in one place, so that views only name it. */
import { button, h } from './dom.js';
import { further, meet } from './starts.js';
import { t } from './texts.js';

export function actions(state, changed, dialog) {
  const visit = () => state.visit;
  const does = (work) => (...args) => { work(...args); changed(); };
  return {
    seat: does((child) => { visit().byHand = true; visit().toggleSeat(child); }),
    group: does((group) => { visit().byHand = true; visit().seat(group); }),
    turn: does((group) => { visit().end(); visit().seat(group); visit().start(); state.desk.last = null; }),
    everyone: does(() => { visit().seated = visit().table.children.map((c) => c.child); }),
    nobody: does(() => { visit().byHand = true; visit().seated = []; }),
    start: does(() => { visit().start(); state.desk.last = null; }),
    meet: does((child) => { meet(visit(), child); state.desk.last = null; }),
    nextTask: does(() => further(visit())),
    end: does(() => { visit().end(); visit().byHand = false; }),
    skill: does((code) => visit().takeSkill(code)),
    task: (text) => { visit().task = text; visit().remember().catch(() => {}); },
    nextNumber: does(() => visit().nextNumber()),
    useNumber: does((number) => { visit().task = number; }),
    cubes: does((out) => { visit().cubesOut = out; }),
    extraHelp: does((help) => { visit().extraHelp = visit().extraHelp === help ? null : help; }),
    shield: does(() => { visit().shield = !visit().shield; }),
    letters: does(() => { visit().letters = !visit().letters; }),
    log: (child, phrase) => { state.desk.log(child, phrase); },
    child: (child) => {
      const { skillInHand, armedPhrase } = visit();
      const phrase = armedPhrase === 'not_yet' ? { code: 'not_yet', step: 1 }
        : skillInHand?.phrases.find((p) => p.code === armedPhrase);
      if (phrase) {
        state.desk.log(child, phrase);
        return;
      }
      visit().armedChild = visit().armedChild === child ? null : child;
      changed();
    },
    phrase: (phrase) => {
      if (visit().armedChild !== null) {
        state.desk.log(visit().armedChild, phrase);
        return;
      }
      visit().armedPhrase = visit().armedPhrase === phrase.code ? null : phrase.code;
      changed();
    },
    tag: (code) => state.desk.toggleTag(code),
    lastHelp: (help) => state.desk.setHelp(help),
    move: (child) => state.desk.move(child),
    undo: () => state.desk.undo(),
    note: (input) => {
      const text = input.value.trim();
      const child = visit().armedChild ?? state.desk.last?.record.child;
      if (text && child) {
        input.value = '';
        state.desk.note(child, text);
      }
    },
    stop: () => {
      const since = Date.now();
      const box = dialog('stopped', 'stopped-text', h('p', { id: 'stopped-text' }, t('stopped')),
        button('go-on', () => box.close(), { class: 'primary' }, t('goOn')));
      box.addEventListener('close', () => { visit().stoppedMs += Date.now() - since; changed(); });
    },
  };
}
