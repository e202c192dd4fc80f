// Set before the first paint, so that a dark page does not flash light.
(() => {
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const set = () => (document.documentElement.dataset.ink = dark.matches ? "night" : "day");
  set();
  dark.addEventListener("change", set);
})();
