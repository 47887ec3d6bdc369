/**
 * <sw-block-clock turns='[{"from":ms,"to":ms,"label":"Rotation 1 of 3","table":"Group 2"}]' now="ms" words='{...}'
 *     stops='[{"from":ms,"to":ms,"label":"The clock stands still until 9:35"}]'>
 * The clock of the block: what runs, how long still, what comes next. In a stop it stands still. It counts in the browser; `now` is the server's
 * time when the page was made, so that a wall clock that is off does no harm. Sound only after it was switched on.
 */
const two = (n) => String(n).padStart(2, '0');

class BlockClock extends HTMLElement {
  #timer = 0;
  #turns = [];
  #stops = [];
  #words = {};
  #offset = 0;
  #said = null;
  #sound = null;

  connectedCallback() {
    this.#turns = JSON.parse(this.getAttribute('turns') ?? '[]');
    this.#stops = JSON.parse(this.getAttribute('stops') ?? '[]');
    this.#words = JSON.parse(this.getAttribute('words') ?? '{}');
    this.#offset = Number(this.getAttribute('now')) - Date.now();
    this.replaceChildren();
    this.left = this.#add('p', 'clock-left');
    this.label = this.#add('p', 'clock-label');
    this.label.setAttribute('aria-live', 'polite');
    this.next = this.#add('p', 'clock-next');
    const tools = this.#add('div', 'row');
    this.bell = this.#button(tools, 'sound', () => this.#ring());
    this.large = this.#button(tools, 'large', () => this.#enlarge(!this.classList.contains('large')));
    this.addEventListener('keydown', (e) => { if (e.key === 'Escape') { this.#enlarge(false); } });
    this.#timer = setInterval(() => this.tick(), 500);
    this.tick();
  }

  disconnectedCallback() {
    clearInterval(this.#timer);
    this.#sound?.close();
    this.#sound = null;
  }

  #add(tag, name) {
    const part = document.createElement(tag);
    part.className = name;
    this.append(part);
    return part;
  }

  #button(place, word, press) {
    const button = document.createElement('button');
    button.className = 'button';
    button.textContent = this.#words[word];
    button.setAttribute('aria-pressed', 'false');
    button.addEventListener('click', press);
    place.append(button);
    return button;
  }

  /** A browser lets a page sound only after a tap: the tap that switches it on opens it. */
  #ring() {
    if (this.#sound) {
      this.#sound.close();
      this.#sound = null;
    } else {
      this.#sound = new AudioContext();
      this.#chime();
    }
    this.bell.setAttribute('aria-pressed', String(Boolean(this.#sound)));
  }

  #chime() {
    if (!this.#sound) {
      return;
    }
    const tone = this.#sound.createOscillator();
    const loud = this.#sound.createGain();
    const at = this.#sound.currentTime;
    tone.frequency.value = 523.25;
    loud.gain.setValueAtTime(0.25, at);
    loud.gain.exponentialRampToValueAtTime(0.001, at + 1.2);
    tone.connect(loud).connect(this.#sound.destination);
    tone.start(at);
    tone.stop(at + 1.2);
  }

  #enlarge(large) {
    this.classList.toggle('large', large);
    this.large.setAttribute('aria-pressed', String(large));
    this.large.textContent = this.#words[large ? 'small' : 'large'];
  }

  /** Milliseconds of the stops between two instants. */
  #still(from, to) {
    return this.#stops.reduce((sum, s) => sum + Math.max(0, Math.min(to, s.to) - Math.max(from, s.from)), 0);
  }

  /** Milliseconds to show: those of work that are left; before a rotation those until it begins, in a stop its own. */
  #left(turn, before, stop, now) {
    if (before && !stop) {
      return turn.from - now;
    }
    const from = before ? turn.from : now;
    return turn.to - from - this.#still(from, turn.to);
  }

  /** What is true now: waiting, in a rotation, in the change before one, standing still, or over. */
  tick() {
    const now = Date.now() + this.#offset;
    const index = this.#turns.findIndex((turn) => now < turn.to);
    const turn = this.#turns[index];
    const before = turn && now < turn.from;
    const stop = turn && this.#stops.find((s) => s.from <= now && now < s.to);
    const state = turn ? `${index}${before ? '-' : ''}${stop ? '!' : ''}` : 'over';
    const seconds = turn ? Math.ceil(this.#left(turn, before, stop, now) / 1000) : 0;
    this.classList.toggle('still', Boolean(stop));
    this.left.textContent = turn ? `${Math.floor(seconds / 60)}:${two(seconds % 60)}` : '';
    // Every time, since the board may be drawn after the clock.
    document.querySelectorAll('[data-turn]').forEach((cell) =>
      cell.classList.toggle('now', !before && Number(cell.dataset.turn) === index));
    if (state === this.#said) {
      return;
    }
    const next = this.#turns[before ? index : index + 1];
    this.label.textContent = !turn ? this.#words.over
      : stop ? stop.label
      : before ? this.#words[index === 0 ? 'begins' : 'change'] : `${turn.label} · ${turn.table}`;
    this.next.textContent = stop ? `${this.#words.then} ${turn.label} · ${turn.table}` : turn && next ? `${this.#words.next} ${next.label} · ${next.table}` : '';
    if (this.#said !== null) {
      this.#chime();
    }
    this.#said = state;
  }
}

if (!customElements.get('sw-block-clock')) {
  customElements.define('sw-block-clock', BlockClock);
}
