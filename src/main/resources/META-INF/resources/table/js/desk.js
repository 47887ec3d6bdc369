/** What a tap does to looks: make, keep, undo, amend, move. Knows nothing of how it is drawn. */
import * as outbox from './outbox.js';
import * as records from './look.js';

export class Desk {
  last = null;
  #line = Promise.resolve();

  /** @param counted shows how many wait, before a look is called saved: the two must never contradict each other */
  constructor(owner, visit, changed, counted) {
    this.owner = owner;
    this.visit = visit;
    this.changed = changed;
    this.counted = counted;
  }

  /** Logs one look. The record is whole before anything is awaited. */
  log(child, phrase) {
    const { visit } = this;
    const record = records.look(child, visit.skillInHand, visit.task, phrase, visit.cubesOut, visit.extraHelp);
    visit.extraHelp = null;
    visit.asked(child);
    visit.count(child, 1);
    return this.#keep(record, () => visit.count(child, -1));
  }

  note(child, text) {
    if (this.last?.record.child === child && ['saved', 'server'].includes(this.last.state)) {
      const joined = [this.last.record.note, text].filter(Boolean).join(' ');
      return this.#alter({ note: joined });
    }
    return this.#keep(records.note(child, text), () => {});
  }

  toggleTag(code) {
    return this.#alter(() => {
      const { tags } = this.last.record;
      return { tags: tags.includes(code) ? tags.filter((tag) => tag !== code) : [...tags, code] };
    });
  }

  setHelp(help) {
    return this.#alter({ help });
  }

  move(child) {
    return this.#alter(() => {
      this.visit.count(this.last.record.child, -1);
      this.visit.count(child, 1);
      return { child };
    });
  }

  /** Within the ten seconds it never was; later it is taken back by a second record, and both stay in the history. */
  undo() {
    const { last } = this;
    return this.#inOrder(async () => {
      if (!await outbox.undo(last.record.id)) {
        await this.#add(records.withdrawal(last.record));
      }
      last.state = 'undone';
      if (last.record.step !== null) {
        this.visit.count(last.record.child, -1);
      }
    }, last);
  }

  /** The server's word about a record, if it is the one on show. */
  settled(ids) {
    if (this.last?.state === 'saved' && ids.includes(this.last.record.id)) {
      this.last.state = 'server';
    }
  }

  async #add(record) {
    const entry = await outbox.add(this.owner, record, this.visit.table.class.id);
    await this.counted();
    return entry;
  }

  async #keep(record, giveUp) {
    const last = { record, state: 'saving', undoUntil: 0 };
    this.last = last;
    this.changed();
    try {
      const entry = await this.#add(record);
      last.state = 'saved';
      last.undoUntil = entry.heldUntil;
    } catch {
      last.state = 'failed';
      giveUp();
    }
    this.changed();
  }

  #alter(change) {
    const { last } = this;
    return this.#inOrder(async () => {
      const what = typeof change === 'function' ? change() : change;
      const altered = await outbox.amend(last.record.id, what);
      if (altered) {
        last.record = { ...last.record, ...what };
        return;
      }
      const next = records.correction(last.record, what);
      const entry = await this.#add(next);
      last.record = next;
      last.state = 'saved';
      last.undoUntil = entry.heldUntil;
    }, last);
  }

  #inOrder(work, last) {
    this.#line = this.#line.then(work).catch(() => { last.state = 'failed'; }).then(() => this.changed());
    return this.#line;
  }
}
