/** After a minute without a touch the screen covers itself; one tap brings it back and does nothing else. */
import { h } from './dom.js';

const IDLE_MS = 60000;

export function coverWhenIdle(wanted, t) {
  let timer = 0;
  let cover = null;
  const uncover = () => {
    cover?.remove();
    cover = null;
    document.getElementById('all').inert = false;
    arm();
  };
  const show = () => {
    if (!cover && wanted() && !document.querySelector('dialog[open]')) {
      document.getElementById('all').inert = true;
      cover = h('button', { type: 'button', class: 'cover', onclick: uncover }, t('covered'));
      document.body.append(cover);
      cover.focus();
    }
  };
  const arm = () => {
    clearTimeout(timer);
    timer = setTimeout(show, IDLE_MS);
  };
  document.addEventListener('pointerdown', arm);
  document.addEventListener('keydown', arm);
  arm();
}
