/**
 * The phrases of the skill in hand. At a small table each phrase carries a button per child: one tap is one look, and
 * a row of taps is a stamp. With one child in hand, or a whole class, the phrases are large buttons themselves.
 * All look, sound and move alike, whatever they stand for.
 */
import { button, draw, h } from './dom.js';
import { inLanguage, t } from './texts.js';
import { REGISTER_MOST } from './visit.js';

/** The skill's own phrases, then the one that every skill has: tried and could not start. */
export function phrasesOf(skill) {
  return [...(skill?.phrases ?? []), { code: 'not_yet', step: 1, text: null }];
}

const wordsOf = (phrase) => (phrase.text ? inLanguage(phrase.text) : t('notYet'));

const letterOf = (index) => String.fromCharCode(65 + index);

function register(visit, phrases, nameOf, act) {
  return phrases.map((phrase, index) => {
    const words = visit.letters ? letterOf(index) : wordsOf(phrase);
    return h('div', { class: 'line', role: 'group', 'aria-label': words },
      h('span', { class: 'words' }, h('span', { class: 'letter', 'aria-hidden': 'true' }, letterOf(index)),
        !visit.letters && h('span', {}, words)),
      h('span', { class: 'cells' }, visit.seated.map((child) =>
        button(`cell-${phrase.code}-${child}`, () => act.log(child, phrase),
          { class: 'cell', 'aria-label': `${nameOf(child)}: ${words}` }, nameOf(child)))));
  });
}

function large(visit, phrases, nameOf, act) {
  return h('div', { class: 'large' }, phrases.map((phrase, index) => {
    const pressed = visit.armedPhrase === phrase.code;
    return button(`phrase-${phrase.code}`, () => act.phrase(phrase),
      { class: 'phrase', 'aria-pressed': visit.armedChild ? null : String(pressed),
        'aria-label': visit.letters ? letterOf(index) : null },
      h('span', { class: 'letter', 'aria-hidden': 'true' }, letterOf(index)),
      !visit.letters && h('span', {}, wordsOf(phrase)));
  }));
}

export function drawPhrases(region, visit, nameOf, act) {
  const phrases = phrasesOf(visit.skillInHand);
  const byChild = visit.armedChild !== null;
  const asRegister = !byChild && visit.seated.length <= REGISTER_MOST;
  const title = byChild ? t('phrasesFor', { name: nameOf(visit.armedChild) }) : t('phrases');
  draw(region,
    h('h2', {}, title),
    !byChild && !asRegister && h('p', {}, visit.armedPhrase ? t('armedPhrase') : t('manyHint')),
    asRegister ? register(visit, phrases, nameOf, act) : large(visit, phrases, nameOf, act));
}
