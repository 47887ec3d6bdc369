/*
 * The tap grid of a unit check: one table, one listener, any number of cells. It starts empty; nothing is right until
 * somebody says so. Words come from the screen as JSON.
 */
import { MarkStore } from './store.js';

const KEYS = { 1: 'right', 0: 'wrong', 5: 'half', n: 'not_reached', Delete: 'cleared', Backspace: 'cleared' };
const SIGNS = { right: '✓', wrong: '✗', half: '½', not_reached: '–', cleared: '' };
const PENS = ['wrong', 'half', 'not_reached', 'right', 'cleared'];
const REFRESH_MS = 5000;

function el(tag, attributes = {}, ...inside) {
  const node = document.createElement(tag);
  Object.entries(attributes).forEach(([name, value]) => node.setAttribute(name, value));
  node.append(...inside);
  return node;
}

class CheckGrid extends HTMLElement {
  async connectedCallback() {
    this.words = JSON.parse(this.getAttribute('words'));
    this.store = new MarkStore(this.getAttribute('check'), Number(this.getAttribute('entry')),
      (...change) => this.changed(...change));
    this.pen = 'wrong';
    this.at = null;
    this.warn = (event) => this.store.pending && event.preventDefault();
    window.addEventListener('beforeunload', this.warn);
    try {
      this.sheet = await this.store.load(this.getAttribute('lang') || 'en');
    } catch (failed) {
      this.replaceChildren(el('p', { class: 'problem', role: 'alert' }, this.words.unreachable));
      return;
    }
    this.draw();
    this.timer = setInterval(() => document.hidden || this.refresh(), REFRESH_MS);
  }

  disconnectedCallback() {
    clearInterval(this.timer);
    window.removeEventListener('beforeunload', this.warn);
  }

  async refresh() {
    const sheet = await this.store.refresh().catch(() => null);
    if (sheet) {
      sheet.children.forEach((child) => this.rows.has(child.child) && this.showAbsent(child.child, child.absent));
    }
  }

  say(key, ...gaps) {
    return gaps.reduce((text, gap, i) => text.replace(`{${i}}`, gap), this.words[key]);
  }

  draw() {
    this.items = new Map(this.sheet.items.map((item) => [item.code, item]));
    this.byChild = new Map(this.sheet.children.map((child) => [child.child, child]));
    this.rows = new Map();
    this.tds = new Map();
    this.pens = el('div', { class: 'check-pens', role: 'group', 'aria-label': this.words.pen });
    PENS.forEach((pen) => this.pens.append(el('button', { type: 'button', class: 'button', 'data-pen': pen,
      'aria-pressed': String(pen === this.pen) }, `${SIGNS[pen]} ${this.words[pen]}`.trim())));
    const head = el('tr', {}, el('th', { scope: 'col' }, this.words.child));
    let skill = null;
    this.sheet.items.forEach((item) => {
      const th = el('th', { scope: 'col', title: item.question || item.code },
        String(Number(item.code.slice(1))), el('br'), el('span', {}, item.skill === skill ? '' : item.skill));
      th.classList.toggle('first', item.skill !== skill);
      skill = item.skill;
      head.append(th);
    });
    head.append(el('th', { scope: 'col' }, this.words.row));
    const body = el('tbody');
    this.sheet.children.forEach((child) => body.append(this.row(child)));
    this.table = el('table', { class: 'check-grid', role: 'grid', 'aria-label': this.words.grid },
      el('thead', {}, head), body);
    this.detail = el('div', { class: 'check-detail' });
    this.status = el('p', { class: 'check-status', role: 'status' });
    this.alert = el('div', { role: 'alert' });
    this.replaceChildren(this.pens, this.status, this.alert,
      el('div', { class: 'scroll check-scroll' }, this.table), this.detail);
    const first = this.table.querySelector('td[data-item]:not([aria-disabled])');
    if (first) {
      first.tabIndex = 0;
    }
    this.addEventListener('click', (event) => this.clicked(event));
    this.addEventListener('keydown', (event) => this.pressed(event));
    this.tds.forEach((td) => this.show(td));
    this.showStatus();
  }

  row(child) {
    const name = el('th', { scope: 'row' }, child.label);
    if (child.accommodation) {
      name.append(el('span', { class: 'soft small' }, ` ${child.accommodation}`));
    }
    const tr = el('tr', { 'data-child': child.child }, name);
    const asked = new Set(child.asked);
    let skill = null;
    this.sheet.items.forEach((item) => {
      const td = el('td', { role: 'gridcell', 'data-item': item.code, tabindex: '-1' });
      td.classList.toggle('first', item.skill !== skill);
      skill = item.skill;
      if (asked.has(item.code)) {
        this.tds.set(MarkStore.name(child.child, item.code), td);
      } else {
        td.setAttribute('aria-disabled', 'true');
        td.setAttribute('aria-label', this.say('notAsked', child.label, item.code));
      }
      tr.append(td);
    });
    const rest = el('button', { type: 'button', class: 'button', 'data-do': 'rest',
      'aria-label': this.say('restOf', child.label) }, this.words.rest);
    const away = el('button', { type: 'button', class: 'button', 'data-do': 'absent', 'aria-pressed': 'false',
      'aria-label': this.say('absentOf', child.label) }, this.words.absent);
    tr.append(el('td', { class: 'check-row' }, rest, away));
    this.rows.set(child.child, tr);
    this.showAbsent(child.child, child.absent);
    return tr;
  }

  showAbsent(child, absent) {
    const tr = this.rows.get(child);
    tr.classList.toggle('away', absent);
    tr.querySelector('[data-do=absent]').setAttribute('aria-pressed', String(absent));
  }

  show(td) {
    const child = td.parentNode.dataset.child;
    const item = td.dataset.item;
    const cell = this.store.shown(child, item);
    const mark = cell ? cell.mark : 'cleared';
    td.textContent = SIGNS[mark];
    td.dataset.mark = mark;
    td.setAttribute('aria-label', `${this.byChild.get(child).label}, ${item}: `
      + `${mark === 'cleared' ? this.words.empty : this.words[mark]}`);
  }

  changed(child, item, other, problem) {
    if (!this.tds) {
      return;
    }
    const td = child && this.tds.get(MarkStore.name(child, item));
    if (td) {
      this.show(td);
      if (td === this.at) {
        this.showDetail();
      }
    }
    if (other) {
      this.alarm(this.say('other', other.by, this.byChild.get(child).label, item,
        other.mark === 'cleared' ? this.words.empty : this.words[other.mark]));
    }
    if (problem) {
      this.tds.forEach((each) => this.show(each));
      this.alarm(problem);
    }
    this.showStatus();
  }

  alarm(text) {
    this.alert.replaceChildren(el('p', { class: 'problem' }, text));
  }

  showStatus() {
    const full = [...this.rows.values()].filter((tr) => {
      const cells = [...tr.querySelectorAll('td[data-item]:not([aria-disabled])')];
      return cells.length && cells.every((td) => td.dataset.mark !== 'cleared');
    }).length;
    const done = this.say('done', full, this.rows.size);
    const stored = this.store.signedOut ? this.words.signedOut
      : this.store.lost ? this.say('lost', this.store.pending)
        : this.store.pending ? this.say('sending', this.store.pending) : this.words.stored;
    this.status.textContent = `${done} ${stored}`;
    this.status.dataset.pending = String(this.store.pending);
  }

  showDetail() {
    const child = this.at.parentNode.dataset.child;
    const item = this.items.get(this.at.dataset.item);
    const cell = this.store.shown(child, item.code);
    const line = [this.byChild.get(child).label, item.code, this.say('tests', item.skill, item.step), item.question,
      item.answer && this.say('key', item.answer), cell && cell.by && this.say('by', cell.by)].filter(Boolean);
    const parts = [el('p', {}, line.join(' · '))];
    if (cell && (cell.mark === 'wrong' || cell.mark === 'half') && item.errors.length) {
      const group = el('div', { class: 'row', role: 'group', 'aria-label': this.words.error });
      item.errors.forEach((error) => group.append(el('button', { type: 'button', class: 'button',
        'data-error': error.code, 'aria-pressed': String(cell.error === error.code) }, error.text)));
      parts.push(el('p', { class: 'soft small' }, this.words.error), group);
    }
    this.detail.replaceChildren(...parts);
  }

  select(td, focus) {
    this.table.querySelectorAll('td[tabindex="0"]').forEach((old) => { old.tabIndex = -1; });
    td.tabIndex = 0;
    this.at = td;
    if (focus) {
      td.focus();
    }
    this.showDetail();
  }

  mark(td, mark, error) {
    this.alert.replaceChildren();
    this.store.tap(td.parentNode.dataset.child, td.dataset.item, mark, error);
    this.showDetail();
  }

  async clicked(event) {
    const target = event.target.closest('button, td[data-item]');
    if (!target || target.getAttribute('aria-disabled') === 'true') {
      return;
    }
    const row = target.closest('tr');
    if (target.dataset.pen) {
      this.pen = target.dataset.pen;
      this.pens.querySelectorAll('button').forEach((pen) =>
        pen.setAttribute('aria-pressed', String(pen === target)));
    } else if (target.dataset.item) {
      this.select(target, true);
      this.mark(target, target.dataset.mark === this.pen ? 'cleared' : this.pen);
    } else if (target.dataset.error) {
      const pressed = target.getAttribute('aria-pressed') === 'true';
      this.mark(this.at, this.at.dataset.mark, pressed ? null : target.dataset.error);
    } else if (target.dataset.do === 'rest') {
      this.rest(row.dataset.child);
    } else if (target.dataset.do === 'absent') {
      const absent = target.getAttribute('aria-pressed') !== 'true';
      await this.store.absent(row.dataset.child, absent).then(() => this.showAbsent(row.dataset.child, absent),
        (failed) => this.alarm(this.say('failed', failed.message)));
    }
  }

  rest(child) {
    this.alert.replaceChildren();
    return this.store.rest(child).catch((failed) => this.alarm(this.say('failed', failed.message)));
  }

  pressed(event) {
    const td = event.target.closest('td[data-item]');
    if (!td || event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    const steps = { ArrowLeft: [0, -1], ArrowRight: [0, 1], ArrowUp: [-1, 0], ArrowDown: [1, 0] };
    const mark = KEYS[event.key] || KEYS[event.key.toLowerCase()];
    const open = td.getAttribute('aria-disabled') !== 'true';
    if (steps[event.key]) {
      this.go(td, ...steps[event.key]);
    } else if (event.key === 'Home' || event.key === 'End') {
      const cells = td.parentNode.querySelectorAll('td[data-item]');
      this.select(event.key === 'Home' ? cells[0] : cells[cells.length - 1], true);
    } else if (mark && open) {
      this.mark(td, mark);
      this.go(td, 0, 1);
    } else if (event.key.toLowerCase() === 'r') {
      this.rest(td.parentNode.dataset.child);
      this.go(td.parentNode.querySelector('td[data-item]'), 1, 0);
    } else if ((event.key === ' ' || event.key === 'Enter') && open) {
      this.mark(td, td.dataset.mark === this.pen ? 'cleared' : this.pen);
    } else {
      return;
    }
    event.preventDefault();
  }

  /** Moves by rows and columns; past the last item it goes to the first of the next child. */
  go(td, down, right) {
    const cells = [...td.parentNode.querySelectorAll('td[data-item]')];
    let column = cells.indexOf(td) + right;
    let row = td.parentNode;
    if (column >= cells.length) {
      column = 0;
      row = row.nextElementSibling;
    } else if (column < 0) {
      return;
    } else if (down) {
      row = down > 0 ? row.nextElementSibling : row.previousElementSibling;
    }
    if (row) {
      this.select(row.querySelectorAll('td[data-item]')[column], true);
    }
  }
}

if (!customElements.get('sw-check-grid')) {
  customElements.define('sw-check-grid', CheckGrid);
}
