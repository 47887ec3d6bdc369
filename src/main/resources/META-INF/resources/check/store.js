/*
 * Marks on their way to the server. Every tap goes at once; while the network is away taps wait in this tab, also over
 * a reload. The number of a cell says what was on the screen, so that nobody overwrites what they have not seen.
 */
const WAIT_MS = 4000;

export class MarkStore {
  constructor(check, entry, changed) {
    this.path = `/api/checks/${check}`;
    this.entry = entry;
    this.changed = changed;
    this.key = `stepwell-check-${check}-${entry}`;
    this.cells = new Map();
    this.waiting = this.restored();
    this.flying = new Set();
    this.lost = false;
    this.signedOut = false;
  }

  static name(child, item) {
    return `${child} ${item}`;
  }

  restored() {
    try {
      return new Map(JSON.parse(sessionStorage.getItem(this.key) || '[]'));
    } catch (unreadable) {
      return new Map();
    }
  }

  keep() {
    try {
      sessionStorage.setItem(this.key, JSON.stringify([...this.waiting]));
    } catch (full) {
      this.lost = true;
    }
  }

  async load(lang) {
    const sheet = await this.ask(`${this.path}?entry=${this.entry}&lang=${lang}`);
    this.take(sheet.cells);
    this.flush();
    return sheet;
  }

  /** What the screen shows: a tap on its way, else what is stored. */
  shown(child, item) {
    const name = MarkStore.name(child, item);
    const stored = this.cells.get(name);
    const tap = this.waiting.get(name);
    return tap ? { mark: tap.mark, error: tap.error, by: '', number: stored ? stored.number : 0 } : stored;
  }

  take(cells) {
    for (const cell of cells) {
      const name = MarkStore.name(cell.child, cell.item);
      const old = this.cells.get(name);
      if (!old || old.number < cell.number) {
        this.cells.set(name, cell);
        this.changed(cell.child, cell.item);
      }
    }
  }

  tap(child, item, mark, error) {
    const name = MarkStore.name(child, item);
    const stored = this.cells.get(name);
    this.waiting.set(name, { child, item, mark, error: error || null, seen: stored ? stored.number : 0 });
    this.keep();
    this.changed(child, item);
    this.flush();
  }

  get pending() {
    return this.waiting.size;
  }

  async flush() {
    if (this.flying.size || !this.waiting.size) {
      return;
    }
    const batch = [...this.waiting.entries()].slice(0, 100);
    batch.forEach(([name]) => this.flying.add(name));
    try {
      const answers = await this.ask(`${this.path}/marks`, batch.map(([, tap]) => ({ ...tap, entry: this.entry })));
      this.lost = false;
      answers.forEach((answer, i) => this.answered(batch[i], answer));
    } catch (failed) {
      this.failed(failed, batch);
    }
    this.flying.clear();
    this.keep();
    this.changed(null, null);
    if (this.lost) {
      setTimeout(() => this.flush(), WAIT_MS);
    } else if (!this.signedOut) {
      this.flush();
    }
  }

  answered([name, sent], answer) {
    const newer = this.waiting.get(name);
    if (newer === sent || !answer.stored) {
      this.waiting.delete(name);
    } else if (newer) {
      newer.seen = answer.cell.number;
    }
    if (answer.cell) {
      this.take([answer.cell]);
    }
    this.changed(sent.child, sent.item, answer.stored ? null : answer.cell);
  }

  failed(failed, batch) {
    this.signedOut = failed.status === 401 || failed.status === 403;
    this.lost = !failed.status || failed.status >= 500 || failed.status === 429;
    if (failed.status === 400 || failed.status === 404) {
      batch.forEach(([name]) => this.waiting.delete(name));
      this.changed(null, null, null, failed.message);
    }
  }

  async rest(child) {
    await this.settled();
    this.take(await this.ask(`${this.path}/rest`, { child, entry: this.entry, absent: false }));
    this.changed(null, null);
  }

  absent(child, absent) {
    return this.ask(`${this.path}/absent`, { child, entry: this.entry, absent });
  }

  /** Fetches what the other adult did meanwhile. */
  async refresh() {
    if (!this.flying.size) {
      const sheet = await this.ask(`${this.path}?entry=${this.entry}`);
      this.take(sheet.cells);
      return sheet;
    }
    return null;
  }

  async settled() {
    for (let tries = 0; this.waiting.size && tries < 50; tries++) {
      await new Promise((done) => setTimeout(done, 100));
    }
    if (this.waiting.size) {
      throw new Error('taps are still on their way');
    }
  }

  async ask(path, body) {
    const options = { headers: { Accept: 'application/json' }, credentials: 'same-origin' };
    if (body !== undefined) {
      const token = document.cookie.split('; ').find((c) => c.startsWith('XSRF-TOKEN='));
      options.method = 'POST';
      options.body = JSON.stringify(body);
      options.headers['Content-Type'] = 'application/json';
      options.headers['X-XSRF-TOKEN'] = token ? decodeURIComponent(token.slice('XSRF-TOKEN='.length)) : '';
    }
    const answer = await fetch(path, options);
    if (!answer.ok) {
      const said = await answer.json().catch(() => ({}));
      throw Object.assign(new Error(said.error || String(answer.status)), { status: answer.status });
    }
    return answer.json();
  }
}
