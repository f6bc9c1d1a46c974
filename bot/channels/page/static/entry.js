// One line of a chat as elements. Every word of it is text and never markup.

const LABELS = {
  alert: "alert", prompt: "ahead", summary: "word", post: "post",
  photo: "picture", video: "film", audio: "sound", document: "document",
};
const FILES = { photo: "A picture", video: "A film", audio: "A recording", document: "A document" };

export function make(tag, className, text) {
  const node = document.createElement(tag);
  if (className) node.className = className;
  if (text) node.textContent = text;
  return node;
}

/** `hands`: zone, press(entry, data), change(entry), enlarge(file), grown(), several (whether many may press). */
export function line(entry, hands) {
  const node = make("li", `entry ${entry.own ? "own" : "service"} ${entry.kind}`);
  node.classList.toggle("failed", entry.failed);
  node.classList.toggle("waiting", Boolean(entry.waiting));
  node.append(margin(entry, hands.zone), text(entry, hands));
  return node;
}

function margin(entry, zone) {
  const box = make("div", "margin");
  const at = new Date(entry.at);
  const time = make("time", "", at.toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit", timeZone: zone }));
  time.dateTime = entry.at;
  const label = LABELS[entry.kind];
  box.append(make("b", "", entry.own ? entry.who : label || "book"), time);
  if (entry.own && label) box.append(make("span", "", ` ${label}`));
  return box;
}

function text(entry, hands) {
  const box = make("div", "text");
  if (entry.own && entry.message !== null && entry.kind === "words" && !entry.waiting) {
    const button = make("button", "change", "change");
    button.type = "button";
    button.setAttribute("aria-label", `Change: ${entry.text}`);
    button.addEventListener("click", () => hands.change(entry));
    box.append(button);
  }
  box.append(words(entry));
  const notes = [entry.edited && "changed", entry.failed && "not counted", entry.waiting && "waits to be sent"];
  const note = notes.filter(Boolean).join(", ");
  if (note) box.append(make("p", "note", note));
  if (entry.file) box.append(sheet(entry.file, hands));
  if (entry.buttons.length) box.append(answers(entry, hands));
  return box;
}

/** The first line, set apart where more lines follow. */
function words(entry) {
  const said = entry.text || FILES[entry.kind] || "";
  const end = said.indexOf("\n");
  if (entry.own || end < 0) return make("p", "", said);
  const box = make("p");
  box.append(make("span", "first", said.slice(0, end)), said.slice(end));
  return box;
}

function answers(entry, hands) {
  const box = make("div", "answers");
  box.setAttribute("role", "group");
  box.setAttribute("aria-label", "Answers");
  for (const [label, data] of entry.buttons) {
    const button = make("button", "", label);
    const pressed = entry.pressed.includes(data);
    button.type = "button";
    button.setAttribute("aria-pressed", String(pressed));
    button.disabled = !hands.several && entry.pressed.length > 0 && !pressed;
    button.addEventListener("click", () => hands.press(entry, data));
    box.append(button);
  }
  return box;
}

function sheet(file, hands) {
  const box = make("div", "sheet");
  const address = `/files/${file.number}`;
  if (!file.picture) {
    const link = make("a", "", file.name);
    link.href = address;
    link.download = file.name;
    box.append(link);
    return box;
  }
  const button = make("button", "picture");
  const image = make("img");
  button.type = "button";
  button.setAttribute("aria-label", `Open ${file.name} large`);
  image.addEventListener("load", hands.grown);
  image.src = address;
  image.alt = file.facts.length ? `${file.name}; its facts are in the table beside it` : file.name;
  button.append(image);
  button.addEventListener("click", () => hands.enlarge({ ...file, address, alt: image.alt }));
  box.append(button);
  if (file.facts.length) box.append(table(file));
  return box;
}

function table(file) {
  const box = make("div", "facts");
  const grid = make("table");
  const [head, ...rows] = file.facts;
  const caption = make("caption", "unseen", `What ${file.name} shows`);
  const top = make("thead");
  const body = make("tbody");
  top.append(row(head, "th"));
  top.querySelectorAll("th").forEach((cell) => cell.setAttribute("scope", "col"));
  body.append(...rows.map((cells) => row(cells, "td")));
  grid.append(caption, top, body);
  box.tabIndex = 0;
  box.setAttribute("role", "region");
  box.setAttribute("aria-label", `Facts of ${file.name}`);
  box.append(grid);
  return box;
}

function row(cells, tag) {
  const line = make("tr");
  line.append(...cells.map((cell) => make(tag, "", cell)));
  return line;
}
