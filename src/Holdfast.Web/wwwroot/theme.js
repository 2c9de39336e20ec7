// Before the first paint: the reader's own choice of light or dark, where she made one.
const chosen = localStorage.getItem("holdfast-theme");
if (chosen === "light" || chosen === "dark") {
  document.documentElement.dataset.theme = chosen;
}
