// The menu over a column: where it opens, searching, arrow keys, Escape. A choice itself is a click that the program answers.
const narrow = () => matchMedia("(max-width: 600px)").matches;

const place = (panel, button) => {
  const frame = panel.parentElement.getBoundingClientRect();
  const from = button.getBoundingClientRect();
  panel.style.top = `${from.bottom - frame.top + 4}px`;
  panel.style.left = `${Math.max(0, Math.min(from.left - frame.left, frame.width - panel.offsetWidth))}px`;
};

export function open(panel, buttonId) {
  const button = document.getElementById(buttonId);
  const search = panel.querySelector("[data-menu-search]");
  const none = panel.querySelector("[data-menu-none]");
  const options = [...panel.querySelectorAll("[role=option]")];
  const groups = [...panel.querySelectorAll("[data-menu-group]")];
  let active = null;

  const shown = () => options.filter(option => !option.hidden);
  const go = option => {
    active?.removeAttribute("data-active");
    active = option ?? null;
    if (active) {
      active.setAttribute("data-active", "");
      active.scrollIntoView({ block: "nearest" });
      search.setAttribute("aria-activedescendant", active.id);
    } else {
      search.removeAttribute("aria-activedescendant");
    }
  };
  const back = () => {
    const from = document.getElementById(buttonId);
    from?.focus();
    from?.scrollIntoView({ block: "nearest", inline: "nearest" });
  };
  const close = () => panel.querySelector("[data-menu-close]").click();

  if (!narrow()) {
    place(panel, button);
  }
  panel.dataset.placed = "";
  search.focus({ preventScroll: narrow() });
  panel.scrollIntoView({ block: "nearest" });
  go(options.find(option => option.ariaSelected === "true"));

  search.addEventListener("input", () => {
    const words = search.value.toLowerCase().split(/\s+/).filter(Boolean);
    for (const option of options) {
      option.hidden = !words.every(word => option.dataset.words.includes(word));
    }
    for (const group of groups) {
      group.hidden = !group.querySelector("[role=option]:not([hidden])");
    }
    none.hidden = shown().length > 0;
    go(words.length > 0 ? shown()[0] : null);
  });

  panel.addEventListener("keydown", event => {
    if (event.key === "Escape") {
      event.preventDefault();
      event.stopPropagation();
      back();
      close();
      return;
    }
    if (event.target !== search) {
      return;
    }
    const list = shown();
    const at = list.indexOf(active);
    const moves = { ArrowDown: at + 1, ArrowUp: at < 0 ? list.length - 1 : at - 1, PageDown: at + 8, PageUp: at - 8 };
    if (event.key in moves && list.length > 0) {
      event.preventDefault();
      go(list[Math.max(0, Math.min(list.length - 1, moves[event.key]))]);
    } else if (event.key === "Enter" && active) {
      event.preventDefault();
      back();
      active.click();
    }
  });

  panel.addEventListener("click", event => {
    if (event.target.closest("[role=option], [data-unit], [data-menu-close]")) {
      back();
    }
  }, true);

  // An option takes no focus of its own: pressing it leaves the focus in the search.
  panel.addEventListener("mousedown", event => {
    if (event.target.closest("[data-menu-list]")) {
      event.preventDefault();
    }
  });

  const outside = event => {
    if (!panel.isConnected) {
      document.removeEventListener("pointerdown", outside, true);
      document.removeEventListener("focusin", outside, true);
    } else if (!panel.contains(event.target) && !event.target.contains(panel) && !button.contains(event.target)) {
      close();
    }
  };
  document.addEventListener("pointerdown", outside, true);
  document.addEventListener("focusin", outside, true);
}
