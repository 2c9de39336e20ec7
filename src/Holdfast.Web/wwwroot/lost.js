// The live connection is gone: say so in words, keep what was typed, try again, and start afresh where the program no longer knows this page.
const lost = document.getElementById("components-reconnect-modal");
const typedKey = () => "holdfast-typed:" + location.pathname;
const pause = 2000;

const nameOf = field => field.getAttribute("aria-label") ?? document.querySelector(`label[for="${field.id}"]`)?.textContent ?? field.id;

const putAside = () => {
  const typed = [...document.querySelectorAll("[data-typed]")]
    .filter(field => !field.hidden && field.value)
    .map(field => ({ id: field.id, name: nameOf(field), value: field.value }));
  if (typed.length > 0) {
    sessionStorage.setItem(typedKey(), JSON.stringify(typed));
  }
};

const bringBack = () => {
  const left = [];
  for (const typed of JSON.parse(sessionStorage.getItem(typedKey()) ?? "[]")) {
    const field = document.getElementById(typed.id);
    if (field && !field.hidden) {
      field.closest("details")?.setAttribute("open", "");
      field.value = typed.value;
      field.dispatchEvent(new Event("input", { bubbles: true }));
      field.dispatchEvent(new Event("change", { bubbles: true }));
      field.focus();
    } else {
      left.push(typed);
    }
  }
  sessionStorage.removeItem(typedKey());
  showLeft(left);
};

// What was typed in a field that is not open now: legible, so that it can be typed again.
const showLeft = left => {
  if (left.length === 0) {
    return;
  }
  const note = document.createElement("section");
  note.className = "conflict left-over";
  note.setAttribute("role", "status");
  const head = document.createElement("p");
  head.textContent = "The program had stopped. This was typed and is not kept yet:";
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
  putAside();
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
