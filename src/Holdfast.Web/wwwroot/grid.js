// Keys of the grid of vials, after the grid pattern of the W3C: one tab stop, arrows, Home and End, Enter or F2 to edit.
export function attach(frame, program) {
  const text = frame.querySelector("#cell-editor");
  const roles = frame.querySelector("#role-editor");
  let editor = text;
  let cell = null;
  let seen = "";

  const at = (row, col) => frame.querySelector(`[data-row="${row}"][data-col="${col}"]`);
  const place = of => [Number(of.dataset.row), Number(of.dataset.col)];
  const last = () => frame.querySelectorAll("tbody tr").length - 1;
  // The role stands before the first column, at −1.
  const first = -1;
  const width = () => frame.querySelectorAll('[data-row="0"]').length - 1 + first;

  // The rectangle from the anchor to the cell in focus; one cell is no rectangle.
  let anchor = null;
  const corners = () => {
    // The rows of another series have taken its place.
    if (anchor && !anchor.isConnected) {
      anchor = null;
    }
    const on = frame.querySelector('[role="gridcell"][tabindex="0"]');
    const [row, col] = place(on);
    const [otherRow, otherCol] = anchor ? place(anchor) : [row, col];
    return { top: Math.min(row, otherRow), bottom: Math.max(row, otherRow), left: Math.min(col, otherCol), right: Math.max(col, otherCol) };
  };
  const draw = () => {
    for (const old of frame.querySelectorAll("[aria-selected]")) {
      old.removeAttribute("aria-selected");
    }
    if (!anchor) {
      return;
    }
    const { top, bottom, left, right } = corners();
    for (let row = top; row <= bottom; row++) {
      for (let col = left; col <= right; col++) {
        at(row, col).setAttribute("aria-selected", "true");
      }
    }
  };

  const go = (to, extend = false) => {
    if (!to) {
      return;
    }
    anchor = extend ? anchor ?? frame.querySelector('[role="gridcell"][tabindex="0"]') : null;
    for (const old of frame.querySelectorAll('[role="gridcell"][tabindex="0"]')) {
      old.tabIndex = -1;
    }
    to.tabIndex = 0;
    to.focus();
    draw();
  };

  const isRole = of => Number(of.dataset.col) === first;

  // Codes of the selected rows from top to bottom; of the row in hand where none is selected.
  const rows = () => {
    const { top, bottom } = corners();
    return Array.from({ length: bottom - top + 1 }, (_, i) => at(top + i, first).dataset.code);
  };

  const edit = (of, begun) => {
    cell = of;
    seen = of.dataset.seen;
    editor = isRole(of) ? roles : text;
    editor.setAttribute("aria-label", of.title);
    editor.hidden = false;
    editor.style.left = `${of.offsetLeft}px`;
    editor.style.top = `${of.offsetTop}px`;
    editor.style.width = `${of.offsetWidth}px`;
    editor.style.height = `${of.offsetHeight}px`;
    editor.value = isRole(of) ? seen : begun;
    editor.focus();
    if (begun === seen && editor === text) {
      editor.select();
    }
  };

  const leave = async keep => {
    if (!cell) {
      return;
    }
    const done = cell;
    cell = null;
    editor.hidden = true;
    if (!keep) {
      return;
    }
    const [typed, stood] = [editor.value, seen];
    if (isRole(done)) {
      const chosen = rows();
      const many = chosen.includes(done.dataset.code) ? chosen : [done.dataset.code];
      if (typed !== stood || many.length > 1) {
        await program.invokeMethodAsync("Given", many, typed);
      }
      return;
    }
    try {
      await program.invokeMethodAsync("Typed", done.dataset.code, Number(done.dataset.col), stood, typed);
    } catch {
      // The program is gone: what was typed stays where it was typed.
      edit(done, typed);
      seen = stood;
    }
  };

  frame.addEventListener("click", event => go(event.target.closest("[data-row]"), event.shiftKey));
  frame.addEventListener("dblclick", event => {
    const on = event.target.closest("[data-row]");
    if (on) {
      edit(on, on.dataset.seen);
    }
  });

  frame.addEventListener("keydown", async event => {
    if (event.target === editor) {
      if (event.key === "Escape") {
        const back = cell;
        await leave(false);
        go(back);
      } else if (event.key === "Enter" || event.key === "Tab") {
        event.preventDefault();
        const [row, col] = place(cell);
        const next = event.key === "Enter" ? at(row + 1, col) ?? cell : at(row, col + (event.shiftKey ? -1 : 1)) ?? cell;
        if (isRole(cell)) {
          const back = cell;
          await leave(true);
          go(back);
        } else {
          go(next);
          await leave(true);
        }
      }
      return;
    }
    const on = event.target.closest("[data-row]");
    if (!on) {
      return;
    }
    const [row, col] = place(on);
    const page = 10;
    const moves = {
      ArrowUp: () => at(row - 1, col),
      ArrowDown: () => at(row + 1, col),
      ArrowLeft: () => at(row, col - 1),
      ArrowRight: () => at(row, col + 1),
      Home: () => at(event.ctrlKey ? 0 : row, first),
      End: () => at(event.ctrlKey ? last() : row, width()),
      PageUp: () => at(Math.max(0, row - page), col),
      PageDown: () => at(Math.min(last(), row + page), col),
    };
    if (moves[event.key]) {
      event.preventDefault();
      go(moves[event.key](), event.shiftKey);
    } else if (event.key === "Enter" || event.key === "F2") {
      event.preventDefault();
      edit(on, on.dataset.seen);
    } else if (event.key.length === 1 && !event.ctrlKey && !event.metaKey && !event.altKey) {
      event.preventDefault();
      edit(on, event.key);
    }
  });

  text.addEventListener("blur", () => leave(true));
  roles.addEventListener("blur", () => leave(true));

  frame.addEventListener("copy", event => {
    const on = event.target.closest?.("[data-row]");
    if (on) {
      const { top, bottom, left, right } = corners();
      const lines = [];
      for (let row = top; row <= bottom; row++) {
        const cells = [];
        for (let col = left; col <= right; col++) {
          cells.push(at(row, col).dataset.seen);
        }
        lines.push(cells.join("\t"));
      }
      event.clipboardData.setData("text/plain", lines.join("\n"));
      event.preventDefault();
    }
  });

  frame.chosenRows = rows;
  frame.dataset.ready = "";

  frame.addEventListener("paste", async event => {
    const on = event.target.closest?.("[data-row]");
    if (on) {
      event.preventDefault();
      const { top, left } = corners();
      const corner = at(top, left);
      await program.invokeMethodAsync("Pasted", corner.dataset.code, Number(corner.dataset.col), event.clipboardData.getData("text/plain"));
    }
  });
}

// Codes of the rows in which cells are selected.
export function selected(frame) {
  return frame.querySelector('[role="gridcell"][tabindex="0"]') ? frame.chosenRows() : [];
}
