// The page that begins a study: what is in the way is said beside its field, and the field has the focus.
const form = document.querySelector("[data-begin]");

const refuse = (field, sentence) => {
  for (const old of form.querySelectorAll("[aria-invalid]")) {
    old.removeAttribute("aria-invalid");
    document.getElementById(`${old.id}-trouble`).textContent = "";
  }
  const input = document.getElementById(field) ?? document.getElementById("title");
  input.setAttribute("aria-invalid", "true");
  document.getElementById(`${input.id}-trouble`).textContent = `Error: ${sentence}`;
  document.title = `Error: ${sentence} · Holdfast`;
  input.focus();
};

const send = async (address, body) => {
  try {
    const answer = await fetch(address, { method: "POST", body: JSON.stringify(body), headers: { "Content-Type": "application/json" } });
    const { begun, field, sentence } = await answer.json();
    if (begun) {
      location.replace("/");
    } else {
      refuse(field, sentence);
    }
  } catch {
    refuse("title", "the program does not answer, so nothing was begun. What you typed is still here; try again.");
  }
};

form.addEventListener("submit", async event => {
  event.preventDefault();
  await send("/begin", Object.fromEntries(new FormData(form)));
});

document.addEventListener("click", async event => {
  const one = event.target.closest("[data-go-on]");
  if (one) {
    await send(`/begin/${encodeURIComponent(one.dataset.goOn)}`, {});
  }
});
