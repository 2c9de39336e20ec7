// The live connection is gone: say so in words, keep what was typed, try again, and start afresh where the program no longer knows this page. What is
// typed and not kept survives a reload as well, in this window alone.
const lost = document.getElementById("components-reconnect-modal");
const typedKey = () => "holdfast-typed:" + location.pathname;
const pause = 2000;
let stopped = false;

const nameOf = field => field.getAttribute("aria-label") ?? document.querySelector(`label[for="${field.id}"]`)?.textContent ?? field.id;

// data-stands is what is kept already: only what differs from it is a draft. data-typed-opener is what opens the form of a field that is not there at first.
const putAside = why => {
  const typed = [...document.querySelectorAll("[data-typed]")]
    .filter(field => !field.hidden && field.value !== (field.dataset.stands ?? ""))
    .map(field => ({ id: field.id, name: nameOf(field), value: field.value, opener: field.dataset.typedOpener }));
  try {
    if (typed.length > 0) {
      sessionStorage.setItem(typedKey(), JSON.stringify({ why, typed }));
    }
  } catch {
    // More than the browser holds: the block is still where it was copied from.
  }
};

const fieldOf = async ({ id, opener }) => {
  const there = () => [document.getElementById(id)].find(field => field && !field.hidden);
  if (there() || !opener) {
    return there();
  }
  document.querySelector(opener)?.click();
  for (let i = 0; i < 50 && !there(); i++) {
    await new Promise(done => setTimeout(done, 100));
  }
  return there();
};

const bringBack = async () => {
  const { why, typed } = JSON.parse(sessionStorage.getItem(typedKey()) ?? '{"typed":[]}');
  sessionStorage.removeItem(typedKey());
  const left = [];
  for (const one of typed) {
    const field = await fieldOf(one);
    if (field) {
      field.closest("details")?.setAttribute("open", "");
      field.value = one.value;
      field.dispatchEvent(new Event("input", { bubbles: true }));
      field.dispatchEvent(new Event("change", { bubbles: true }));
      if (why === "stopped") {
        field.focus();
      }
    } else {
      left.push(one);
    }
  }
  showLeft(why, left);
};

// What was typed in a field that is not open now: legible, so that it can be typed again.
const showLeft = (why, left) => {
  if (left.length === 0) {
    return;
  }
  const note = document.createElement("section");
  note.className = "conflict left-over";
  note.setAttribute("role", "status");
  const head = document.createElement("p");
  head.textContent = `${why === "stopped" ? "The program had stopped. " : ""}This was typed and is not kept yet:`;
  const list = document.createElement("ul");
  for (const { name, value } of left) {
    const line = document.createElement("li");
    line.textContent = `${name}: ${value}`;
    list.append(line);
  }
  note.append(head, list);
  document.body.prepend(note);
};

const startAfresh = () => {
  putAside("stopped");
  stopped = true;
  location.reload();
};

const again = async () => {
  document.removeEventListener("visibilitychange", again);
  try {
    if (await Blazor.reconnect()) {
      lost.removeAttribute("open");
    } else {
      startAfresh();
    }
  } catch {
    setTimeout(again, pause);
  }
};

lost.addEventListener("components-reconnect-state-changed", event => {
  const { state } = event.detail;
  if (state === "show" && !lost.open) {
    const kept = document.querySelector("[data-kept]")?.textContent;
    lost.querySelector("[data-last-kept]").textContent = kept ? `Last ${kept}. Everything up to then is on the disk.` : "Nothing was changed in this sitting, so nothing is lost.";
    // Not show(): that would take the focus from the field somebody is typing in.
    lost.setAttribute("open", "");
  } else if (state === "hide") {
    lost.removeAttribute("open");
  } else if (state === "failed") {
    document.addEventListener("visibilitychange", again);
    setTimeout(again, pause);
  } else if (state === "rejected") {
    startAfresh();
  }
});

const whenAlive = () => document.querySelector(".bench[data-alive]") ? bringBack() : setTimeout(whenAlive, 100);
whenAlive();
addEventListener("pagehide", () => {
  if (!stopped) {
    putAside("left");
  }
});
