// One page of the book: a chat with its lines and the place to write in.

import { get, nonce, post } from "/static/service.js";
import { line, make } from "/static/entry.js";

const STEP = 80;
const KINDS = { image: "photo", video: "video", audio: "audio" };
const SAMPLES = {
  lifter: ["what now", "10, 10, 9, 2 left", "make that 10", "left knee 4/10", "why?", "chest feels tight", "done for today"],
  coach: ["who needs a word", "week of Mira", "overview", "clear Mira", "invite Ana", "spreadsheet", "help"],
  group: ["join", "standings", "challenge from today for 2 weeks"],
};
const HEADS = { lifter: "Lifter", coach: "Coach", group: "Group" };

export class Leaf {
  constructor(kind, hooks) {
    this.kind = kind;
    this.hooks = hooks;
    this.seats = [];
    this.seat = null;
    this.shown = new Map();
    this.unsent = [];
    this.most = STEP;
    this.changing = null;
    this.node = document.getElementById("column").content.cloneNode(true).firstElementChild;
    const find = (query) => this.node.querySelector(query);
    this.node.dataset.kind = kind;
    this.log = find(".lines");
    this.list = find(".lines ol");
    this.box = find("textarea");
    this.pick = find(".pick select");
    this.speaker = find(".speaker select");
    this.earlier = find(".earlier");
    this.attach = find(".attach input");
    find("h2").textContent = HEADS[kind];
    this.box.id = `write-${kind}`;
    find(".words-label").htmlFor = this.box.id;
    this.wire(find);
  }

  wire(find) {
    find("form").addEventListener("submit", (event) => {
      event.preventDefault();
      this.send();
    });
    this.box.addEventListener("keydown", (event) => this.key(event));
    this.box.addEventListener("input", () => this.keepDraft());
    this.pick.addEventListener("change", () => this.sit(this.seats.find((seat) => seat.chat === this.pick.value)));
    this.earlier.addEventListener("click", () => {
      this.most += STEP;
      this.refresh();
    });
    this.attach.addEventListener("change", () => this.sendFile());
    this.log.addEventListener("scroll", () => {
      this.atEnd = this.log.scrollHeight - this.log.scrollTop - this.log.clientHeight < 60;
    });
    find(".changing button").addEventListener("click", () => this.change(null));
    find(".samples").setAttribute("aria-label", "Things to write");
    find(".samples").append(...SAMPLES[this.kind].map((words) => this.sample(words)));
  }

  sample(words) {
    const button = make("button", "", words);
    button.type = "button";
    button.addEventListener("click", () => {
      this.box.value = words;
      this.keepDraft();
      this.box.focus();
    });
    return button;
  }

  /** The chats that can be picked; the one that is open stays open. */
  offer(seats) {
    const before = JSON.stringify(this.seats);
    const joined = this.seat && !this.seat.known && seats.find((one) => one.chat === this.seat.chat && one.known);
    this.seats = seats;
    if (JSON.stringify(seats) !== before) {
      this.pick.replaceChildren(...seats.map((seat) => new Option(seat.name, seat.chat)));
      this.node.querySelector(".pick").hidden = seats.length < 2;
    }
    const kept = sessionStorage.getItem(`seat-${this.kind}`);
    const open = seats.find((one) => one.chat === (this.seat ? this.seat.chat : kept)) || seats[0];
    if (!this.seat || this.seat.chat !== open.chat) this.sit(open);
    else {
      this.seat = open;
      if (joined) this.name();
    }
    this.pick.value = open.chat;
  }

  sit(seat) {
    this.seat = seat;
    this.most = STEP;
    this.change(null);
    this.shown.clear();
    this.found = null;
    this.list.replaceChildren();
    sessionStorage.setItem(`seat-${this.kind}`, seat.chat);
    this.box.value = sessionStorage.getItem(`draft-${seat.chat}`) || "";
    this.name();
    this.refresh();
    this.hooks.seated();
  }

  name() {
    const { name, speakers } = this.seat;
    this.node.setAttribute("aria-label", `${HEADS[this.kind]}: ${name}`);
    this.log.setAttribute("aria-label", `What was said with ${name}`);
    this.node.querySelector("h2").textContent = this.seats.length > 1 ? HEADS[this.kind] : name;
    this.node.querySelector(".words-label").textContent = this.kind === "group" ? `Write to ${name}` : `Write as ${name}`;
    this.box.placeholder = this.kind === "group" ? "Write to the group" : `Write as ${name}`;
    this.node.querySelector(".speaker").hidden = speakers.length < 2;
    this.speaker.replaceChildren(...speakers.map((one) => new Option(one.name, one.user)));
  }

  async refresh() {
    if (this.busy) {
      this.stale = true;
      return;
    }
    this.busy = true;
    const seat = this.seat;
    try {
      const found = await get(`/chats/${seat.chat}?most=${this.most}`);
      if (seat === this.seat || seat.chat === this.seat.chat) this.draw(found);
    } catch {
      // The line is down; it is read again when it is back.
    } finally {
      this.busy = false;
      if (this.stale || seat.chat !== this.seat.chat) {
        this.stale = false;
        this.refresh();
      }
    }
  }

  draw(found) {
    const first = this.shown.size === 0;
    const last = this.found?.at(-1)?.key;
    const older = found.findLastIndex((one) => one.key === last) + 1;
    if (!first && older > 0) this.most += found.length - older; // what is read does not slide away at the top
    if (first) this.atEnd = true;
    this.found = found;
    this.earlier.hidden = found.length < this.most;
    const mine = this.unsent.filter((one) => one.chat === this.seat.chat && one.entry).map((one) => one.entry);
    const rows = this.withDays([...found, ...mine]);
    const keys = new Set(rows.map((row) => row.key));
    for (const [key, old] of this.shown) {
      if (!keys.has(key)) {
        old.node.remove();
        this.shown.delete(key);
      }
    }
    let fresh = 0;
    let at = this.list.firstElementChild;
    for (const row of rows) {
      const written = JSON.stringify(row);
      const old = this.shown.get(row.key);
      let node = old?.node;
      if (!old || old.written !== written) {
        node = this.nodeOf(row);
        if (old) {
          if (at === old.node) at = node;
          old.node.replaceWith(node);
        } else fresh += row.own === false ? 1 : 0;
        this.shown.set(row.key, { node, written });
      }
      if (node === at) at = at.nextElementSibling;
      else this.list.insertBefore(node, at);
    }
    if (this.atEnd) this.toEnd();
    if (fresh && !first) this.hooks.fresh(this, fresh);
  }

  toEnd() {
    this.log.scrollTop = this.log.scrollHeight;
  }

  nodeOf(row) {
    if (row.day) return make("li", "day", row.day);
    return line(row, {
      zone: this.seat.zone,
      several: this.kind === "group",
      press: (entry, data) => this.post({ press: data, message: entry.message ?? 0 }),
      change: (entry) => this.change(entry),
      enlarge: this.hooks.enlarge,
      grown: () => this.atEnd && this.toEnd(),
    });
  }

  withDays(found) {
    const rows = [];
    let last = "";
    for (const entry of found) {
      const at = new Date(entry.at);
      const day = at.toLocaleDateString("en-GB", { weekday: "long", day: "numeric", month: "long", timeZone: this.seat.zone });
      if (day !== last) rows.push({ key: `day ${day}`, day });
      last = day;
      rows.push(entry);
    }
    return rows;
  }

  key(event) {
    if (event.key === "Enter" && !event.shiftKey && !event.isComposing) {
      event.preventDefault();
      this.send();
    } else if (event.key === "Escape" && this.changing) {
      this.change(null);
    } else if (event.key === "ArrowUp" && !this.box.value && !this.changing) {
      const own = (this.found || []).filter((one) => one.own && one.message !== null);
      if (own.length) {
        event.preventDefault();
        this.change(own[own.length - 1]);
      }
    }
  }

  change(entry) {
    const bar = this.node.querySelector(".changing");
    if (this.changing && !entry) this.box.value = "";
    this.changing = entry;
    bar.hidden = !entry;
    if (entry) {
      bar.querySelector("span").textContent = `Changing: ${entry.text}`;
      this.box.value = entry.text;
      this.box.focus();
    }
  }

  send() {
    const text = this.box.value.trim();
    if (!text) return;
    const change = this.changing;
    this.box.value = "";
    this.keepDraft();
    if (change) {
      this.changing = null;
      this.node.querySelector(".changing").hidden = true;
    }
    this.post(change ? { text, message: change.message } : { text }, change ? null : text);
  }

  sendFile() {
    const [file] = this.attach.files;
    if (!file) return;
    const kind = KINDS[file.type.split("/")[0]] || "document";
    const text = this.box.value.trim();
    this.attach.value = "";
    this.box.value = "";
    this.keepDraft();
    this.post({ media: kind, text });
  }

  keepDraft() {
    sessionStorage.setItem(`draft-${this.seat.chat}`, this.changing ? "" : this.box.value);
  }

  /** Sends it, or keeps it to be sent when the line is back; `shown`: the words to show meanwhile. */
  post(said, shown = null) {
    const speaker = this.seat.speakers.length > 1 ? Number(this.speaker.value) : this.seat.speakers[0].user;
    const body = { ...said, nonce: nonce(), user: speaker };
    const who = this.seat.speakers.find((one) => one.user === speaker).name;
    const entry = shown && {
      key: `u${body.nonce}`, own: true, kind: "words", who, text: shown, at: this.hooks.now().toISOString(),
      message: null, edited: false, buttons: [], pressed: [], file: null, failed: false, waiting: true,
    };
    this.unsent.push({ chat: this.seat.chat, body, entry });
    this.flush();
  }

  async flush() {
    if (this.flushing) return;
    this.flushing = true;
    try {
      while (this.unsent.length) {
        const [one] = this.unsent;
        const answer = await post(`/chats/${one.chat}`, one.body);
        if (answer.status >= 500) throw new Error(String(answer.status));
        this.unsent.shift();
        if (!answer.ok) this.hooks.refused(answer.status);
      }
      this.hooks.sent();
    } catch {
      this.hooks.down();
      if (this.found) this.draw(this.found);
    } finally {
      this.flushing = false;
    }
    await this.refresh();
  }
}
