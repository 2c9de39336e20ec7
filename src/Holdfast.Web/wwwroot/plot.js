// What the browser must do itself in figures: say what is under the pointer, draw the box of a closer look.

// A mark says its values below the picture while it has the pointer or the focus; listeners hear them from the mark itself.
const tell = event => {
  const mark = event.target.closest?.(".figure-mark");
  const figure = mark?.closest("figure");
  if (!figure) {
    return;
  }
  let said = figure.querySelector(".figure-said");
  if (!said) {
    said = document.createElement("p");
    said.className = "figure-said";
    said.setAttribute("aria-hidden", "true");
    figure.querySelector("svg").after(said);
  }
  said.textContent = mark.querySelector("title").textContent;
};
document.addEventListener("focusin", tell);
document.addEventListener("pointerover", tell);

// The box: its corners are handed over in the measure of the sheet, and the program works out what lies in it.
const slack = 5;
let box = null;

const onSheet = (sheet, event) => new DOMPoint(event.clientX, event.clientY).matrixTransform(sheet.getScreenCTM().inverse());

const forget = () => {
  box?.drawn?.remove();
  box = null;
};

document.addEventListener("pointerdown", event => {
  const sheet = event.target.closest?.("[data-closer] svg");
  // A finger scrolls the page; for it there are the buttons and the fields.
  if (!sheet || event.button !== 0 || event.pointerType === "touch") {
    return;
  }
  box = { sheet, from: onSheet(sheet, event), left: event.clientX, top: event.clientY, drawn: null };
});

document.addEventListener("pointermove", event => {
  if (!box || (!box.drawn && Math.hypot(event.clientX - box.left, event.clientY - box.top) < slack)) {
    return;
  }
  if (!box.drawn) {
    box.drawn = document.createElementNS("http://www.w3.org/2000/svg", "rect");
    box.drawn.setAttribute("class", "figure-box");
    box.sheet.append(box.drawn);
  }
  const to = onSheet(box.sheet, event);
  box.drawn.setAttribute("x", Math.min(box.from.x, to.x));
  box.drawn.setAttribute("y", Math.min(box.from.y, to.y));
  box.drawn.setAttribute("width", Math.abs(to.x - box.from.x));
  box.drawn.setAttribute("height", Math.abs(to.y - box.from.y));
});

document.addEventListener("pointerup", event => {
  if (!box?.drawn) {
    forget();
    return;
  }
  const to = onSheet(box.sheet, event);
  const field = box.sheet.closest("[data-closer]").querySelector("[data-closer-box]");
  field.value = [box.from.x, box.from.y, to.x, to.y].join(" ");
  forget();
  // The mark under the hand is not meant: the click that follows is swallowed.
  const swallow = click => {
    click.preventDefault();
    click.stopPropagation();
  };
  document.addEventListener("click", swallow, { capture: true, once: true });
  setTimeout(() => document.removeEventListener("click", swallow, { capture: true }), 0);
  field.dispatchEvent(new Event("change", { bubbles: true }));
});

document.addEventListener("pointercancel", forget);
document.addEventListener("keydown", event => {
  if (event.key === "Escape") {
    forget();
  }
});
document.addEventListener("dragstart", event => {
  if (event.target.closest?.("[data-closer] svg")) {
    event.preventDefault();
  }
});
document.addEventListener("selectstart", event => {
  if (box) {
    event.preventDefault();
  }
});
