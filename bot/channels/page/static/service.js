// Talks to the service this page came from. What could not be sent waits, and is sent again under the same word.

const token = document.querySelector('meta[name="token"]').content;

async function ask(path, options = {}) {
  const answer = await fetch(path, { credentials: "same-origin", cache: "no-store", ...options });
  if (answer.status === 401 || answer.status === 403) location.reload();
  return answer;
}

export async function get(path) {
  const answer = await ask(path);
  if (!answer.ok) throw new Error(String(answer.status));
  return answer.json();
}

export function post(path, body) {
  const headers = { "content-type": "application/json", "x-rungbook-token": token };
  return ask(path, { method: "POST", headers, body: JSON.stringify(body) });
}

export function nonce() {
  return [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Tells which chats have something new, for ever. `changed(chats)`, with null after each new connection. */
export function listen(changed, line) {
  const silence = 40000;
  let source, timer, wait = 500;
  const heard = () => {
    clearTimeout(timer);
    timer = setTimeout(again, silence);
  };
  const again = () => {
    clearTimeout(timer);
    source.close();
    line(false);
    timer = setTimeout(open, wait);
    wait = Math.min(wait * 2, 5000);
  };
  const open = () => {
    source = new EventSource("/events");
    source.addEventListener("here", () => {
      wait = 500;
      heard();
      line(true);
      changed(null);
    });
    source.addEventListener("beat", heard);
    source.onmessage = (event) => {
      heard();
      changed(JSON.parse(event.data));
    };
    source.onerror = again;
  };
  open();
  window.addEventListener("pagehide", () => source.close());
  window.addEventListener("pageshow", (event) => event.persisted && again());
}
