// What the browser must do itself: files, pasted blocks, the theme and keys.
const root = document.documentElement;

const isDark = () => root.dataset.theme ? root.dataset.theme === "dark" : matchMedia("(prefers-color-scheme: dark)").matches;

document.addEventListener("click", event => {
  if (event.target.closest("[data-theme-switch]")) {
    root.dataset.theme = isDark() ? "light" : "dark";
    localStorage.setItem("holdfast-theme", root.dataset.theme);
  }
  if (event.target.closest("[data-print]")) {
    print();
  }
  const copy = event.target.closest("[data-copy]");
  if (copy) {
    const line = copy.closest("section").querySelector("[data-copied]");
    navigator.clipboard.writeText(document.getElementById(copy.dataset.copy).textContent).then(
      () => { line.textContent = "Copied."; },
      () => { line.textContent = "The browser does not allow it: select the block and copy it by hand."; });
  }
  if (event.target.closest("[data-skip]")) {
    event.preventDefault();
    document.getElementById("work")?.focus();
  }
});

// A heading that is given the focus shows it to those who go by keyboard, and to nobody else.
document.addEventListener("keydown", () => {
  root.dataset.keys = "";
}, true);
document.addEventListener("pointerdown", () => {
  delete root.dataset.keys;
}, true);

document.addEventListener("keydown", event => {
  const typing = event.target.closest("input, textarea, select, [contenteditable]");
  if (typing || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z") {
    return;
  }
  event.preventDefault();
  document.querySelector(event.shiftKey ? "[data-redo]" : "[data-undo]")?.click();
});

const say = (near, words) => {
  const line = near.closest(".tray-box")?.querySelector("[data-tray-said]");
  if (line) {
    line.textContent = words;
  }
};

const post = async (near, address, body, headers) => {
  say(near, "keeping in the tray…");
  try {
    const answer = await fetch(address, { method: "POST", body, headers });
    if (answer.ok) {
      say(near, "In the tray. Nothing counts until you keep it under Readings.");
      const there = near.closest("[data-tray-goes]")?.dataset.trayGoes;
      if (there) {
        // Once the field that brought it is emptied.
        setTimeout(() => Blazor.navigateTo(there));
      }
      return true;
    }
    say(near, "Error: " + (await answer.text() || "the program refused it. Nothing was taken."));
  } catch {
    say(near, "Error: the program does not answer, so nothing was taken. What you brought is still here; try again.");
  }
  return false;
};

const sendFiles = async (near, files) => {
  if (files.length === 0) {
    return;
  }
  const form = new FormData();
  for (const file of files) {
    form.append("files", file, file.name);
  }
  await post(near, "/tray/files", form);
};

document.addEventListener("change", async event => {
  if (event.target.matches("[data-tray-files]")) {
    await sendFiles(event.target, [...event.target.files]);
    event.target.value = "";
  }
});

document.addEventListener("submit", async event => {
  if (!event.target.matches("[data-tray-paste], [data-tray-drop]")) {
    return;
  }
  event.preventDefault();
  const block = event.target.querySelector("textarea");
  if (block && await post(block, "/tray/text", JSON.stringify({ text: block.value }), { "Content-Type": "application/json" })) {
    block.value = "";
  }
});

const within = async entry => {
  if (entry.isFile) {
    return [await new Promise((done, fail) => entry.file(done, fail))];
  }
  const reader = entry.createReader();
  const found = [];
  for (;;) {
    const some = await new Promise((done, fail) => reader.readEntries(done, fail));
    if (some.length === 0) {
      return found;
    }
    for (const one of some) {
      found.push(...await within(one));
    }
  }
};

document.addEventListener("dragover", event => {
  const box = event.target.closest?.("[data-tray-drop]");
  if (box) {
    event.preventDefault();
    box.classList.add("over");
  }
});
document.addEventListener("dragleave", event => event.target.closest?.("[data-tray-drop]")?.classList.remove("over"));
document.addEventListener("drop", async event => {
  const box = event.target.closest?.("[data-tray-drop]");
  if (!box) {
    return;
  }
  event.preventDefault();
  box.classList.remove("over");
  const entries = [...event.dataTransfer.items].map(item => item.webkitGetAsEntry?.()).filter(Boolean);
  const plain = [...event.dataTransfer.files];
  // Only folders have to be walked; plain files are handed over as they are.
  const walked = entries.some(entry => entry.isDirectory) ? await Promise.all(entries.map(within)).catch(() => []) : [plain];
  const files = walked.flat();
  if (files.length === 0) {
    say(box, "Error: the browser did not hand over any file. Choose the files or the folder with the buttons instead.");
  }
  await sendFiles(box, files);
});

// A page draws its content after it has loaded: what the address points at is looked for until it is there. A field that is pointed at is opened and
// has the focus.
const sought = hash => hash.length > 1 ? document.getElementById(decodeURIComponent(hash.slice(1))) : null;
const show = found => {
  found.closest("details")?.setAttribute("open", "");
  found.scrollIntoView();
  if (!found.matches("input, select, textarea")) {
    return;
  }
  found.focus();
  // A page that has just been gone to gives its heading the focus, sometimes only now.
  const taken = event => {
    if (event.target.matches("h1")) {
      found.focus();
    }
  };
  document.addEventListener("focusin", taken);
  setTimeout(() => document.removeEventListener("focusin", taken), 1500);
};
let watch = null;
const look = hash => {
  watch?.disconnect();
  const there = sought(hash);
  if (there) {
    show(there);
  } else if (hash.length > 1) {
    watch = new MutationObserver(() => {
      const found = sought(hash);
      if (found) {
        watch.disconnect();
        show(found);
      }
    });
    watch.observe(document.body, { childList: true, subtree: true });
  }
};
look(location.hash);
document.addEventListener("click", event => {
  const link = event.target.closest("a[href*='#']");
  if (link) {
    setTimeout(() => look(link.hash));
  }
});
