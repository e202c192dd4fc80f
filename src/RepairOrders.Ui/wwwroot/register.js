// The register's table: more rows as one scrolls, arrow keys from row to row, and the place kept for the way back.
const place = () => `place:${location.pathname}${location.search}`;

export function read() {
  const kept = sessionStorage.getItem(place());
  return kept ? JSON.parse(kept) : null;
}

export function watch(page, table, end) {
  const links = () => [...table.querySelectorAll("tbody a[data-order]")];
  // The observer tells only of a change: whoever is at the end again before it looked is seen by observing anew.
  const more = new IntersectionObserver(
    async (seen) => {
      if (!seen.at(-1).isIntersecting || !(await page.invokeMethodAsync("More"))) return;
      more.unobserve(end);
      more.observe(end);
    },
    { rootMargin: "600px" },
  );
  more.observe(end);
  const keep = (chosen) =>
    sessionStorage.setItem(place(), JSON.stringify({ rows: links().length, top: scrollY, chosen }));
  const keys = (event) => {
    const step = { ArrowDown: 1, ArrowUp: -1, j: 1, k: -1 }[event.key];
    if (!step || event.ctrlKey || event.altKey || event.metaKey) return;
    const all = links();
    const at = all.indexOf(document.activeElement);
    const next = all[at < 0 ? 0 : Math.min(all.length - 1, Math.max(0, at + step))];
    if (!next) return;
    event.preventDefault();
    next.focus();
  };
  const open = (event) => {
    const link = event.target.closest("a[data-order]");
    if (link) keep(link.dataset.order);
  };
  table.addEventListener("keydown", keys);
  table.addEventListener("click", open, true);
  return {
    stop() {
      more.disconnect();
      table.removeEventListener("keydown", keys);
      table.removeEventListener("click", open, true);
    },
  };
}

export function restore(kept) {
  scrollTo(0, kept.top);
  document.querySelector(`a[data-order="${CSS.escape(kept.chosen ?? "")}"]`)?.focus({ preventScroll: true });
}

// Views somebody named: only their words and filters, in his own browser.
const views = () => JSON.parse(localStorage.getItem("views") ?? "[]");

export function keptViews() {
  return views();
}

export function keepView(name, query) {
  localStorage.setItem("views", JSON.stringify([...views().filter((v) => v.name !== name), { name, query }]));
  return views();
}

export function dropView(name) {
  localStorage.setItem("views", JSON.stringify(views().filter((v) => v.name !== name)));
  return views();
}
