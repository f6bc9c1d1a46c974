// The book: three pages side by side, or one at a time; the clock; the line to the service.

import { get, listen, post } from "/static/service.js";
import { Leaf } from "/static/leaf.js";
import { make } from "/static/entry.js";

const KINDS = ["lifter", "coach", "group"];
const REFUSED = { 403: "That message is not yours to change.", 413: "That is too long.", 404: "That chat is gone." };
const book = document.getElementById("book");
const tabs = document.getElementById("tabs");
const status = document.getElementById("line");
const dialog = document.getElementById("large");
const leaves = new Map();
const unread = new Map();
let zone = "UTC";
let ahead = 0;
let shown = sessionStorage.getItem("shown") || "lifter";

const say = (words) => {
  if (status.textContent !== words) status.textContent = words;
};
const LOST = "The line is down. What you write is sent when it is back.";
const now = () => new Date(Date.now() + ahead);

const hooks = {
  now,
  seated: () => showTabs(),
  fresh: (leaf, count) => {
    if (leaf.node.offsetParent === null) {
      unread.set(leaf.kind, (unread.get(leaf.kind) || 0) + count);
      showTabs();
    }
  },
  enlarge: (file) => {
    document.getElementById("large-name").textContent = file.name;
    const image = make("img");
    image.src = file.address;
    image.alt = file.alt;
    dialog.querySelector("img")?.remove();
    dialog.append(image);
    dialog.showModal();
  },
  refused: (code) => say(REFUSED[code] || "That was not taken."),
  down: () => say(LOST),
  sent: () => status.textContent === LOST && say(""),
};

async function readRoom() {
  const room = await get("/room");
  ahead = new Date(room.now) - Date.now();
  document.getElementById("clock").hidden = !room.clock;
  document.getElementById("leave").hidden = !room.login;
  for (const kind of KINDS) {
    const seats = room.seats.filter((seat) => seat.kind === kind);
    if (!seats.length) continue;
    if (!leaves.has(kind)) {
      leaves.set(kind, new Leaf(kind, hooks));
      book.append(leaves.get(kind).node);
    }
    leaves.get(kind).offer(seats);
  }
  if (!leaves.has(shown)) shown = leaves.keys().next().value;
  showTabs();
  tick();
}

function showTabs() {
  for (const [kind, leaf] of leaves) leaf.node.toggleAttribute("data-shown", kind === shown);
  const buttons = [...leaves].map(([kind, leaf]) => {
    const button = make("button", "", leaf.kind === "group" || !leaf.seat ? "Group" : leaf.seat.name);
    button.type = "button";
    button.dataset.kind = kind;
    if (kind === shown) button.setAttribute("aria-current", "page");
    const news = unread.get(kind);
    if (news) button.append(make("span", "new", ` ${news} new`));
    button.addEventListener("click", () => {
      shown = kind;
      sessionStorage.setItem("shown", kind);
      unread.delete(kind);
      showTabs();
      leaf.toEnd();
      tabs.querySelector("[aria-current]").focus();
    });
    return button;
  });
  tabs.replaceChildren(...buttons);
  tabs.hidden = leaves.size < 2;
}

function tick() {
  zone = leaves.get("lifter")?.seat?.zone || leaves.get("coach")?.seat?.zone || zone;
  const at = now();
  const place = document.getElementById("now");
  const form = { weekday: "short", day: "numeric", month: "short", hour: "2-digit", minute: "2-digit", timeZone: zone };
  const words = at.toLocaleString("en-GB", form);
  if (place.textContent !== words) {
    place.textContent = words;
    place.dateTime = at.toISOString();
  }
}

async function jump(button) {
  const buttons = document.querySelectorAll("[data-to]");
  const leaf = leaves.get("lifter");
  buttons.forEach((one) => (one.disabled = true));
  say("The clock goes on ...");
  try {
    const answer = await post("/clock", { to: button.dataset.to, chat: leaf.seat.chat });
    const { reached, said } = answer.ok ? await answer.json() : { reached: null, said: 0 };
    await readRoom();
    if (!reached) say(`No reminder waits for ${leaf.seat.name}.`);
    else say(said ? "" : "The clock went on; nothing was to be said.");
  } catch {
    say(LOST);
  } finally {
    buttons.forEach((one) => (one.disabled = false));
    button.focus();
  }
}

async function changed(chats) {
  try {
    await readRoom();
  } catch {
    return;
  }
  for (const leaf of leaves.values()) {
    if (chats === null || chats.includes(leaf.seat.chat)) leaf.refresh();
    if (chats === null && leaf.unsent.length) leaf.flush();
  }
}

document.querySelectorAll("[data-to]").forEach((one) => one.addEventListener("click", () => jump(one)));
document.getElementById("leave").addEventListener("click", async () => {
  await post("/leave", {});
  location.reload();
});
setInterval(tick, 1000);
listen(changed, (up) => (up ? hooks.sent() : say(LOST)));
