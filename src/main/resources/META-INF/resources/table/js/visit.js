/**
 * What the page holds in mind during one visit of a group: who sits here, which skill and number are in hand, and
 * what was seen. Remembered on the tablet by ids only, so that a reload goes on where it was.
 */
import { recallPage, rememberPage } from './outbox.js';
import { adultOf } from './server.js';
import { groupNow } from './turns.js';

/** Up to this many children each phrase carries a button per child; beyond, the phrase is tapped first. */
export const REGISTER_MOST = 6;

/** The Monday of today's week by the tablet's calendar, as a word. */
function monday() {
  const day = new Date();
  day.setDate(day.getDate() - ((day.getDay() + 6) % 7));
  return day.toDateString();
}

export class Visit {
  open = false;
  seated = [];
  skill = null;
  task = '';
  cubesOut = false;
  extraHelp = null;
  shield = false;
  letters = false;
  counts = {};
  startedAt = 0;
  stoppedMs = 0;
  summary = null;
  /** Numbers tried in this visit, by child and skill. */
  tried = {};
  againOpen = false;
  initials = {};
  armedChild = null;
  armedPhrase = null;
  /** Which task of a short start is in hand, from 0; null outside of one. And whom this tablet has met so. */
  meeting = null;
  met = [];
  /** Number of the group that was seated by its turn, and whether a hand has chosen since. */
  proposed = null;
  byHand = false;
  /** Looks logged on this tablet in a week, since the class that it was given knows only those before. */
  week = { monday: '', looks: {} };

  constructor(table) {
    this.table = table;
    this.owner = adultOf(table);
    this.key = `visit:${this.owner}:${table.class.id}`;
    this.initialsKey = `initials:${this.owner}:${table.class.id}`;
  }

  async recall() {
    this.initials = (await recallPage(this.initialsKey)) ?? {};
    const kept = (await recallPage(this.key)) ?? {};
    if (!this.untouched) {
      return; // A hand was quicker than the disk.
    }
    this.proposed = null;
    const known = new Set(this.table.children.map((c) => c.child));
    for (const name of ['open', 'task', 'cubesOut', 'shield', 'letters', 'counts', 'tried', 'startedAt', 'stoppedMs', 'skill',
      'week', 'meeting', 'met']) {
      this[name] = kept[name] ?? this[name];
    }
    this.seated = (kept.seated ?? []).filter((child) => known.has(child));
    this.open &&= this.seated.length > 0;
    if (!this.table.skills.some((s) => s.code === this.skill)) {
      this.takeSkill(this.table.focusSkill ?? this.table.skills[0]?.code ?? null);
    }
    this.propose(); // In the same step: a tap may come before the next drawing, and must find who is shown.
  }

  /** Whose turn it is at the teacher table is seated by itself, until a hand has seated others. */
  propose() {
    const group = !this.open && !this.byHand && groupNow(this.table);
    if (group && this.proposed !== group.group) {
      this.seat(group);
    }
  }

  remember() {
    const { open, seated, task, cubesOut, shield, letters, counts, tried, startedAt, stoppedMs, skill, week, meeting, met }
      = this;
    return rememberPage(this.key, this.owner,
      { open, seated, task, cubesOut, shield, letters, counts, tried, startedAt, stoppedMs, skill, week, meeting, met });
  }

  /** What the shield shows for a child instead of its name, by the teacher's choice. */
  rememberInitials(chosen) {
    this.initials = chosen;
    return rememberPage(this.initialsKey, this.owner, chosen);
  }

  get untouched() {
    return !this.open && (this.seated.length === 0 || (!this.byHand && this.proposed !== null));
  }

  get skillInHand() {
    return this.table.skills.find((s) => s.code === this.skill) ?? null;
  }

  /** Numbers of the skill in hand; with one child in hand those come first that would tell most about this child. */
  get numbers() {
    const one = this.armedChild ?? (this.seated.length === 1 ? this.seated[0] : null);
    const own = this.table.children.find((c) => c.child === one)?.ask?.[this.skill]?.numbers ?? [];
    return [...own, ...(this.skillInHand?.numbers ?? []).filter((n) => !own.includes(n))];
  }

  takeSkill(code) {
    this.skill = this.table.skills.some((s) => s.code === code) ? code : this.table.skills[0]?.code ?? null;
    this.task = this.numbers[0] ?? '';
    this.armedPhrase = null;
  }

  nextNumber() {
    const { numbers } = this;
    if (numbers.length > 0) {
      this.task = numbers[(numbers.indexOf(this.task) + 1) % numbers.length];
    }
  }

  /** Seats a group with what it works on. */
  seat(group) {
    this.seated = this.table.children.map((c) => c.child).filter((c) => group.children.includes(c));
    this.proposed = group.group;
    if (group.skill && this.table.skills.some((s) => s.code === group.skill)) {
      this.takeSkill(group.skill);
    }
    if (group.number) {
      this.task = group.number;
    }
  }

  toggleSeat(child) {
    this.seated = this.seated.includes(child) ? this.seated.filter((c) => c !== child)
      : this.table.children.map((c) => c.child).filter((c) => c === child || this.seated.includes(c));
  }

  start() {
    this.open = true;
    this.counts = {};
    this.tried = {};
    this.startedAt = Date.now();
    this.stoppedMs = 0;
    this.summary = null;
    this.meeting = null;
  }

  end() {
    this.open = false;
    this.armedChild = null;
    this.armedPhrase = null;
    this.extraHelp = null;
    this.summary = this.seated.map((child) => ({ child, looks: this.counts[child] ?? 0 }));
  }

  /** That a child was asked the number in hand. */
  asked(child) {
    const key = `${child} ${this.skill}`;
    this.tried[key] = [...(this.tried[key] ?? []), this.task];
  }

  count(child, change) {
    this.counts[child] = Math.max(0, (this.counts[child] ?? 0) + change);
    if (this.week.monday !== monday()) {
      this.week = { monday: monday(), looks: {} };
    }
    this.week.looks[child] = Math.max(0, (this.week.looks[child] ?? 0) + change);
  }

  /** Whether a child was looked at this week, as far as the server knew and this tablet knows. */
  seenThisWeek(child) {
    return (this.table.seenThisWeek ?? []).includes(child)
      || (this.week.monday === monday() && (this.week.looks[child] ?? 0) > 0);
  }

  minutes() {
    return Math.max(0, Math.floor((Date.now() - this.startedAt - this.stoppedMs) / 60000));
  }
}
