// The page at the pipe. No circuit stands behind it: this script keeps what is typed in this browser, counts the clocks on by the
// service's time with the signal lost, and sends what waits, each entry under its own key, so that it is done once.
const $ = (query, at = pipe) => at.querySelector(query);
const $$ = (query, at = pipe) => [...at.querySelectorAll(query)];
let pipe = document.getElementById("pipe");

// ---- What is kept: by person and order, so that nobody's entry is ever sent as another's.
const mine = () => `pipe:${pipe.dataset.person}:`;
const slot = (name) => `${mine()}${pipe.dataset.number}:${name}`;
const load = (name, none) => JSON.parse(localStorage.getItem(slot(name)) ?? "null") ?? none;
function save(name, value) {
  const empty = value == null || (typeof value === "object" && Object.keys(value).length === 0);
  if (empty) localStorage.removeItem(slot(name));
  else localStorage.setItem(slot(name), JSON.stringify(value));
}
const newKey = () => [...crypto.getRandomValues(new Uint8Array(16))].map((b) => b.toString(16).padStart(2, "0")).join("");

const box = new Promise((done, fail) => {
  const open = indexedDB.open("pipe", 1);
  open.onupgradeneeded = () => open.result.createObjectStore("photos");
  open.onsuccess = () => done(open.result);
  open.onerror = () => fail(open.error);
});
const photos = async (mode, act) => {
  const store = (await box).transaction("photos", mode).objectStore("photos");
  const asked = act(store);
  return new Promise((done, fail) => {
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => fail(asked.error);
  });
};

// ---- Clocks, by the service's time.
let ahead = Date.parse(pipe.dataset.now) - Date.now();
const now = () => Date.now() + ahead;
function span(ms) {
  const s = Math.floor(Math.abs(ms) / 1000);
  const two = (n) => String(n).padStart(2, "0");
  const face = s >= 3600 ? `${Math.floor(s / 3600)}:${two(Math.floor(s / 60) % 60)}:${two(s % 60)}` : `${two(Math.floor(s / 60))}:${two(s % 60)}`;
  return ms < 0 && s > 0 ? `−${face}` : face;
}
const hour = (at) => new Date(at).toLocaleTimeString("en-GB", { timeZone: pipe.dataset.zone, hour: "2-digit", minute: "2-digit" });
const put = (at, words) => at && at.textContent !== words && (at.textContent = words);
function draw() {
  for (const clock of $$("[data-clock]")) {
    const [from, until] = [Date.parse(clock.dataset.from), Date.parse(clock.dataset.until)];
    const share = (now() - from) / (until - from);
    const state = share >= 1 ? "over" : share >= 0.75 ? "watch" : "go";
    put($(".time", clock), span(until - now()));
    put($(".ago", clock), span(now() - from));
    const bar = $(".bar i", clock);
    if (bar) bar.style.width = `${Math.min(100, Math.max(0, share * 100))}%`;
    if (clock.dataset.state === state) continue;
    clock.dataset.state = state;
    const words = (state === "go" ? null : clock.dataset[state]) ?? "";
    put($(".say", clock), words);
    for (const button of $$("[data-while-good]", clock)) button.disabled = state === "over";
    if (words) warn(clock.dataset.clock, state, words);
  }
}
// Once for each clock and mark, not again after the page was opened anew.
function warn(clock, state, words) {
  const warned = load("warned", {});
  if (warned[`${clock} ${state}`]) return;
  save("warned", { ...warned, [`${clock} ${state}`]: 1 });
  put($("#said"), words);
  navigator.vibrate?.(state === "over" ? [400, 150, 400, 150, 400] : [200, 100, 200]);
}

// ---- Typed values.
const factors = { mm: 1, in: 25.4, bar: 1, psi: 0.0689476, kPa: 0.01, "N m": 1, "lbf ft": 1.35582, N: 1, kN: 1000, lbf: 4.44822, g: 1, kg: 1000, lb: 453.592 };
const figure = (text) => (/^[-+−]?\d*[.,]?\d+$/.test(text.trim()) ? Number(text.trim().replace("−", "-").replace(",", ".")) : NaN);
function inOwn(value, unit, own) {
  if (own === "°C") return unit === "°F" ? ((value - 32) * 5) / 9 : value;
  return (value * (factors[unit] ?? 1)) / (factors[own] ?? 1);
}
function valueOf(field) {
  if (field.type === "radio") return field.checked ? field.value === "true" : undefined;
  if (field.type === "checkbox") return field.checked ? true : field.dataset.always === undefined ? undefined : false;
  const text = field.value.trim() || field.dataset.else || "";
  if (text === "") return undefined;
  switch (field.dataset.type) {
    case "number":
      return Number.isNaN(figure(text)) ? text : figure(text);
    case "measure":
      return Number.isNaN(figure(text)) ? text : `${text.replace("−", "-")} ${field.dataset.unit}`;
    case "when":
      return new Date(text).toISOString();
    default:
      return text;
  }
}
function askOf(form) {
  const ask = {};
  for (const field of form.elements) {
    if (!field.name || field.matches(":disabled")) continue;
    const value = valueOf(field);
    if (value === undefined) continue;
    const path = field.name.split(/[.[\]]+/).filter(Boolean);
    let at = ask;
    path.forEach((part, i) => {
      if (i === path.length - 1) at[part] = value;
      else at = at[part] ??= /^\d+$/.test(path[i + 1]) ? [] : {};
    });
  }
  return ask;
}
// A limit is shown where it is broken while it is typed; what is allowed is the service's to say.
function judge(field) {
  const reading = field.closest(".reading");
  if (!reading) return;
  const value = inOwn(figure(field.value), field.dataset.unit, field.dataset.own ?? field.dataset.unit);
  const { low, high, broken } = field.dataset;
  const bad = (low && value < Number(low)) || (high && value > Number(high));
  reading.classList.toggle("bad", Boolean(bad));
  put($(".say", reading), bad ? (broken ?? "Outside the limit.") : "");
}
const keptIn = (form) => `draft:${form.dataset.entry}:${form.dataset.step}`;
const kept = (field) => field.name && field.type !== "hidden" && field.type !== "file";
function keep(form) {
  const typed = {};
  for (const field of form.elements) {
    if (!kept(field)) continue;
    const on = field.type === "checkbox" || field.type === "radio";
    const name = field.type === "radio" ? `${field.name}=${field.value}` : field.name;
    if (on ? field.checked : field.value !== field.defaultValue && field.value !== "") typed[name] = on ? true : field.value;
    if (!on && field.value !== "" && field.dataset.own && field.dataset.unit !== field.dataset.own) typed[`${name}@unit`] = field.dataset.unit;
  }
  save(keptIn(form), typed);
}
function bringBack(form) {
  const typed = load(keptIn(form), {});
  for (const name of Object.keys(typed)) {
    const row = /^(walls|diameters)\[(\d+)\]/.exec(name);
    if (row && !form.elements[name] && $(`[data-add=${row[1]}]`, form)) addRow($(`[data-add=${row[1]}]`, form));
  }
  for (const field of form.elements) {
    if (!kept(field)) continue;
    const name = field.type === "radio" ? `${field.name}=${field.value}` : field.name;
    if (!(name in typed)) continue;
    if (field.type === "checkbox" || field.type === "radio") field.checked = typed[name];
    else field.value = typed[name];
    if (typed[`${name}@unit`]) setUnit(field, typed[`${name}@unit`]);
    judge(field);
  }
}
function setUnit(field, unit) {
  field.dataset.own ??= field.dataset.unit;
  field.dataset.unit = unit;
  put($("[data-next-unit]", field.closest(".reading")), unit);
}
function nextUnit(field) {
  const units = (field.dataset.units ?? "").split(",");
  if (units.length < 2) return;
  setUnit(field, units[(units.indexOf(field.dataset.unit) + 1) % units.length]);
  field.dispatchEvent(new Event("input", { bubbles: true }));
}
// One more spot: a copy of the last reading, with a place to say where.
function addRow(button) {
  const list = button.closest("[data-rows]");
  const [rows, field] = [button.dataset.add, button.dataset.field];
  const n = $$(".reading", list).length;
  const row = $$(".reading", list).at(-1).cloneNode(true);
  const input = $("input", row);
  Object.assign(input, { name: `${rows}[${n}].${field}`, id: `r-${rows}-${n}-${field}`, value: "" });
  const spot = Object.assign(document.createElement("input"), { name: `${rows}[${n}].spot`, required: true, maxLength: 60, placeholder: "where" });
  spot.setAttribute("aria-label", "Where it was read");
  const label = $("label", row);
  label.htmlFor = input.id;
  label.replaceChildren(`Spot ${n + 1}`);
  row.classList.remove("bad");
  row.insertBefore(spot, $(".box", row));
  button.before(row);
  return input;
}

// ---- What waits to be sent.
const codes = new Map();
const waiting = () => load("waiting", []);
const change = (id, what) => save("waiting", waiting().map((e) => (e.id === id ? { ...e, ...what } : e)));
const drop = (id) => {
  save("waiting", waiting().filter((e) => e.id !== id));
  photos("readwrite", (s) => s.delete(id)).catch(() => {});
};
const formOf = (entry) => $$("form[data-entry]").find((f) => f.dataset.entry === entry.entry && f.dataset.step === entry.step);
let signal = navigator.onLine;
let signedOut = false;
let away = false;
let sending = null;
let beating = null;

async function send(entry, again = true) {
  const address = `/pipe/${pipe.dataset.number}`;
  const headers = { RequestVerificationToken: $("input[name=__RequestVerificationToken]").value, "X-Requested-With": "XMLHttpRequest" };
  let response;
  try {
    if (entry.entry === "photo") {
      const picture = await photos("readonly", (s) => s.get(entry.id));
      if (!picture) return { refused: { sentence: "This browser no longer has the picture. Take it again." } };
      const query = new URLSearchParams({ of: entry.of, key: entry.id, ...(entry.subject ? { subject: entry.subject } : {}) });
      headers["Content-Type"] = "application/octet-stream";
      response = await fetch(`${address}/photos?${query}`, { method: "POST", headers, body: picture, signal: AbortSignal.timeout(180000) });
    } else {
      const { id: key, of, ask, signer, version } = entry;
      const scrap = entry.entry === "mixVoid";
      headers["Content-Type"] = "application/json";
      const body = { what: scrap ? undefined : entry.entry, of: of || undefined, key, ask, signer, code: codes.get(entry.id), why: scrap ? ask.why : undefined, version };
      response = await fetch(`${address}/sign`, { method: "POST", headers, body: JSON.stringify(body), signal: AbortSignal.timeout(30000) });
    }
  } catch {
    return { lost: true };
  }
  if (response.status === 401 || response.redirected) return { signedOut: true };
  if (response.ok) return { sent: true };
  if ([408, 429].includes(response.status) || response.status >= 500) return { later: true };
  const no = await response.json().catch(() => ({ sentence: "It was not taken, and nobody says why. Try again." }));
  if (no.code === "page-too-old" && again && (await refresh())) return send(entry, false);
  return { refused: no };
}

// A climate that waited long is no longer the climate.
function stale(entry) {
  const minutes = Math.floor((now() - entry.at) / 60000);
  return entry.entry === "climate" && minutes > 15
    ? { refused: { sentence: `This climate was read ${minutes} minutes ago, without signal. Read it again: a mix rests on it.` } }
    : null;
}

let more = false;
function flush() {
  more = sending !== null;
  sending ??= flushAll().finally(() => {
    sending = null;
    show();
    if (more) flush();
  });
  return sending;
}
async function flushAll() {
  let sent = 0;
  const tried = new Set();
  for (;;) {
    const entry = waiting().find((e) => !tried.has(e.id) && !e.refused && (!e.signer || codes.has(e.id)));
    if (!entry) break;
    tried.add(entry.id);
    const answer = stale(entry) ?? (await send(entry));
    // A code is good for one try only; this browser does not keep it.
    codes.delete(entry.id);
    if (answer.lost) setSignal(false);
    if (answer.signedOut) signedOut = true;
    away = Boolean(answer.later);
    if (answer.lost || answer.later || answer.signedOut) break;
    setSignal(true);
    if (answer.refused) change(entry.id, { refused: answer.refused });
    if (!answer.sent) continue;
    sent++;
    drop(entry.id);
    save(`draft:${entry.entry}:${entry.step}`, null);
  }
  show();
  if (sent > 0) await refresh();
}
function enter(entry) {
  const rest = waiting().filter((e) => !(e.refused && e.entry === entry.entry && e.step === entry.step && e.entry !== "photo"));
  save("waiting", [...rest, { by: pipe.dataset.name, at: now(), ...entry }]);
  show();
  return flush();
}

// A write whose clock starts at the service is made now or not at all. Its key stays until it is answered: pressed again after a
// lost answer it is the same mix, with the earlier start.
async function live(form, entry) {
  const name = `live:${entry.entry}:${entry.step}`;
  const id = load(name, null) ?? newKey();
  save(name, id);
  const answer = await send({ ...entry, id });
  if (answer.lost) setSignal(false);
  if (answer.signedOut) signedOut = true;
  if (answer.sent || answer.refused) save(name, null);
  if (answer.sent) {
    save(keptIn(form), null);
    await refresh();
  } else complain(form, answer.refused ?? { sentence: answer.later ? "The service does not answer at the moment. Nothing is recorded." : form.dataset.live });
  show();
}

// ---- What is said.
const element = (name, words, css) => Object.assign(document.createElement(name), { textContent: words ?? "", className: css ?? "" });
function complain(form, no) {
  for (const field of $$("[aria-invalid]", form)) field.removeAttribute("aria-invalid");
  for (const [name, words] of Object.entries(no.errors ?? {})) {
    const field = form.elements[name] ?? [...form.elements].find((f) => f.name?.startsWith(name));
    field?.setAttribute?.("aria-invalid", "true");
    const reading = field?.closest?.(".reading");
    if (reading) {
      reading.classList.add("bad");
      put($(".say", reading), words.join(" "));
    }
  }
  let place = $(".refused", form);
  if (!place) {
    place = element("div", "", "refused");
    place.setAttribute("role", "alert");
    form.append(place);
  }
  place.replaceChildren(element("p", no.sentence, "tone stop"), ...(no.clears ? [element("p", `It can be cleared by: ${no.clears}.`, "small")] : []));
  place.scrollIntoView({ block: "center" });
}
function setSignal(there) {
  if (signal === there) return;
  signal = there;
  if (!there) {
    clearTimeout(beating);
    beating = setTimeout(beat, 3000);
  }
  show();
}
function show() {
  const all = waiting();
  const open = all.filter((e) => !e.refused);
  const strip = $("#signal");
  const stopOpen = open.some((e) => e.entry === "stop");
  strip.className = `strip ${stopOpen ? "stop-strip" : "watch-strip"}`;
  const words = signedOut
    ? "You are signed out. What you entered stays in this phone."
    : stopOpen
      ? "The stop is not sent yet. Stop the work and say so to everybody round you."
      : signal
        ? away
          ? "The service does not take it at the moment. What you entered waits in this phone and is sent again by itself."
          : ""
        : "No signal. The clocks go on; what you enter waits in this phone and is sent when the signal is back.";
  strip.replaceChildren();
  if (words) strip.append(element("span", words, `tone ${stopOpen ? "stop" : "watch"}`));
  if (signedOut) {
    const link = element("a", "Sign in", "btn line");
    link.href = `/sign-in?to=${encodeURIComponent(location.pathname + location.search)}`;
    strip.append(link);
  }
  $("#waiting").replaceChildren(...all.map(line), ...elsewhere());
  for (const form of $$("form[data-entry]")) {
    const waits = open.some((e) => e.entry === form.dataset.entry && e.step === form.dataset.step && e.entry !== "stop");
    for (const button of [...$$("button:not([type=button])", form), ...(form.id ? $$(`button[form=${form.id}]`) : [])]) {
      button.dataset.words ??= button.textContent;
      put(button, waits ? (sending && signal ? "Sending …" : "Not sent yet") : button.dataset.words);
      button.disabled = waits || (button.dataset.whileGood !== undefined && button.closest("[data-clock]")?.dataset.state === "over");
    }
  }
  for (const form of $$("form[data-entry]")) {
    const no = all.find((e) => e.refused && e.entry === form.dataset.entry && e.step === form.dataset.step);
    if (no && !form.dataset.told) complain(form, no.refused);
    if (no) form.dataset.told = "yes";
    else delete form.dataset.told;
  }
}
function line(entry) {
  const row = element("section", "", `waits ${entry.refused ? "no" : ""}`);
  row.setAttribute("aria-label", entry.words);
  if (entry.refused) {
    row.append(element("p", `Not taken: ${entry.words}`, "tone stop"), element("p", entry.refused.sentence));
    if (entry.refused.clears) row.append(element("p", `It can be cleared by: ${entry.refused.clears}.`, "small"));
    const away = element("button", entry.entry === "photo" ? "Throw the picture away" : "Understood; what I typed is still below", "btn line");
    away.type = "button";
    away.onclick = () => {
      drop(entry.id);
      show();
    };
    row.append(away);
    return row;
  }
  const busy = sending && signal && !(entry.signer && !codes.has(entry.id));
  row.append(element("p", `${busy ? "Sending" : "Not sent yet"}: ${entry.words}`, "tone watch"));
  if (entry.signer && !codes.has(entry.id) && !busy) {
    row.append(element("p", `${entry.signerName} signs it with his six digits once there is signal; they are not kept in this phone.`, "small"));
    const code = Object.assign(element("input"), { type: "password", inputMode: "numeric", maxLength: 6, autocomplete: "off" });
    code.setAttribute("aria-label", `Six digits of ${entry.signerName}`);
    const go = element("button", "Send", "btn line");
    go.type = "button";
    go.onclick = () => {
      codes.set(entry.id, code.value);
      flush();
    };
    row.append(code, go);
  }
  if (!busy) {
    const back = element("button", "Take it back", "link");
    back.type = "button";
    back.onclick = () => {
      drop(entry.id);
      show();
    };
    row.append(back);
  }
  return row;
}
// Entries of another person, or of another order, are told of and left alone.
function elsewhere() {
  return Object.keys(localStorage)
    .filter((k) => /^pipe:[^:]+:[^:]+:waiting$/.test(k) && k !== slot("waiting"))
    .flatMap((k) => {
      const [, person, number] = k.split(":");
      const theirs = JSON.parse(localStorage.getItem(k));
      const row = element("section", "", "waits");
      if (person !== pipe.dataset.person) {
        row.append(element("p", `${theirs.length} of ${theirs[0].by} wait in this phone for ${number}; they are sent when he signs in here.`, "small"));
        return [row];
      }
      row.append(element("p", `${theirs.length} not sent yet for another order: `, "small"));
      const link = element("a", number);
      link.href = `/pipe/${number}`;
      row.append(link);
      return [row];
    });
}

// ---- The page anew, in place.
async function refresh() {
  if ($("dialog[open]")) return false;
  let response;
  try {
    response = await fetch(location.pathname + location.search, { headers: { "X-Requested-With": "XMLHttpRequest" }, signal: AbortSignal.timeout(30000) });
  } catch {
    setSignal(false);
    return false;
  }
  if (response.status === 401 || new URL(response.url).pathname !== location.pathname) {
    signedOut = true;
    show();
    return false;
  }
  const next = new DOMParser().parseFromString(await response.text(), "text/html").getElementById("pipe");
  if (!next) return false;
  const [step, top] = [pipe.dataset.step, scrollY];
  const opened = $$("details[open] > summary").map((s) => s.textContent.trim());
  pipe.replaceWith(document.adoptNode(next));
  pipe = next;
  ahead = Date.parse(pipe.dataset.now) - Date.now();
  bind();
  for (const summary of $$("details > summary")) if (opened.includes(summary.textContent.trim())) summary.parentElement.open = true;
  if (step === pipe.dataset.step) scrollTo(0, top);
  else {
    scrollTo(0, 0);
    $("h1")?.focus({ preventScroll: true });
  }
  return true;
}
function bind() {
  for (const form of $$("form[data-entry]")) bringBack(form);
  for (const field of $$(".reading .box input")) if (padWanted.matches) field.inputMode = "none";
  for (const field of $$("[data-waived]")) field.dispatchEvent(new Event("change", { bubbles: true }));
  draw();
  show();
}

// There is signal when the service answers; then it also tells the time, and whether somebody else signed.
async function beat() {
  clearTimeout(beating);
  const from = Date.now();
  try {
    const response = await fetch(`/pipe/${pipe.dataset.number}/now`, { headers: { "X-Requested-With": "XMLHttpRequest" }, signal: AbortSignal.timeout(10000) });
    if (response.status === 401) signedOut = true;
    if (response.ok) {
      const told = await response.json();
      ahead = Date.parse(told.now) - (from + Date.now()) / 2;
      [signedOut, away] = [false, false];
      setSignal(true);
      if (waiting().some((e) => !e.refused && (!e.signer || codes.has(e.id)))) await flush();
      else if (told.version !== pipe.dataset.version && !document.activeElement?.closest("form")) await refresh();
    }
    show();
  } catch {
    setSignal(false);
  }
  beating = setTimeout(beat, signal ? 15000 : 3000);
}
addEventListener("online", beat);
addEventListener("offline", () => setSignal(false));
addEventListener("pageshow", (event) => event.persisted && beat());
document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && beat());

// ---- What is done on it.
document.addEventListener("submit", (event) => {
  const form = event.target.closest("form[data-entry]");
  if (!form) return;
  event.preventDefault();
  const entry = { id: newKey(), entry: form.dataset.entry, of: form.dataset.of || null, step: form.dataset.step, words: form.dataset.words, ask: askOf(form) };
  const signer = $("[data-signer]", form);
  if (signer?.value) {
    const code = $("[data-code]", form);
    Object.assign(entry, { signer: signer.value, signerName: signer.selectedOptions[0].textContent });
    codes.set(entry.id, code.value);
    code.value = "";
  }
  // What carries a time of its own keeps it, however late it is sent.
  if (entry.entry === "cure") entry.ask.readings[0].at = new Date(now() - 2000).toISOString();
  if (entry.entry === "mixUse") entry.ask.remark = `said at the pipe at ${hour(now())}`;
  if (entry.entry === "mixVoid") entry.version = pipe.dataset.version;
  form.closest("dialog")?.close();
  delete form.dataset.told;
  $(".refused", form)?.replaceChildren();
  if (form.dataset.live) return void live(form, entry);
  const picture = waiting().find((e) => e.entry === "photo" && !e.refused);
  if (form.dataset.photo === "needed" && (!picture || entry.entry === "proof")) {
    complain(form, { sentence: picture ? "The photograph is not sent yet; this goes with it. Wait for the signal." : "Take the photograph first; this is not signed without it." });
    return;
  }
  enter(entry);
});
let judging = null;
document.addEventListener("input", (event) => {
  const form = event.target.closest("form[data-entry]");
  if (!form) return;
  event.target.removeAttribute("aria-invalid");
  judge(event.target);
  keep(form);
  if (form.dataset.entry === "climate" && form.id) {
    clearTimeout(judging);
    judging = setTimeout(() => asTyped(form), 350);
  }
});
// Go or no-go by the service's own rule, for the materials issued, while it is typed.
async function asTyped(form) {
  const verdict = $("#verdict", form);
  const { air, humidityPercent, steel } = askOf(form);
  verdict.hidden = air === undefined || humidityPercent === undefined || steel === undefined;
  if (verdict.hidden) return;
  verdict.className = "verdict";
  try {
    const response = await fetch(`/pipe/${pipe.dataset.number}/climate?${new URLSearchParams({ air, humidity: humidityPercent, steel })}`, { headers: { "X-Requested-With": "XMLHttpRequest" }, signal: AbortSignal.timeout(10000) });
    const said = await response.json();
    if (!response.ok) return verdict.replaceChildren(element("p", said.sentence, "tone stop"));
    verdict.classList.add(said.lines.every((l) => l.go) ? "yes" : "no");
    verdict.replaceChildren(
      ...said.lines.flatMap((l) => [element("p", l.verdict, `tone ${l.go ? "go" : "stop"}`), ...(l.why ? [element("p", l.why)] : [])]),
      element("p", said.dew, "small"),
    );
  } catch {
    verdict.replaceChildren(element("p", "No signal: go or no-go is judged when it is sent. Mix nothing before that.", "tone watch"));
  }
}
document.addEventListener("change", async (event) => {
  const field = event.target;
  if (field.matches("[data-signer]")) {
    const label = $(".code", field.closest(".signer"));
    label.hidden = field.value === "";
    $("input", label).required = field.value !== "";
  }
  if (field.matches("[data-waived]")) $("[data-test]", field.form).disabled = field.checked;
  if (field.name === "notAsWritten") $(".found", field.form).hidden = !field.checked;
  if (field.matches("[data-camera]") && field.files[0]) {
    const id = newKey();
    const picture = new Blob([await field.files[0].arrayBuffer()], { type: field.files[0].type });
    await photos("readwrite", (s) => s.put(picture, id));
    const small = Object.assign(document.createElement("img"), { src: URL.createObjectURL(picture), width: 96, height: 72, alt: "not sent yet" });
    $(".pictures", field.closest(".photo-part")).append(small);
    field.value = "";
    await enter({ id, entry: "photo", of: field.dataset.of, subject: field.dataset.subject || null, step: pipe.dataset.step, words: field.dataset.words });
  }
});
document.addEventListener("click", (event) => {
  const at = event.target.closest("button, [data-next-unit]");
  if (!at) return;
  if (at.dataset.stop) {
    const dialog = $("#stop");
    const differs = $("[name=notAsWritten]", dialog);
    differs.checked = at.dataset.stop === "differs";
    $(".found", dialog).hidden = !differs.checked;
    closePad();
    dialog.showModal();
  }
  if (at.dataset.close !== undefined) at.closest("dialog").close();
  if (at.dataset.reason) {
    $("[name=reason]", at.form).value = at.dataset.reason;
    keep(at.form);
  }
  if (at.dataset.nextUnit !== undefined) nextUnit($("input[data-units]", at.closest(".reading")));
  if (at.dataset.add) addRow(at).focus();
  if (at.dataset.calledNow !== undefined) {
    const t = new Date(Math.floor(now() / 60000) * 60000);
    $("[data-type=when]", at.closest("fieldset")).value = new Date(t - t.getTimezoneOffset() * 60000).toISOString().slice(0, 16);
    keep(at.form);
  }
});

// ---- Digits for gloves.
const padWanted = matchMedia("(pointer: coarse), (max-width: 760px)");
let reading = null;
const readings = () => (reading?.form ? $$(".reading .box input", reading.form).filter((r) => !r.matches(":disabled")) : []);
function openPad(field) {
  reading = field;
  const all = readings();
  put($(".pad-at"), all.length > 1 ? `${all.indexOf(field) + 1} of ${all.length}` : "");
  put($(".pad-label"), $("label", field.closest(".reading")).textContent);
  $("#pad").hidden = false;
  field.closest(".reading").scrollIntoView({ block: "center" });
}
function closePad() {
  reading?.blur();
  reading = null;
  $("#pad").hidden = true;
}
document.addEventListener("focusin", (event) => {
  if (event.target.matches(".reading .box input") && padWanted.matches) openPad(event.target);
  else if (!event.target.closest("#pad, .reading")) {
    reading = null;
    $("#pad").hidden = true;
  }
});
// The focus stays in the reading while the pad types into it.
document.addEventListener("pointerdown", (event) => event.target.closest("#pad") && event.preventDefault());
document.addEventListener("click", (event) => {
  const key = event.target.closest("#pad [data-key]")?.dataset.key;
  if (!key || !reading) return;
  const typed = (from, to, text) => {
    reading.setRangeText(text, from, to, "end");
    reading.dispatchEvent(new Event("input", { bubbles: true }));
  };
  const { selectionStart: from, selectionEnd: to } = reading;
  if (key === "close") closePad();
  else if (key === "unit") nextUnit(reading);
  else if (key === "next") {
    const all = readings();
    const next = all[all.indexOf(reading) + 1];
    if (next) next.focus();
    else closePad();
  } else if (key === "back") typed(from === to ? Math.max(0, from - 1) : from, to, "");
  else typed(from, to, key);
});

bind();
setInterval(draw, 250);
beat();
