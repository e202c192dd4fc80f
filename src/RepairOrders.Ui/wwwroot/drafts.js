// What is typed is kept in this browser by the page itself, at once: a cut, a restart or a closed tab loses nothing, whether or
// not the service has heard of it yet. A form names its draft, a field its path; one draft a person, since browsers are shared.
(() => {
  const slot = (name) => `draft:${document.querySelector("[data-person]")?.dataset.person ?? ""}:${name}`;
  const read = (name) => JSON.parse(localStorage.getItem(slot(name)) ?? "null");
  const write = (name, typed) => localStorage.setItem(slot(name), JSON.stringify(typed));
  const formOf = (input) => input.closest?.("form[data-draft]");
  const pathOf = (input) => input.closest("[data-path]")?.dataset.path;
  // A pasted block on its way to the grid is no value yet; a picture goes its own way; of a choice only the one taken counts.
  const isValue = (input) =>
    "value" in input &&
    input.type !== "file" &&
    (input.type !== "radio" || input.checked) &&
    !(input.closest(".rows") && /[\t␤]/.test(input.value));

  function valueOf(input) {
    if (input.type !== "checkbox") return input.value;
    const ticks = input.closest("fieldset.ticks");
    if (!ticks) return input.checked ? "true" : "";
    return [...ticks.querySelectorAll("input:checked")].map((tick) => tick.value).join("\n");
  }

  function take(input, typed) {
    const path = pathOf(input);
    if (path && isValue(input)) typed[path] = valueOf(input);
  }

  function typedIn(event) {
    const form = formOf(event.target);
    if (!form || !pathOf(event.target) || !isValue(event.target)) return;
    const typed = read(form.dataset.draft) ?? {};
    // The key of the write goes with it: what is put back and sent again is the same write.
    typed["#key"] ??= form.dataset.key;
    take(event.target, typed);
    write(form.dataset.draft, typed);
  }
  document.addEventListener("input", typedIn, true);
  document.addEventListener("change", typedIn, true);

  window.drafts = {
    read,
    forget: (name) => localStorage.removeItem(slot(name)),
    // What changed without a key pressed, such as a row taken out; the field that has the hand may be ahead of the service.
    keep(name, typed) {
      const form = formOf(document.activeElement);
      if (form?.dataset.draft === name) take(document.activeElement, typed);
      write(name, typed);
    },
    // After a cut the service hears what was typed meanwhile.
    tell() {
      for (const form of document.querySelectorAll("form[data-draft]")) {
        const typed = read(form.dataset.draft);
        if (typed?.["#key"] !== form.dataset.key) continue;
        for (const input of form.querySelectorAll("[data-path] :is(input, select, textarea)"))
          if (pathOf(input) in typed && isValue(input) && valueOf(input) === typed[pathOf(input)])
            for (const kind of ["input", "change"]) input.dispatchEvent(new Event(kind, { bubbles: true }));
      }
    },
  };

  // A one-line input drops the line breaks of a pasted block; they are kept as a sign that the grid splits on.
  document.addEventListener("paste", (event) => {
    const input = event.target;
    const text = event.clipboardData?.getData("text") ?? "";
    if (!(input instanceof HTMLInputElement) || !input.closest(".rows") || !/[\t\n]/.test(text)) return;
    event.preventDefault();
    input.value = text.replace(/\r?\n/g, "␤");
    input.dispatchEvent(new Event("input", { bubbles: true }));
  });
})();
