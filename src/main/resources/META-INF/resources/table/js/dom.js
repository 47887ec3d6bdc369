/** Builds elements without ever parsing text as markup. */
export function h(tag, properties = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(properties)) {
    if (value === null || value === undefined || value === false) {
      continue;
    }
    if (name.startsWith('on')) {
      element.addEventListener(name.slice(2), value);
    } else if (name === 'class') {
      element.className = value;
    } else {
      element.setAttribute(name, value === true ? '' : String(value));
    }
  }
  element.append(...children.flat().filter((child) => child !== null && child !== undefined && child !== false));
  return element;
}

/** A button. `key` names it, so that it keeps the keyboard's focus when its region is drawn again. */
export function button(key, onclick, properties, ...children) {
  return h('button', { type: 'button', 'data-key': key, onclick, ...properties }, ...children);
}

export function icon(name) {
  return h('span', { class: 'sw-icon', 'data-icon': name, 'aria-hidden': 'true' });
}

/** Draws a region again and gives the focus, with what is typed and where, back to whatever has the same key. */
export function draw(region, ...children) {
  const before = region.contains(document.activeElement) ? document.activeElement : null;
  const typed = before?.tagName === 'INPUT'
    ? [before.value, before.selectionStart, before.selectionEnd, before.selectionDirection] : null;
  region.replaceChildren(...children.flat().filter(Boolean));
  if (before?.dataset.key) {
    const again = [...region.querySelectorAll('[data-key]')].find((e) => e.dataset.key === before.dataset.key);
    again?.focus({ preventScroll: true });
    if (again?.tagName === 'INPUT' && typed) {
      const [value, ...selection] = typed;
      again.value = value;
      again.setSelectionRange(...selection);
    }
  }
}

/**
 * A dialog that closes by its button and by Escape, and leaves no trace. The focus goes back to where it was opened,
 * also when that was drawn again meanwhile.
 */
export function dialog(className, labelledBy, ...children) {
  const opener = document.activeElement?.dataset.key;
  const box = h('dialog', { class: className, 'aria-labelledby': labelledBy }, ...children);
  box.addEventListener('close', () => {
    box.remove();
    if (opener && document.activeElement === document.body) {
      document.querySelector(`[data-key="${CSS.escape(opener)}"]`)?.focus();
    }
  });
  document.body.append(box);
  box.showModal();
  return box;
}
