/**
 * A log as a device would have written it: fixed times, and ids made of the time and the place in the log (UUIDv7),
 * so that the same script always writes the same entries.
 */
export class Log {
  #entries = [];
  #ms = 0;
  #day = '';
  #fresh = false;

  constructor({ know, tag, by, opens, offset }) {
    this.know = know;
    this.tag = tag;
    this.by = by;
    this.offset = offset;
    this.job = idOf(this.#millis(opens), 0, tag);
  }

  get entries() {
    return this.#entries;
  }

  /** The clock of the bench: "2026-03-16 08:35", or "09:05" on the same day. It never goes back. */
  clock(words) {
    if (words.includes(' ')) this.#day = words.slice(0, 10);
    const ms = this.#millis(words.includes(' ') ? words : `${this.#day} ${words}`);
    if (ms <= this.#ms) throw new Error(`tag ${this.tag}: ${words} is not after the line before it`);
    this.#ms = ms;
    this.#fresh = true;
    return this;
  }

  /** Writes one line; what is undefined is left out. Gives its id, for a later strike. */
  add(kind, body, { seconds = 47 } = {}) {
    if (!this.#fresh) this.#ms += seconds * 1000;
    this.#fresh = false;
    const entry = {
      id: idOf(this.#ms, this.#entries.length + 1, this.tag),
      job: this.job,
      at: this.#at(),
      by: this.by,
      kind,
      v: 1,
      body: JSON.parse(JSON.stringify(body)),
    };
    this.know.readEntry(entry);
    this.#entries.push(entry);
    return entry.id;
  }

  #millis(words) {
    const ms = Date.parse(`${words.replace(' ', 'T')}:00${this.offset}`);
    if (Number.isNaN(ms)) throw new Error(`tag ${this.tag}: “${words}” is not a time`);
    return ms;
  }

  /** The instant as the clock on the wall shows it, with its offset. */
  #at() {
    const [, sign, hours, minutes] = /^([+-])(\d\d):(\d\d)$/.exec(this.offset);
    const shift = (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes)) * 60_000;
    return new Date(this.#ms + shift).toISOString().replace(/\.\d+Z$/, this.offset);
  }
}

function idOf(ms, place, tag) {
  const time = ms.toString(16).padStart(12, '0');
  const count = place.toString(16).padStart(3, '0');
  const rest = `${tag.toString(16).padStart(4, '0')}${place.toString(16).padStart(8, '0')}`;
  return `${time.slice(0, 8)}-${time.slice(8)}-7${count}-8${count}-${rest}`;
}
