/** Lets the teacher choose what the shield shows for each child. */
import { button, dialog, h } from './dom.js';
import { initials } from './names.js';
import { t } from './texts.js';

export function chooseInitials(visit, nameOf, done) {
  const shown = initials(visit.table.children, visit.initials);
  const said = h('p', { role: 'status' });
  const form = h('form', {}, h('h2', { id: 'initials-title' }, t('initialsChoose')),
    h('div', { class: 'roster' }, visit.table.children.map(({ child }) => h('label', { class: 'field' },
      h('span', {}, nameOf(child)),
      h('input', { name: child, 'data-key': `initials-${child}`, value: shown.get(child), maxlength: 6, required: true,
        autocomplete: 'off' })))),
    said,
    h('div', { class: 'starts' }, h('button', { type: 'submit', class: 'primary', 'data-key': 'keep' }, t('keep')),
      button('close', () => box.close(), {}, t('close'))));
  form.addEventListener('submit', async (event) => {
    event.preventDefault();
    const chosen = Object.fromEntries([...form.querySelectorAll('input')].map((i) => [i.name, i.value.trim()]));
    if (new Set(Object.values(chosen)).size < visit.table.children.length) {
      said.textContent = t('initialsSame');
      return;
    }
    await visit.rememberInitials(chosen).catch(() => {});
    box.close();
    done();
  });
  const box = dialog('initials', 'initials-title', form);
}
