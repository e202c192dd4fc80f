// What is typed is kept in this browser until it is sent, so that a cut, a restart or a closed tab loses nothing.
const key = (name) => `draft:${name}`;

export function keep(name, typed) {
  if (Object.keys(typed).length === 0) localStorage.removeItem(key(name));
  else localStorage.setItem(key(name), JSON.stringify(typed));
}

export function read(name) {
  const kept = localStorage.getItem(key(name));
  return kept ? JSON.parse(kept) : null;
}

export function forget(name) {
  localStorage.removeItem(key(name));
}

// A one-line input drops the line breaks of a pasted block; they are kept as a sign that the grid splits on.
document.addEventListener("paste", (event) => {
  const input = event.target;
  const text = event.clipboardData?.getData("text") ?? "";
  if (!(input instanceof HTMLInputElement) || !input.closest(".rows") || !/[\t\n]/.test(text)) return;
  event.preventDefault();
  input.value = text.replace(/\r?\n/g, "␤");
  input.dispatchEvent(new Event("input", { bubbles: true }));
});
