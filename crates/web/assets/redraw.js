// Redraws while somebody types. The editor itself is never replaced, so focus and caret stay;
// an older request is called off when a newer one leaves. Without this file every form still posts.
"use strict";
(() => {
  const WAIT = 120;
  const NUMBER = 1000;
  const form = document.getElementById("piece");
  const editor = document.getElementById("job");

  const summary = document.getElementById("summary");
  if (summary) summary.focus();

  // A link to a line of working opens what it lies in.
  const unfold = () => {
    const target = location.hash && document.getElementById(location.hash.slice(1));
    if (!target) return;
    for (let at = target.parentElement; at; at = at.parentElement) if (at.tagName === "DETAILS") at.open = true;
    target.scrollIntoView({ block: "center" });
    target.focus({ preventScroll: true });
  };
  addEventListener("hashchange", unfold);
  unfold();

  // A fault's link leads to its line in the document.
  document.addEventListener("click", (event) => {
    const link = event.target.closest("a[data-line]");
    const text = link && document.getElementById(link.hash.slice(1));
    if (!text || text.tagName !== "TEXTAREA") return;
    event.preventDefault();
    const fold = text.closest("details");
    if (fold) fold.open = true;
    const lines = text.value.split("\n");
    const line = Math.min(Number(link.dataset.line), lines.length) - 1;
    const start = lines.slice(0, line).reduce((sum, text) => sum + text.length + 1, 0);
    text.focus();
    text.setSelectionRange(start, start + lines[line].length);
  });

  // A form that takes its time says so, and is sent once.
  for (const slow of document.querySelectorAll("form[data-waits]")) {
    const status = slow.querySelector("[role=status]");
    slow.addEventListener("submit", (event) => {
      if (status.textContent) event.preventDefault();
      else status.textContent = slow.dataset.waits;
    });
    addEventListener("pageshow", () => (status.textContent = ""));
  }

  if (!form || !editor) return;
  const good = document.getElementById("good");
  const stale = "The last state that could be drawn. What stands in the document now can't be read yet.";
  let waiting = 0;
  let running = null;

  const details = (root) => [...root.querySelectorAll("details")];
  const name = (one) => (one.closest("section, figure")?.querySelector("h2, h3")?.textContent ?? "") + (one.querySelector("summary .label, summary")?.firstChild?.textContent ?? "");
  const figures = (root) => new Map([...root.querySelectorAll("details.size")].map((one) => [name(one), one]));

  // Swaps one part, keeps open what was open, marks for a second what changed.
  const swap = (fresh) => {
    const old = document.getElementById(fresh.id);
    if (!old) return;
    const open = new Set(details(old).filter((one) => one.open).map(name));
    const before = new Map([...figures(old)].map(([key, one]) => [key, one.querySelector(".figure")?.textContent]));
    for (const one of details(fresh)) one.open = open.has(name(one));
    old.replaceWith(fresh);
    for (const [key, one] of figures(fresh)) {
      if (before.has(key) && before.get(key) === one.querySelector(".figure")?.textContent) continue;
      one.classList.add("changed");
      setTimeout(() => one.classList.remove("changed"), NUMBER);
    }
  };

  const mark = () => {
    const sheet = document.getElementById("sheet");
    if (!sheet || sheet.querySelector(".stale")) return;
    const caption = document.createElement("p");
    caption.className = "stale";
    caption.textContent = stale;
    sheet.prepend(caption);
  };

  const say = (words) => {
    const place = document.getElementById("reading");
    place.textContent = words;
  };

  const redraw = async () => {
    running?.abort();
    const own = (running = new AbortController());
    const sent = editor.value;
    // With the controls that stand beside the editor and belong to its form.
    const body = new URLSearchParams(new FormData(form));
    try {
      const answer = await fetch(form.getAttribute("action"), { method: "POST", body, headers: { "rabbet-part": "1" }, signal: own.signal });
      const text = await answer.text();
      if (running !== own) return;
      if (!answer.ok && answer.status !== 422) {
        mark();
        say("This could not be redrawn. Press “Work it out” to see why.");
        return;
      }
      const page = new DOMParser().parseFromString(text, "text/html");
      for (const fresh of [...page.querySelectorAll("[data-swap]")]) swap(document.adoptNode(fresh));
      editor.removeAttribute("aria-invalid");
      if (answer.ok) good.value = sent;
      else mark();
    } catch (error) {
      if (error.name === "AbortError") return;
      mark();
      say("The program does not answer. What you typed is still here; take it away or try again.");
    }
  };

  const soon = () => {
    clearTimeout(waiting);
    waiting = setTimeout(redraw, WAIT);
  };
  editor.addEventListener("input", soon);
  for (const control of document.querySelectorAll("[data-redraws]")) control.addEventListener("change", soon);
})();
